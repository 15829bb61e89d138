package counter

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// extras are what is charged or costs beside garments and artwork, and what is seldom said of a job. Only what every job
// has stands there from the start; the rest comes in by the list behind "+ extra".
type extras struct {
	section   *parts.Section
	grid      *fyne.Container
	presenter *present.Counter
	rows      []*extraField
	fixed     []*fixedField
	add       *parts.Typeahead
	more      *parts.Button
	exempt    *parts.Chip
	changed   func() // the height has changed
}

// extraField is the charge of one of the shop's extras.
type extraField struct {
	key   string
	box   *parts.Captioned
	field *entry
	off   *parts.Button
	outer *fyne.Container
}

// fixedField is a field that is not one of the shop's extras.
type fixedField struct {
	caption string
	box     *parts.Captioned
	field   *entry
	set     func(text string)
	read    func(f *present.Form) string
	path    string
	seldom  bool // shown once it is asked for, or holds something
	asked   bool
}

func newExtras(p *present.Counter) *extras {
	e := &extras{presenter: p, grid: container.New(evenly{wide: 112, apart: 10})}
	for _, x := range []*fixedField{
		{caption: "Art time", path: "art.minutes", set: p.SetArtMinutes, read: func(f *present.Form) string { return f.ArtMinutes }},
		{caption: "Art charge", path: "art.charge", set: p.SetArtCharge, read: func(f *present.Form) string { return f.ArtCharge }},
		{caption: "Rush", path: "pricing.rush_percent", set: p.SetRush, read: func(f *present.Form) string { return f.Rush }},
		{caption: "Off, % or amount", path: "pricing.discount", set: p.SetOff, read: func(f *present.Form) string { return f.Off }},
		{caption: "Delivery costs us", path: "pricing.delivery_cost", set: p.SetDeliveryCost, read: func(f *present.Form) string { return f.DelivCost }, seldom: true},
		{caption: "Delivery, charged", path: "pricing.delivery_charge", set: p.SetDeliveryCharge, read: func(f *present.Form) string { return f.DelivPrice }, seldom: true},
		{caption: "Ladder of its own", path: "ladder", set: p.SetLadder, read: func(f *present.Form) string { return f.Ladder }, seldom: true},
		{caption: "Note on the quote", path: "notes", set: p.SetNotes, read: func(f *present.Form) string { return f.Notes }, seldom: true},
	} {
		e.addFixed(x)
	}
	e.add = newAddExtra(p, e)
	e.more = parts.NewButton(parts.Link, "+ extra", "", e.open)
	e.exempt = parts.NewWordChip("no sales tax", func() { p.SetExempt(false) })
	e.exempt.SetChosen(true)
	e.section = parts.NewSection("Extras", "", e.add.Field, e.grid)
	e.section.Right.Add(e.exempt)
	e.section.Right.Add(e.more)
	return e
}

func (e *extras) addFixed(x *fixedField) {
	f := parts.NewField("none")
	f.Unit = map[string]string{"Art time": "min", "Rush": "%"}[x.caption]
	if x.seldom {
		f.Hint = map[string]string{"Ladder of its own": "12 24 48"}[x.caption]
	}
	x.field = newEntry(e.presenter, f, x.set)
	x.box = parts.NewCaptioned(x.caption, f)
	if x.seldom {
		x.box.Hide()
	}
	e.fixed = append(e.fixed, x)
	e.grid.Add(x.box)
}

// noTax is the option that frees the customer from tax.
const noTax = "No sales tax"

// options are the shop's extras, and the fields that are seldom needed.
func (e *extras) options(text string) []parts.Option {
	var out []parts.Option
	for _, x := range e.presenter.FindExtras(text) {
		out = append(out, parts.Option{Key: x.Key, Name: x.Extra.Name, Detail: x.Extra.Charge.String()})
	}
	for _, x := range e.fixed {
		if x.seldom && !x.box.Visible() && present.Matches(x.caption, text) {
			out = append(out, parts.Option{Name: x.caption, Any: x})
		}
	}
	if present.Matches(noTax, text) {
		out = append(out, parts.Option{Name: noTax, Detail: "an exempt customer", Any: noTax})
	}
	return out
}

func newAddExtra(p *present.Counter, e *extras) *parts.Typeahead {
	t := parts.NewTypeahead("An extra of the shop, delivery, a note…", func(text string, show func([]parts.Option)) {
		show(e.options(text))
	})
	t.OpenEmpty = true
	t.OnChosen = func(o parts.Option) {
		switch x := o.Any.(type) {
		case *fixedField:
			x.asked = true
			visible(x.box, true)
			e.relay()
			parts.Focus(x.field.Field)
		case string:
			p.SetExempt(true)
			e.reach()
		default:
			p.AddExtra(o.Key)
			e.reach()
		}
	}
	left := t.Field.OnFocus
	t.Field.OnFocus = func(gained bool) {
		left(gained)
		if !gained {
			t.Field.SetText("")
			t.Field.Hide()
			e.relay()
		}
	}
	t.Field.Hide()
	return t
}

func (e *extras) open() {
	e.add.Field.Show()
	e.relay()
	parts.Focus(e.add.Field)
}

// relay lays the section out anew, whose height may be another.
func (e *extras) relay() {
	relay(e.grid)
	relay(e.section.Body)
	e.changed()
}

// reach puts the focus into the first field.
func (e *extras) reach() {
	for _, x := range e.rows {
		if x.outer.Visible() {
			parts.Focus(x.field.Field)
			return
		}
	}
	parts.Focus(e.fixed[0].field.Field)
}

func (e *extras) show(v *present.View, anew bool) {
	for len(e.rows) < len(v.Form.Extras) {
		e.addRow(e.presenter)
	}
	moved := false
	for i, x := range e.rows {
		moved = visible(x.outer, i < len(v.Form.Extras)) || moved
		if i < len(v.Form.Extras) {
			x.show(v.Form.Extras[i], anew)
		}
	}
	for _, x := range e.fixed {
		text := x.read(&v.Form)
		x.asked = x.asked && !anew
		moved = visible(x.box, !x.seldom || x.asked || text != "") || moved
		x.field.fill(text, anew)
		x.box.SetProblem(v.ProblemWithin(x.path))
	}
	visible(e.exempt, v.Form.Exempt)
	if moved {
		relay(e.grid)
	}
}

func (e *extras) addRow(p *present.Counter) {
	x := &extraField{}
	x.field = newEntry(p, parts.NewField("none"), func(text string) { p.SetExtraCharge(x.key, text) })
	x.box = parts.NewCaptioned("extra "+strconv.Itoa(len(e.rows)), x.field.Field)
	x.off = parts.NewButton(parts.Link, "×", "", func() { p.RemoveExtra(x.key) })
	x.outer = container.New(cornered{}, x.box, x.off)
	e.rows = append(e.rows, x)
	all := append([]fyne.CanvasObject{}, e.grid.Objects[:len(e.rows)-1]...)
	all = append(all, x.outer)
	e.grid.Objects = append(all, e.grid.Objects[len(e.rows)-1:]...)
	e.grid.Refresh()
}

func (x *extraField) show(v present.ExtraRow, anew bool) {
	x.key = v.Key
	x.box.Caption.SetText(v.Name + ", " + v.Unit)
	x.field.fill(v.Charge, anew)
	x.box.SetProblem(v.Problem)
}
