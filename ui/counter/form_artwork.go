package counter

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// artwork is the rows of artwork, and the field that adds to them.
type artwork struct {
	section   *parts.Section
	table     *fyne.Container
	words     *artWords
	add       *parts.Typeahead
	rows      []*artRow
	details   *artDetails
	view      []present.ArtRow
	presenter *present.Counter
	next      func() // where Enter leads from an empty field
	changed   func() // the height has changed
}

func newArtwork(p *present.Counter) *artwork {
	a := &artwork{presenter: p, words: &artWords{}}
	a.words.art = a
	a.words.SetUp(a.words, func() fyne.Size { return fyne.NewSize(px(200), px(20)) }, a.words.draw)
	a.details = newArtDetails(a)
	a.table = container.New(artLayout{a}, a.words, a.details.box)
	a.add = parts.NewTypeahead("Add a placement: full back, left chest, sleeve…", func(text string, show func([]parts.Option)) {
		show(presetOptions(p, text))
	})
	a.add.OpenEmpty = true
	a.add.OnChosen = func(o parts.Option) { a.take(o.Key) }
	a.add.OnUnknown = func(text string) {
		if text = strings.TrimSpace(text); text == "" {
			a.next()
		} else {
			a.take(text)
		}
	}
	a.section = parts.NewSection("Artwork", "", a.table, a.add.Field)
	return a
}

func presetOptions(p *present.Counter, text string) []parts.Option {
	var options []parts.Option
	for _, s := range p.Presets(text) {
		options = append(options, parts.Option{Key: s.Name, Name: s.Name, Detail: s.Width.String() + " × " + s.Height.String() + " in · common practice"})
	}
	return options
}

// take adds artwork at a place and goes on to its inks, or to its size where the place has no usual one.
func (a *artwork) take(name string) {
	a.add.Field.SetText("")
	key := a.presenter.AddPlacement(name)
	for i, r := range a.rows {
		if i < len(a.view) && a.view[i].Key == key {
			if a.view[i].Inches == "" {
				parts.Focus(r.inches.Field)
			} else {
				parts.Focus(r.inks.field)
			}
		}
	}
}

// reach puts the focus into the field that adds.
func (a *artwork) reach() { parts.Focus(a.add.Field) }

func (a *artwork) show(v *present.View, anew bool) {
	for len(a.rows) < len(v.Form.Artwork) {
		a.rows = append(a.rows, newArtRow(a))
	}
	a.view = v.Form.Artwork
	options := a.presenter.OnOptions()
	methods := a.presenter.Methods()
	for i, r := range a.rows {
		r.visible(i < len(a.view))
		if i < len(a.view) {
			r.show(a.view[i], options, methods, anew)
		}
	}
	a.details.show(v, anew)
	visible(a.table, len(a.view) > 0)
	a.words.set(a.view)
	relay(a.table)
}

// open shows the details below a row, or puts them away.
func (a *artwork) open(key string) {
	if a.details.key == key {
		key = ""
	}
	a.details.key = key
	v := a.presenter.View()
	a.details.show(&v, true)
	a.words.Redraw()
	relay(a.table)
	a.changed()
}
