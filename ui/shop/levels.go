package shop

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

var bases = []parts.Option{{Key: "margin", Name: "margin"}, {Key: "markup", Name: "markup"}, {Key: "split", Name: "split"}, {Key: "hourly", Name: "hourly"}}

var sizeRules = []parts.Option{{Name: "added to by the blanks' prices"}, {Key: "table", Name: "added to by the table"}, {Key: "spread", Name: "the same price"}}

// levels are the price levels: chips to choose one, and the rules of the one that is chosen.
type levels struct {
	place  *Place
	chips  *fyne.Container
	remove *parts.Button
}

func newLevels(p *Place) *levels { return &levels{place: p, chips: parts.Flow(6)} }

// section holds how a price is made.
func (l *levels) section() *parts.Section {
	f := l.place.form
	l.remove = parts.NewSmallButton(parts.Quiet, "Drop this level", l.drop)
	objects := []fyne.CanvasObject{f.Text("level.name", "Level", "like resale"), f.Choice("pricing.basis", "Basis", bases), f.Choice("pricing.sizes", "Large sizes are", sizeRules)}
	objects = append(objects, l.fields(priceFields)...)
	s := parts.NewSection("Price levels", "how a price is made of what a job costs, for each kind of customer", l.chips, parts.Fields(140, objects...),
		parts.Flow(16, f.Check("pricing.never_rise", "a larger quantity never costs more each")))
	s.Right.Add(parts.NewSmallButton(parts.Quiet, "Another level", l.add))
	s.Right.Add(l.remove)
	return s
}

// taxSection holds tax and card fee, which belong to the level too.
func (l *levels) taxSection() *parts.Section {
	f := l.place.form
	fields := l.fields(taxFields)
	boxes := parts.Flow(16, parts.Inset(0, 3, parts.NewText("tax falls on", parts.MutedStyle)))
	for _, part := range taxed {
		boxes.Add(f.Check(taxedPath(part[0]), part[1]))
	}
	boxes.Add(f.Check("pricing.tax.exempt", "nobody of this level pays it"))
	return parts.NewSection("Tax and card fee", "of the level above; local law decides what is taxed",
		parts.Fields(170, fields[0], f.Choice(clothingRule, "Clothing is", clothingRules), fields[1]), f.Around("pricing.tax.on", "", boxes),
		parts.Fields(140, fields[2:]...), parts.Flow(16, f.Check("pricing.card.pass_on", "the card fee is passed on")))
}

func (l *levels) fields(all []leveled) (objects []fyne.CanvasObject) {
	f := l.place.form
	for _, x := range all {
		if hint, ok := texts[x.path]; ok {
			objects = append(objects, f.Text(x.path, x.caption, hint))
			continue
		}
		objects = append(objects, f.Number(x.path, x.caption, x.unit))
	}
	return objects
}

// show shows the rules of the level that is chosen.
func (l *levels) show() {
	p := l.place
	l.chips.Objects = nil
	for i, x := range p.now.Levels {
		c := parts.NewWordChip(x.Name, func() { l.choose(i) })
		c.SetChosen(i == p.level)
		l.chips.Add(c)
	}
	l.chips.Refresh()
	enable(l.remove, len(p.now.Levels) > 1)
	if len(p.now.Levels) == 0 {
		return
	}
	x := p.now.Levels[p.level]
	pricing := x.Pricing
	f := p.form
	f.Set("level.name", x.Name)
	f.Set("pricing.basis", pricing.Basis)
	f.Set("pricing.sizes", upchargeIsUsual(pricing.Sizes))
	f.Set("pricing.card.pass_on", yes(pricing.Card.PassOn))
	f.Set("pricing.never_rise", yes(!pricing.MayRise))
	f.Set("pricing.tax.exempt", yes(pricing.Tax.Exempt))
	f.Set(clothingRule, "")
	if c := pricing.Tax.Clothing; c != nil {
		f.Set(clothingRule, c.Rule)
	}
	for _, part := range taxed {
		f.Set(taxedPath(part[0]), yes(slices.Contains(pricing.Tax.On, part[0])))
	}
	for _, x := range levelFields {
		f.Set(x.path, x.write(&pricing))
	}
}

func (l *levels) choose(i int) {
	if _, problems := l.place.readForm(); len(problems) > 0 {
		return // what is typed for this level cannot be read yet, and would be lost
	}
	l.place.level = i
	l.show()
	l.place.judge()
}

// add makes another level of the one that is shown.
func (l *levels) add() {
	p := l.place
	r, problems := p.readForm()
	if len(problems) > 0 || len(r.Levels) == 0 {
		return
	}
	copied := r.Levels[p.level]
	copied.Name = freeName(r.Levels, copied.Name+" copy")
	p.now = r
	p.now.Levels = append(slices.Clone(r.Levels), copied)
	p.level = len(p.now.Levels) - 1
	l.show()
	p.touched()
	field := p.form.Field("level.name")
	parts.Focus(field)
	field.SelectAll()
}

func (l *levels) drop() {
	p := l.place
	if len(p.now.Levels) < 2 {
		return
	}
	p.now.Levels = slices.Delete(slices.Clone(p.now.Levels), p.level, p.level+1)
	p.level = min(p.level, len(p.now.Levels)-1)
	l.show()
	p.touched()
}

func freeName(all []catalog.Level, name string) string {
	for slices.ContainsFunc(all, func(x catalog.Level) bool { return x.Name == name }) {
		name += " copy"
	}
	return name
}

// read reads the form into the level that is shown.
func (l *levels) read(r *form.Reader, x *catalog.Level) {
	f, pricing := l.place.form, &x.Pricing
	x.Name = r.Need("level.name", "the level a name, like retail")
	pricing.Basis, pricing.Sizes = f.Get("pricing.basis"), f.Get("pricing.sizes")
	pricing.Card.PassOn, pricing.MayRise = f.Get("pricing.card.pass_on") != "", f.Get("pricing.never_rise") == ""
	readTaxed(r, &pricing.Tax)
	for _, b := range levelFields {
		b.read(r, b.path, pricing)
	}
}

// twice says where a level has the name of another.
func twice(r *form.Reader, all []catalog.Level, at int) {
	for i, x := range all {
		if i != at && x.Name != "" && strings.EqualFold(x.Name, all[at].Name) {
			r.Say("level.name", "another level has this name")
			return
		}
	}
}

// upchargeIsUsual gives one name to the usual rule, which may be left unsaid.
func upchargeIsUsual(rule string) string {
	if rule == "upcharge" {
		return ""
	}
	return rule
}

// levelFirst puts a level first, so that the sample job is priced with it.
func levelFirst(s catalog.Shop, at int) catalog.Shop {
	if at > 0 && at < len(s.Levels) {
		s.Levels = slices.Clone(s.Levels)
		s.Levels[0], s.Levels[at] = s.Levels[at], s.Levels[0]
	}
	return s
}
