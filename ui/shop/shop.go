// Package shop is the Shop place: what an hour costs, how prices are made of costs, extras and presets, the
// letterhead; and beside it a sample job that shows what a change does.
//
// Not in this package: the shop file, which is handed in as File; the pricing of the sample job, which is the engine's.
package shop

import (
	"context"
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// File is what the place asks of the shop file.
type File interface {
	Shop(ctx context.Context) (catalog.Shop, error)
	SaveShop(ctx context.Context, s catalog.Shop) error
}

// Place is the Shop place.
type Place struct {
	file   File
	sample func(catalog.Shop) (quote.Result, error) // the sample job with other rates
	path   string

	PIN PIN // asked for on the way back from the customer's side; nil: none can be set

	pinEntry          *parts.Field
	pinSet, pinRemove *parts.Button

	form    *form.Form
	body    *fyne.Container
	fault   *parts.Band
	save    *parts.Button
	back    *parts.Button
	panel   *panel
	levels  []*parts.Chip
	grids   map[string]*parts.Grid
	rows    map[string][][]string
	kept    catalog.Shop // as it is in the file
	shop    catalog.Shop // as it stands in the form, as far as it can be read
	level   int          // the level whose rules are shown
	undo    []catalog.Shop
	read    bool
	changed bool
}

// New makes the place; path is where the shop file lies, sample prices the sample job under other rates.
func New(f File, sample func(catalog.Shop) (quote.Result, error), path string) *Place {
	p := &Place{
		file: f, sample: sample, path: path, form: form.New(), body: parts.Column(look.SectionApart),
		fault: parts.NewBand(parts.Fault, ""), panel: newPanel(), grids: map[string]*parts.Grid{}, rows: map[string][][]string{},
	}
	p.save = parts.NewButton(parts.Filled, "Save shop", "", p.keep)
	p.back = parts.NewButton(parts.Quiet, "Take back", "", p.takeBack)
	p.save.Disable()
	p.back.Disable()
	p.form.OnChanged = func(string) { p.touched() }
	return p
}

// Content is part of the window's Place.
func (p *Place) Content() fyne.CanvasObject {
	p.build()
	p.panel.buttons.Add(p.back)
	p.panel.buttons.Add(p.save)
	return parts.PageInset(parts.Beside(parts.NewPageScroll(p.body), parts.Below(look.PageMargin, p.panel.object), 330))
}

// Focus is part of the window's Place.
func (p *Place) Focus() { parts.Focus(p.form.Field(timeFields[0].path)) }

// Shown reads the shop anew, unless it is being edited.
func (p *Place) Shown() {
	if p.changed {
		return
	}
	parts.Background(func() func() {
		s, err := p.file.Shop(context.Background())
		return func() {
			if err != nil {
				p.fault.SetText("The shop could not be read: " + err.Error())
				return
			}
			p.show(s)
		}
	})
}

// show fills the form.
func (p *Place) show(s catalog.Shop) {
	p.fault.SetText("")
	p.kept, p.shop, p.changed, p.read = s, s, false, true
	p.level = min(p.level, max(len(s.Levels)-1, 0))
	for _, b := range allBound() {
		p.form.Set(b.path, b.write(&s))
	}
	for _, t := range tables {
		p.rows[t.path] = t.write(&s)
		p.fillTable(t)
	}
	p.showLevel()
	p.judge()
}

func allBound() []bound {
	return slices.Concat(letterhead, timeFields, overheadFields, spareFields, quoteFields)
}

// touched reads the form after an edit.
func (p *Place) touched() {
	p.changed = true
	p.judge()
}

// judge reads the form, puts problems beside their fields, and prices the sample job with what stands there.
func (p *Place) judge() {
	if !p.read {
		return
	}
	r := form.Reader{Get: p.form.Get}
	s := p.shop
	s.Levels = slices.Clone(s.Levels)
	for _, b := range allBound() {
		b.read(&r, b.path, &s)
	}
	for _, t := range tables {
		t.read(&r, filled(p.rows[t.path]), &s)
	}
	if len(s.Levels) > 0 {
		p.readLevel(&r, &s.Levels[p.level].Pricing)
	}
	problems := r.Problems
	if len(problems) == 0 {
		p.shop = s
		problems = p.panel.show(p.sample, levelFirst(s, p.level), p.changed)
	}
	p.form.Show(problems)
	enable(p.save, p.changed && len(problems) == 0)
	enable(p.back, p.changed)
}

// levelFirst puts a level first, so that the sample job is priced with it.
func levelFirst(s catalog.Shop, at int) catalog.Shop {
	if at > 0 && at < len(s.Levels) {
		s.Levels = slices.Clone(s.Levels)
		s.Levels[0], s.Levels[at] = s.Levels[at], s.Levels[0]
	}
	return s
}

func enable(b *parts.Button, on bool) {
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
}

func (p *Place) keep() { p.put(p.shop, p.kept) }

// put keeps a shop in the file; before is what undo brings back.
func (p *Place) put(s, before catalog.Shop) {
	parts.Background(func() func() {
		err := p.file.SaveShop(context.Background(), s)
		return func() {
			if err != nil {
				p.fault.SetText("The shop could not be saved: " + err.Error())
				return
			}
			p.undo = append(p.undo, before)
			p.show(s)
		}
	})
}

func (p *Place) takeBack() { p.show(p.kept) }

// Undo takes back what was typed since the last save, and after that the last save.
func (p *Place) Undo() {
	if p.changed {
		p.takeBack()
		return
	}
	if n := len(p.undo); n > 0 {
		before := p.undo[n-1]
		p.put(before, p.kept)
		p.undo = p.undo[:n-1]
	}
}

// Redo is part of the window's Undoer: undoing an undone save does it again.
func (p *Place) Redo() { p.Undo() }

// filled leaves out empty rows.
func filled(rows [][]string) [][]string {
	return slices.DeleteFunc(slices.Clone(rows), func(row []string) bool {
		return !slices.ContainsFunc(row, func(text string) bool { return text != "" })
	})
}
