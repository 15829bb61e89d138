// Package book is the Quote book: every quote with its state, what it comes to and what is to be done next.
//
// Not in this package: the shop file, which is handed in as Quotes; the making of documents; prices.
package book

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Quotes is what the place asks of the shop file.
type Quotes interface {
	// Quotes finds quotes by words and state, the one changed last first; empty texts say nothing.
	Quotes(ctx context.Context, words, state string, limit int) ([]catalog.QuoteRow, error)
	// Draft reads the draft of a quote.
	Draft(ctx context.Context, id int64) (catalog.Draft, error)
	// Open gives the quotes that are drafts, sent or accepted and can be priced, each as a job of today.
	Open(ctx context.Context) ([]Open, error)
}

// Place is the Quote book.
type Place struct {
	quotes Quotes
	search *parts.Field
	states []*parts.Chip
	count  *parts.Text
	table  *parts.Table
	fault  *parts.Band
	detail *detail
	shared *sharing

	rows   []catalog.QuoteRow
	state  string
	turn   int
	column int  // sorted by; -1: the last changed first
	down   bool // the largest first

	OnOpen func(catalog.Draft) // shows a quote on the Counter
	OnCopy func(catalog.Draft) // shows it as a new quote
}

const limit = 500

var stateWords = []string{"all", "draft", "sent", "accepted", "declined", "finished"}

// StateColor is the colour in which a state is written; the word says the same.
func StateColor(state string) fyne.ThemeColorName {
	switch state {
	case "sent":
		return look.Warn
	case "accepted":
		return look.Accent
	case "declined":
		return look.Fault
	}
	return look.Muted
}

// New makes the place.
func New(q Quotes) *Place {
	p := &Place{
		quotes: q, search: parts.NewField("Search by number, customer or title"),
		count: parts.NewText("", parts.MutedStyle), fault: parts.NewBand(parts.Fault, ""), column: -1,
	}
	p.detail = newDetail(p)
	p.shared = newSharing(func() { p.showSharing(false) })
	p.search.OnChanged = func(string) { p.find() }
	p.search.OnKey = p.searchKey
	p.search.OnSubmitted = func(string) { p.opened(p.table.Selected()) }
	for _, word := range stateWords {
		p.states = append(p.states, parts.NewWordChip(word, func() { p.setState(word) }))
	}
	p.states[0].SetChosen(true)
	p.table = parts.NewTable([]parts.TableColumn{
		{Title: "state", Width: 66},
		{Title: "number", Width: 82, Least: 400},
		{Title: "customer", Share: 3},
		{Title: "title", Share: 3, Least: 600},
		{Title: "pieces", Width: 46, Right: true, Least: 640},
		{Title: "total", Width: 74, Right: true},
		{Title: "margin", Width: 56, Right: true, Least: 600},
		{Title: "needed by", Width: 80, Right: true, Least: 480},
		{Title: "next step", Share: 2, Least: 700},
	})
	p.table.Len = func() int { return len(p.rows) }
	p.table.Row = p.row
	p.table.OnSelect = p.selected
	p.table.OnOpen = p.opened
	p.table.OnHead = p.sortBy
	p.table.OnRune = func(r rune) {
		parts.Focus(p.search)
		p.search.TypedRune(r)
	}
	p.table.Empty = "No quote found."
	return p
}

// Content is part of the window's Place.
func (p *Place) Content() fyne.CanvasObject {
	chips := parts.Flow(6)
	for _, c := range p.states {
		chips.Add(c)
	}
	share := parts.NewSmallButton(parts.Quiet, "Share sheets", func() { p.showSharing(true) })
	head := parts.Row(14, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, p.search, p.count, share)
	list := container.NewStack(parts.NewSheetGround(), parts.Framed(
		parts.Inset(look.SectionPadX, look.SectionPadY, parts.Column(10, head, chips, p.fault)), nil, parts.Below(6, parts.Inset(6, 0, p.table))))
	return parts.Inset(look.PageMargin, look.PageMargin, parts.Beside(list, container.NewStack(p.detail.object, p.shared.object), 340))
}

// showSharing turns the right side to the sheets that open quotes could share, or back to the marked quote.
func (p *Place) showSharing(on bool) {
	if on {
		p.detail.object.Hide()
		p.shared.object.Show()
		p.shared.look(p.quotes)
		return
	}
	p.shared.object.Hide()
	p.detail.object.Show()
}

// Focus is part of the window's Place.
func (p *Place) Focus() { parts.Focus(p.search) }

// Shown reads the list anew.
func (p *Place) Shown() { p.find() }

func (p *Place) setState(word string) {
	for i, c := range p.states {
		c.SetChosen(stateWords[i] == word)
	}
	p.state = word
	if word == "all" {
		p.state = ""
	}
	p.find()
}

func (p *Place) find() {
	p.turn++
	turn, words, state := p.turn, p.search.Text(), p.state
	parts.Background(func() func() {
		rows, err := p.quotes.Quotes(context.Background(), words, state, limit)
		return func() {
			if turn != p.turn {
				return
			}
			p.failed(err)
			p.rows = p.sorted(rows)
			p.told()
			p.table.Reset()
			p.table.Select(0)
			if len(rows) == 0 {
				p.detail.clear()
			}
		}
	})
}

func (p *Place) failed(err error) {
	if err != nil {
		p.fault.SetText("The quote book could not be read: " + err.Error())
		return
	}
	p.fault.SetText("")
}

func (p *Place) told() {
	switch n := len(p.rows); n {
	case limit:
		p.count.SetText(fmt.Sprintf("first %d", n))
	case 1:
		p.count.SetText("1 quote")
	default:
		p.count.SetText(fmt.Sprintf("%d quotes", n))
	}
}

func (p *Place) row(i int) []parts.TableCell {
	r := p.rows[i]
	pieces := ""
	if r.Pieces > 0 {
		pieces = fmt.Sprint(r.Pieces)
	}
	margin := r.Margin
	if margin != "" {
		margin += " %"
	}
	customer := parts.TableCell{Text: r.Customer, Strong: true}
	if r.Customer == "" {
		customer = parts.TableCell{Text: "no name yet", Color: look.Muted}
	}
	return []parts.TableCell{
		{Text: r.State, Color: StateColor(r.State), Strong: true},
		{Text: r.Number},
		customer,
		{Text: r.Title, Color: look.Muted},
		{Text: pieces},
		{Text: present.Grouped(r.Total)},
		{Text: margin, Color: look.Muted},
		{Text: r.NeededBy},
		{Text: r.NextStep, Color: look.Muted},
	}
}

func (p *Place) selected(i int) {
	if i < len(p.rows) {
		p.showSharing(false)
		p.detail.show(p.rows[i])
	}
}

func (p *Place) opened(i int) { p.fetch(i, func(d catalog.Draft) { p.OnOpen(d) }) }

// fetch reads a row's draft and hands it on.
func (p *Place) fetch(i int, then func(catalog.Draft)) {
	if i < 0 || i >= len(p.rows) {
		return
	}
	id := p.rows[i].ID
	parts.Background(func() func() {
		d, err := p.quotes.Draft(context.Background(), id)
		return func() {
			p.failed(err)
			if err == nil {
				then(d)
			}
		}
	})
}

// searchKey lets the arrows move the mark while the focus stays in the search box.
func (p *Place) searchKey(e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyDown, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyPageUp:
		p.table.TypedKey(e)
		return true
	}
	return false
}
