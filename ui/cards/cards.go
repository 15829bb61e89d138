// Package cards is the Rate cards place: what transfers and sent-out work cost, a card at a time, with a box to try
// it on the spot.
//
// Not in this package: the shop file, which is handed in as Cards; the pricing of a card, which is the engine's.
package cards

import (
	"context"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Cards is what the place asks of the shop file.
type Cards interface {
	RateCards(ctx context.Context, on string) ([]catalog.RateCard, error) // an empty day: all
	SaveRateCard(ctx context.Context, c catalog.RateCard) (catalog.RateCard, error)
	Suppliers(ctx context.Context) ([]catalog.Supplier, error)
}

// Place is the Rate cards place.
type Place struct {
	cards  Cards
	now    func() time.Time
	table  *parts.Table
	fault  *parts.Band
	editor *editor

	// Rules gives the shop's rules, for the age at which prices are flagged; nil: none are.
	Rules func(ctx context.Context) (catalog.Shop, error)
	// Units gives how temperatures are shown; nil: in °F.
	Units func(ctx context.Context) (catalog.Units, error)

	all       []catalog.RateCard
	suppliers []catalog.Supplier
	rules     catalog.Shop
	units     catalog.Units
	undo      []catalog.RateCard // what cards were before they were saved, the latest last
	redo      []catalog.RateCard // and before they were taken back
	want      int64              // the card to mark after the next reading
}

// New makes the place.
func New(c Cards, now func() time.Time) *Place {
	p := &Place{cards: c, now: now, fault: parts.NewBand(parts.Fault, "")}
	p.editor = newEditor(p)
	p.table = parts.NewTable([]parts.TableColumn{{Title: "card", Share: 1}, {Title: "kind", Width: 48}, {Title: "from", Width: 90, Right: true, Least: 280}})
	p.table.Len = func() int { return len(p.all) }
	p.table.Row = p.row
	p.table.OnSelect = p.selected
	p.table.OnOpen = func(int) { p.editor.focus() }
	p.table.Empty = "No rate card yet."
	return p
}

// Content is part of the window's Place.
func (p *Place) Content() fyne.CanvasObject {
	title := parts.Row(10, []parts.Track{parts.Fit(), parts.Share(1)}, parts.NewText("Rate cards", parts.TitleStyle),
		parts.NewText("what transfers cost", parts.CaptionStyle.Shortened()))
	var more []fyne.CanvasObject
	for _, kind := range []string{quote.AreaCard, quote.SheetCard, quote.RollCard, quote.PieceCard} {
		more = append(more, parts.NewSmallButton(parts.Quiet, "+ "+kind, func() { p.fresh(kind) }))
	}
	list := container.NewStack(parts.NewSheetGround(), parts.Framed(
		parts.Inset(look.SectionPadX, look.SectionPadY, parts.Column(8, title, p.fault)),
		parts.Inset(look.SectionPadX, look.SectionPadY, parts.Flow(6, more...)), parts.Inset(6, 0, p.table)))
	return parts.PageInset(container.New(listBeside{}, parts.Below(look.PageMargin, list), p.editor.object))
}

// Focus is part of the window's Place.
func (p *Place) Focus() { parts.Focus(p.table) }

// Shown reads the cards anew, unless one is being edited.
func (p *Place) Shown() {
	if !p.editor.changed {
		p.read()
	}
}

func (p *Place) read() {
	parts.Background(func() func() {
		all, err := p.cards.RateCards(context.Background(), "")
		suppliers, err2 := p.cards.Suppliers(context.Background())
		if err == nil {
			err = err2
		}
		rules, units := p.readRules()
		return func() {
			p.rules, p.units = rules, units
			p.fill(all, suppliers, err)
		}
	})
}

// readRules reads when prices go stale and how temperatures are shown; what cannot be read is said in the Shop place.
func (p *Place) readRules() (rules catalog.Shop, units catalog.Units) {
	units.Temperature = catalog.Fahrenheit
	if p.Rules != nil {
		if r, err := p.Rules(context.Background()); err == nil {
			rules = r
		}
	}
	if p.Units != nil {
		if u, err := p.Units(context.Background()); err == nil {
			units = u
		}
	}
	return rules, units
}

// stale is how many days old a card's prices are where that is more than the shop allows.
func (p *Place) stale(c catalog.RateCard) int {
	if !c.Active {
		return 0
	}
	return p.rules.Stale(c.ValidFrom, p.now().Format(time.DateOnly))
}

func (p *Place) fill(all []catalog.RateCard, suppliers []catalog.Supplier, err error) {
	if err != nil {
		p.fault.SetText("The rate cards could not be read: " + err.Error())
		return
	}
	p.fault.SetText("")
	at := max(p.table.Selected(), 0)
	p.all, p.suppliers = all, suppliers
	if i := slices.IndexFunc(all, func(c catalog.RateCard) bool { return c.ID == p.want }); i >= 0 {
		at = i
	}
	p.want = 0
	p.table.Reload()
	p.table.Select(at)
}

func (p *Place) row(i int) []parts.TableCell {
	c := p.all[i]
	name := parts.TableCell{Text: c.Card.Name, Strong: true}
	if !c.Active {
		name = parts.TableCell{Text: c.Card.Name + " (retired)", Color: look.Muted}
	}
	from := parts.TableCell{Text: c.ValidFrom, Color: look.Muted}
	if p.stale(c) > 0 {
		from = parts.TableCell{Text: c.ValidFrom + " !", Color: look.Warn, Strong: true}
	}
	return []parts.TableCell{name, {Text: c.Card.Kind, Color: look.Muted}, from}
}

// selected shows a card. One that was changed and not saved stays, with what to do said.
func (p *Place) selected(i int) {
	if i >= len(p.all) || p.all[i].ID == p.editor.text.was.ID && p.editor.text.was.ID != 0 && p.editor.changed {
		return
	}
	if p.editor.changed {
		p.fault.SetText("Save " + p.editor.name() + " first, or take its changes back.")
		return
	}
	p.fault.SetText("")
	p.editor.show(p.all[i])
}

// fresh starts a card of a kind.
func (p *Place) fresh(kind string) {
	if p.editor.changed {
		p.fault.SetText("Save " + p.editor.name() + " first, or take its changes back.")
		return
	}
	card := quote.RateCard{ID: p.newKey(), Name: "New card by " + kind, Kind: kind, MaxInks: 4}
	switch kind {
	case quote.SheetCard:
		card.Sizes = []quote.SheetSize{{Name: "sheet", Prices: []quote.InkRow{{Inks: 1}}}}
	case quote.AreaCard, quote.RollCard:
		card.FullColor, card.MaxInks = true, 0
	case quote.PieceCard:
		card.Prices = []quote.PieceRow{{}}
	}
	p.editor.show(catalog.RateCard{Card: card, ValidFrom: p.now().Format(time.DateOnly), Active: true})
	p.editor.touched("")
	p.editor.focus()
}

// newKey is a key that no card has.
func (p *Place) newKey() string {
	for n := len(p.all) + 1; ; n++ {
		key := "card-" + whole(n)
		if !slices.ContainsFunc(p.all, func(c catalog.RateCard) bool { return c.Card.ID == key }) {
			return key
		}
	}
}

func (p *Place) save(c catalog.RateCard) {
	before := p.editor.text.was
	parts.Background(func() func() {
		kept, err := p.cards.SaveRateCard(context.Background(), c)
		return func() {
			if err != nil {
				p.fault.SetText("The card could not be saved: " + err.Error())
				return
			}
			if before.ID != 0 && before.ID == kept.ID {
				p.undo, p.redo = append(p.undo, before), nil
			}
			p.want = kept.ID
			p.editor.show(kept)
			p.read()
		}
	})
}

// Undo takes back what was typed since the last save, and after that the last save itself.
func (p *Place) Undo() {
	if p.editor.changed {
		p.editor.takeBack()
		return
	}
	p.step(&p.undo, &p.redo)
}

// Redo does again what Undo took back last.
func (p *Place) Redo() {
	if !p.editor.changed {
		p.step(&p.redo, &p.undo)
	}
}

// step saves the last card of one list and notes in the other what it was. Where that does not work the list stays.
func (p *Place) step(from, to *[]catalog.RateCard) {
	n := len(*from)
	if n == 0 {
		return
	}
	target := (*from)[n-1]
	at := slices.IndexFunc(p.all, func(c catalog.RateCard) bool { return c.ID == target.ID })
	parts.Background(func() func() {
		kept, err := p.cards.SaveRateCard(context.Background(), target)
		return func() {
			if err != nil {
				p.fault.SetText("That could not be done: " + err.Error())
				return
			}
			*from = (*from)[:n-1]
			if at >= 0 {
				*to = append(*to, p.all[at])
			}
			p.want = kept.ID
			p.editor.show(kept)
			p.read()
		}
	})
}

// listBeside keeps the list narrow and gives the editor the rest.
type listBeside struct{}

func (listBeside) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(620), max(o[0].MinSize().Height, o[1].MinSize().Height))
}

func (listBeside) Layout(o []fyne.CanvasObject, s fyne.Size) {
	left := min(look.Px(310), s.Width*0.3)
	gap := look.Px(look.SectionApart)
	o[0].Resize(fyne.NewSize(left, s.Height))
	o[1].Move(fyne.NewPos(left+gap, 0))
	o[1].Resize(fyne.NewSize(max(s.Width-left-gap, 0), s.Height))
}
