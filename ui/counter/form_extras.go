package counter

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// extras are what is charged or costs beside garments and artwork.
type extras struct {
	section   *parts.Section
	grid      *fyne.Container
	presenter *present.Counter
	rows      []*extraField
	fixed     []*fixedField
	add       *parts.Typeahead
	more      *parts.Button
}

// extraField is the charge of one of the shop's extras.
type extraField struct {
	key   string
	box   *parts.Captioned
	field *entry
	off   *parts.Button
	outer *fyne.Container
}

// fixedField is one of the fields every job has.
type fixedField struct {
	box   *parts.Captioned
	field *entry
	read  func(f *present.Form) string
	path  string
}

func newExtras(p *present.Counter) *extras {
	e := &extras{presenter: p, grid: container.New(evenly{wide: 104, apart: 10})}
	add := func(caption, hint, unit, path string, set func(string), read func(f *present.Form) string) {
		f := parts.NewField(hint)
		f.Unit = unit
		x := &fixedField{field: newEntry(p, f, set), read: read, path: path}
		x.box = parts.NewCaptioned(caption, f)
		e.fixed = append(e.fixed, x)
		e.grid.Add(x.box)
	}
	add("Art time", "none", "min", "art.minutes", p.SetArtMinutes, func(f *present.Form) string { return f.ArtMinutes })
	add("Art charge", "none", "", "art.charge", p.SetArtCharge, func(f *present.Form) string { return f.ArtCharge })
	add("Rush", "none", "%", "pricing.rush_percent", p.SetRush, func(f *present.Form) string { return f.Rush })
	add("Off", "10 % or 15.00", "", "pricing.discount", p.SetOff, func(f *present.Form) string { return f.Off })
	add("Delivery costs", "none", "", "pricing.delivery_cost", p.SetDeliveryCost, func(f *present.Form) string { return f.DelivCost })
	add("Delivery, charged", "none", "", "pricing.delivery_charge", p.SetDeliveryCharge, func(f *present.Form) string { return f.DelivPrice })
	add("Ladder", "the shop's", "", "ladder", p.SetLadder, func(f *present.Form) string { return f.Ladder })
	e.add = newAddExtra(p, e)
	e.more = parts.NewButton(parts.Link, "+ extra", "", e.open)
	e.section = parts.NewSection("Extras", "", e.add.Field, e.grid)
	e.section.Right.Add(e.more)
	return e
}

func newAddExtra(p *present.Counter, e *extras) *parts.Typeahead {
	t := parts.NewTypeahead("An extra of the shop", func(text string, show func([]parts.Option)) {
		var options []parts.Option
		for _, x := range p.FindExtras(text) {
			options = append(options, parts.Option{Key: x.Key, Name: x.Extra.Name, Detail: x.Extra.Charge.String()})
		}
		show(options)
	})
	t.OpenEmpty = true
	t.OnChosen = func(o parts.Option) {
		p.AddExtra(o.Key)
		e.reach()
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

func (e *extras) relay() { relay(e.section.Body) }

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
		x.field.fill(x.read(&v.Form), anew)
		x.box.SetProblem(v.ProblemWithin(x.path))
	}
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

// cornered puts a second object into the upper right corner of the first.
type cornered struct{}

// MinSize is part of the toolkit's Layout.
func (cornered) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

// Layout is part of the toolkit's Layout.
func (cornered) Layout(o []fyne.CanvasObject, size fyne.Size) {
	put(o[0], 0, 0, size.Width, size.Height)
	m := o[1].MinSize()
	put(o[1], size.Width-m.Width+px(4), -px(5), m.Width, m.Height)
}

// evenly sets objects in equal columns, as many as have room; the last line is filled up.
type evenly struct{ wide, apart float32 }

func (e evenly) columns(width float32) int {
	return max(int((width+px(e.apart))/(px(e.wide)+px(e.apart))), 1)
}

// MinSize is part of the toolkit's Layout.
func (e evenly) MinSize(objects []fyne.CanvasObject) fyne.Size {
	bottom := float32(0)
	for _, o := range objects {
		if o.Visible() {
			bottom = max(bottom, o.Position().Y+o.MinSize().Height)
		}
	}
	return fyne.NewSize(px(e.wide), bottom)
}

// Layout is part of the toolkit's Layout.
func (e evenly) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	n := e.columns(size.Width)
	wide := (size.Width - float32(n-1)*px(e.apart)) / float32(n)
	i, y, tall := 0, float32(0), float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		if i == n {
			i, y, tall = 0, y+tall+px(e.apart), 0
		}
		h := o.MinSize().Height
		put(o, float32(i)*(wide+px(e.apart)), y, wide, h)
		h = o.MinSize().Height
		put(o, float32(i)*(wide+px(e.apart)), y, wide, h)
		tall = max(tall, h)
		i++
	}
}

func plain(n int) string { return strconv.Itoa(n) }
