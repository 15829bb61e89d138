// Package shop is the Shop place: what an hour costs, how prices are made of costs, extras and presets, calendar,
// numbering and letterhead; and beside it a sample job that shows what a change does.
//
// Not in this package: the shop file, which is handed in as File; the pricing of the sample job, which is the engine's.
package shop

import (
	"context"
	"slices"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

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

// Settings keeps what is set apart from the shop's rates.
type Settings interface {
	Settings(ctx context.Context) (catalog.Settings, error)
	SaveRules(ctx context.Context, s catalog.Shop, x catalog.Settings) error // both or neither
}

// Place is the Shop place.
type Place struct {
	file   File
	sample func(catalog.Shop) (quote.Result, error) // the sample job with other rates
	path   string

	PIN      PIN                                     // asked for on the way back from the customer's side; nil: none can be set
	Settings Settings                                // calendar, numbering, lettering, logo; nil: none of them is shown
	Choose   func(done func(path string))            // the system's choice of files
	Backups  func()                                  // opens the page of the backups; nil: there is none
	Now      func() time.Time                        // which day it is
	Picture  func(path string) (catalog.Logo, error) // reads a picture, off the window's goroutine

	pinEntry          *parts.Field
	pinSet, pinRemove *parts.Button
	logo              *logo

	form    *form.Form
	body    *fyne.Container
	scroll  *container.Scroll
	fault   *parts.Band
	save    *parts.Button
	back    *parts.Button
	panel   *panel
	levels  *levels
	grids   map[string]*parts.Grid
	rows    map[string][][]string
	kept    record // as it is in the file
	now     record // as it stands in the form, as far as it can be read
	level   int    // the level whose rules are shown
	undo    []record
	redo    []record
	read    bool
	changed bool
}

// New makes the place; path is where the shop file lies, sample prices the sample job under other rates.
func New(f File, sample func(catalog.Shop) (quote.Result, error), path string) *Place {
	p := &Place{
		file: f, sample: sample, path: path, form: form.New(), body: parts.Column(look.SectionApart),
		fault: parts.NewBand(parts.Fault, ""), grids: map[string]*parts.Grid{}, rows: map[string][][]string{},
	}
	p.Now = time.Now
	p.panel = newPanel(func() time.Time { return p.Now() })
	p.levels = newLevels(p)
	p.save = parts.NewDeed(parts.Filled, "Save shop", "", p.keep)
	p.back = parts.NewButton(parts.Quiet, "Take back", "", p.takeBack)
	p.save.Disable()
	p.back.Disable()
	p.form.OnChanged = func(string) { p.touched() }
	return p
}

// Content is part of the window's Place.
func (p *Place) Content() fyne.CanvasObject {
	jumps := p.build()
	p.panel.buttons.Add(p.back)
	p.panel.buttons.Add(p.save)
	p.scroll = parts.NewPageScroll(p.body)
	return parts.PageInset(parts.Beside(parts.Framed(parts.Below(8, jumps), nil, p.scroll), parts.Below(look.PageMargin, p.panel.object), 330))
}

// Focus is part of the window's Place.
func (p *Place) Focus() { parts.Focus(p.form.Field(timeFields[0].path)) }

// Shown reads the shop anew, unless it is being edited.
func (p *Place) Shown() {
	if p.changed {
		return
	}
	parts.Background(func() func() {
		r, err := p.readRecord()
		return func() {
			if err != nil {
				p.fault.SetText("The shop could not be read: " + err.Error())
				return
			}
			p.show(r)
		}
	})
}

func (p *Place) readRecord() (r record, err error) {
	ctx := context.Background()
	if r.Shop, err = p.file.Shop(ctx); err == nil && p.Settings != nil {
		r.Settings, err = p.Settings.Settings(ctx)
	}
	return r, err
}

// show fills the form.
func (p *Place) show(r record) {
	p.fault.SetText("")
	p.kept, p.now, p.changed, p.read = r, r, false, true
	p.level = min(p.level, max(len(r.Levels)-1, 0))
	p.fill()
	p.judge()
}

// fill writes what stands in the record into the form.
func (p *Place) fill() {
	for _, b := range p.allBound() {
		p.form.Set(b.path, b.write(&p.now))
	}
	for _, t := range p.allTicked() {
		p.form.Set(t.path, yes(*t.at(&p.now)))
	}
	for _, t := range p.tables() {
		p.rows[t.path] = t.write(&p.now)
		p.fillTable(t)
	}
	p.form.Set("units.temperature", p.now.Units.Temperature)
	p.logo.show(p.now.Logo)
	p.levels.show()
}

func (p *Place) allBound() []bound {
	all := slices.Concat(letterhead, timeFields, overheadFields, spareFields, quoteFields)
	if p.Settings != nil {
		all = slices.Concat(all, hourFields(), calendarFields, numberingFields, letteringFields, letterFields)
	}
	return all
}

func (p *Place) allTicked() []ticked {
	if p.Settings == nil {
		return nil
	}
	return slices.Concat(receivingTicks(), holidayTicks)
}

// tables are the lists of the page.
func (p *Place) tables() []table {
	all := []table{equipment, handlingTable, extras, presets}
	if p.Settings != nil {
		all = append(all, lettering)
	}
	return all
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
	r, problems := p.readForm()
	if len(problems) == 0 {
		p.now = r
		problems = p.panel.show(p.sample, r, p.level, p.changed)
	}
	p.form.Show(problems)
	enable(p.save, p.changed && len(problems) == 0)
	enable(p.back, p.changed)
}

// readForm reads what is typed into a record, and says what is wrong.
func (p *Place) readForm() (record, []quote.Problem) {
	r := form.Reader{Get: p.form.Get}
	s := p.now
	s.Levels = slices.Clone(s.Levels)
	for _, b := range p.allBound() {
		b.read(&r, b.path, &s)
	}
	for _, t := range p.allTicked() {
		*t.at(&s) = p.form.Get(t.path) != ""
	}
	for _, t := range p.tables() {
		t.read(&r, filled(p.rows[t.path]), &s)
	}
	if len(s.Levels) > 0 {
		p.levels.read(&r, &s.Levels[p.level])
		twice(&r, s.Levels, p.level)
	}
	if p.Settings != nil {
		s.Units.Temperature = p.form.Get("units.temperature")
		if len(r.Problems) == 0 {
			r.Problems = s.Check()
		}
	}
	return s, r.Problems
}

func enable(b *parts.Button, on bool) {
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
}

// filled leaves out empty rows.
func filled(rows [][]string) [][]string {
	return slices.DeleteFunc(slices.Clone(rows), func(row []string) bool {
		return !slices.ContainsFunc(row, func(text string) bool { return text != "" })
	})
}
