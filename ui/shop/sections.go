package shop

import (
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// tables are the lists of the page.
var tables = []table{equipment, extras, presets}

// build makes the page once.
func (p *Place) build() {
	p.body.Objects = []fyne.CanvasObject{
		p.fault, p.form.Rest(),
		parts.NewSection("Time", "what an hour of pressing costs", parts.Fields(128, p.fields(timeFields)...)),
		parts.NewSection("Overhead and press", "what goes on whether anything is pressed or not",
			parts.Fields(150, p.fields(overheadFields)...), p.table(equipment, 150, 96)),
		parts.NewSection("Spares", "bought against misprints", parts.Fields(100, p.fields(spareFields)...)),
		p.levelSection(),
		parts.NewSection("Extras", "charges and costs beside garments and artwork; yes or empty in the last three", p.table(extras, 150, 78)),
		parts.NewSection("Placements", "usual sizes, common practice", p.table(presets, 150, 100)),
		parts.NewSection("Quotes", "", parts.Fields(220, p.fields(quoteFields)...)),
		parts.NewSection("Letterhead", "printed on every paper", parts.Fields(220, p.fields(letterhead)...)),
	}
	if p.PIN != nil {
		p.body.Add(p.pinSection())
	}
	p.body.Add(parts.NewSection("Shop file", "everything is kept in this one file", parts.NewText(p.path, parts.MutedStyle.Shortened())))
}

func (p *Place) fields(all []bound) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, b := range all {
		if b.unit == "" && textual(b.path) {
			out = append(out, p.form.Text(b.path, b.caption, ""))
			continue
		}
		out = append(out, p.form.Number(b.path, b.caption, b.unit))
	}
	return out
}

// textual tells fields of words from fields of numbers, which stand against the right edge.
func textual(path string) bool {
	return path == "terms" || path == "ladder" || slices.ContainsFunc(letterhead, func(b bound) bool { return b.path == path })
}

func (p *Place) table(t table, first, wide float32) fyne.CanvasObject {
	g := parts.NewGrid(first, wide).Words(t.words...)
	p.grids[t.path] = g
	put := func(row, col int, text string) {
		rows := p.rows[t.path]
		for len(rows) <= row {
			rows = append(rows, nil)
		}
		for len(rows[row]) < len(t.heads) {
			rows[row] = append(rows[row], "")
		}
		if col < len(t.heads) {
			rows[row][col] = text
		}
		p.rows[t.path] = rows
	}
	g.OnChanged = func(row, col int, text string) {
		put(row, col, text)
		p.fillTable(t)
		p.touched()
	}
	g.OnPaste = func(row, col int, cells [][]string) {
		for r, line := range cells {
			for c, text := range line {
				put(row+r, col+c, text)
			}
		}
		p.fillTable(t)
		p.touched()
	}
	return g
}

// fillTable shows a table's rows with an empty one below.
func (p *Place) fillTable(t table) {
	rows := slices.Clone(p.rows[t.path])
	if n := len(rows); n == 0 || len(filled(rows[n-1:])) > 0 {
		rows = append(rows, make([]string, len(t.heads)))
	}
	p.grids[t.path].Set(t.heads, rows)
}

var bases = []parts.Option{{Key: "margin", Name: "margin"}, {Key: "markup", Name: "markup"}, {Key: "split", Name: "split"}, {Key: "hourly", Name: "hourly"}}

var sizeRules = []parts.Option{{Name: "added to by the blanks' prices"}, {Key: "table", Name: "added to by the table"}, {Key: "spread", Name: "the same price"}}

func (p *Place) levelSection() fyne.CanvasObject {
	chips := parts.Flow(6)
	s := parts.NewSection("Price levels", "how a price is made of what a job costs", chips)
	p.levels = nil
	p.form.OnChanged = func(string) { p.touched() }
	objects := []fyne.CanvasObject{p.form.Choice("pricing.basis", "Basis", bases), p.form.Choice("pricing.sizes", "Large sizes are", sizeRules)}
	for _, f := range levelFields {
		if f.path == "pricing.percents" || f.path == "pricing.upcharges" {
			objects = append(objects, p.form.Text(f.path, f.caption, map[string]string{"pricing.percents": "12 45, 24 42", "pricing.upcharges": "2XL 2.00, 3XL 3.50"}[f.path]))
			continue
		}
		objects = append(objects, p.form.Number(f.path, f.caption, f.unit))
	}
	s.Body.Add(parts.Fields(140, objects...))
	s.Body.Add(parts.Flow(16, p.form.Check("pricing.card.pass_on", "the card fee is passed on"),
		p.form.Check("pricing.never_rise", "a larger quantity never costs more each")))
	p.panel.levels = chips
	return s
}

// showLevel shows the rules of the level that is chosen.
func (p *Place) showLevel() {
	p.panel.levels.Objects = nil
	for i, l := range p.shop.Levels {
		c := parts.NewWordChip(l.Name, func() {
			p.level = i
			p.showLevel()
			p.judge()
		})
		c.SetChosen(i == p.level)
		p.panel.levels.Add(c)
	}
	p.panel.levels.Refresh()
	if len(p.shop.Levels) == 0 {
		return
	}
	pricing := p.shop.Levels[p.level].Pricing
	p.form.Set("pricing.basis", pricing.Basis)
	p.form.Set("pricing.sizes", upchargeIsUsual(pricing.Sizes))
	p.form.Set("pricing.card.pass_on", yes(pricing.Card.PassOn))
	p.form.Set("pricing.never_rise", yes(!pricing.MayRise))
	for _, f := range levelFields {
		p.form.Set(f.path, f.write(&pricing))
	}
}

// upchargeIsUsual gives one name to the usual rule, which may be left unsaid.
func upchargeIsUsual(rule string) string {
	if rule == "upcharge" {
		return ""
	}
	return rule
}

func (p *Place) readLevel(r *form.Reader, pricing *quote.Pricing) {
	pricing.Basis, pricing.Sizes = p.form.Get("pricing.basis"), p.form.Get("pricing.sizes")
	pricing.Card.PassOn, pricing.MayRise = p.form.Get("pricing.card.pass_on") != "", p.form.Get("pricing.never_rise") == ""
	for _, f := range levelFields {
		f.read(r, f.path, pricing)
	}
}
