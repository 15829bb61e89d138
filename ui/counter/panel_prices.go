package counter

import (
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// priceTable is the price each of every group, with a field for a typed price.
type priceTable struct {
	box       *fyne.Container
	words     *priceWords
	fields    []*parts.Field
	presenter *present.Counter
}

// Measures of the table at 100 %.
const (
	priceHead  = 22
	priceRow   = 30
	priceField = 58
	priceMore  = 60
	priceCost  = 62
)

// priceWords draws everything of the table but its fields.
type priceWords struct {
	parts.Figure
	table present.PriceTable
	stale bool
}

func newPriceTable(p *present.Counter) *priceTable {
	t := &priceTable{presenter: p, words: &priceWords{}}
	t.words.SetUp(t.words, t.words.min, t.words.draw)
	t.box = container.New(priceLayout{t}, t.words)
	return t
}

func (t *priceTable) set(table present.PriceTable, stale bool) {
	old := t.words.table
	for len(t.fields) < len(table.Rows) {
		t.add(len(t.fields))
	}
	for i, f := range t.fields {
		visible(f, i < len(table.Rows))
		if i < len(table.Rows) {
			fillPrice(f, table.Rows[i])
		}
	}
	t.words.table = table
	if t.words.stale == stale && samePrices(old, table) {
		return
	}
	t.words.stale = stale
	t.words.Redraw()
	relay(t.box)
}

// fillPrice shows a typed price as typed, strong, and a computed one plain; emptied, the field says what the rules give.
func fillPrice(f *parts.Field, r present.PriceRow) {
	f.SetHint(r.Each)
	f.SetStrong(r.Typed != "")
	f.SetWrong(r.Problem != "")
	if !f.Focused() {
		f.SetText(firstOf(r.Typed, r.Each))
	}
}

func samePrices(a, b present.PriceTable) bool {
	return slices.Equal(a.Columns, b.Columns) && slices.EqualFunc(a.Rows, b.Rows, func(x, y present.PriceRow) bool {
		return x.Key == y.Key && x.Name == y.Name && x.CostEach == y.CostEach && x.Other == y.Other &&
			x.Computed == y.Computed && x.Problem == y.Problem && slices.Equal(x.More, y.More)
	})
}

func (t *priceTable) add(i int) {
	f := parts.NewCell()
	f.OnChanged = func(text string) { t.presenter.SetPrice(t.words.table.Rows[i].Key, text) }
	f.OnFocus = func(gained bool) {
		if !gained {
			t.presenter.Leave()
			fillPrice(f, t.words.table.Rows[i])
		}
	}
	t.fields = append(t.fields, f)
	t.box.Add(f)
}

// second is the second line of a row: what is wrong, what the rules give beside a typed price, or prices by size.
func second(r present.PriceRow) string {
	switch {
	case r.Problem != "":
		return r.Problem
	case r.Computed != "" && r.Other != "":
		return "by the rules " + r.Computed + " · " + r.Other
	case r.Computed != "":
		return "by the rules " + r.Computed
	}
	return r.Other
}

// height of a row: a second line says what does not fit on the first.
func (w *priceWords) height(r present.PriceRow) float32 {
	if second(r) != "" {
		return look.Px(priceRow + 15)
	}
	return look.Px(priceRow)
}

func (w *priceWords) min() fyne.Size {
	h := look.Px(priceHead)
	for _, r := range w.table.Rows {
		h += w.height(r)
	}
	return fyne.NewSize(look.Px(200), h)
}

// columns are the right edges of price each, the further sizes, and cost each.
func (w *priceWords) columns(width float32) (each float32, more []float32, cost float32) {
	cost = width
	x := cost - look.Px(priceCost)
	more = make([]float32, len(w.table.Columns))
	for i := len(more) - 1; i >= 0; i-- {
		more[i] = x
		x -= look.Px(priceMore)
	}
	return x, more, cost
}

func (w *priceWords) draw(p *parts.Pen, size fyne.Size) {
	each, more, cost := w.columns(size.Width)
	caption := parts.CaptionStyle
	head := look.Px(14)
	p.Text(parts.Box{W: look.Px(90), H: head}, "price each", caption)
	cell := func(right, y float32, text string, s parts.Style) {
		p.Text(parts.Box{X: right - look.Px(70), Y: y, W: look.Px(70), H: look.Px(priceRow)}, text, s.Right())
	}
	for i, x := range more {
		p.Text(parts.Box{X: x - look.Px(70), W: look.Px(70), H: head}, w.table.Columns[i], caption.Right())
	}
	p.Text(parts.Box{X: cost - look.Px(70), W: look.Px(70), H: head}, "cost each", caption.Right())
	p.Rect(parts.Box{Y: look.Px(priceHead - 3), W: size.Width, H: 1}, parts.Fill{Color: look.Color(look.Rule)})
	y := look.Px(priceHead)
	text := parts.Style{}
	if w.stale {
		text = text.In(look.Muted)
	}
	for _, r := range w.table.Rows {
		p.Text(parts.Box{Y: y, W: each - look.Px(priceField+8), H: look.Px(priceRow)}, r.Name, text)
		for i, x := range more {
			cell(x, y, r.More[i], text)
		}
		cell(cost, y, r.CostEach, parts.MutedStyle)
		if s := second(r); s != "" {
			style := caption
			if r.Problem != "" {
				style = style.In(look.Fault)
			}
			p.Text(parts.Box{Y: y + look.Px(priceRow-4), W: size.Width, H: look.Px(15)}, s, style)
		}
		y += w.height(r)
	}
}

// priceLayout sets the fields into the table.
type priceLayout struct{ t *priceTable }

// MinSize is part of the toolkit's Layout.
func (l priceLayout) MinSize([]fyne.CanvasObject) fyne.Size { return l.t.words.min() }

// Layout is part of the toolkit's Layout.
func (l priceLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	w := l.t.words
	put(w, 0, 0, size.Width, size.Height)
	each, _, _ := w.columns(size.Width)
	y := look.Px(priceHead)
	wide, tall := look.Px(priceField), look.Px(look.CellHeight)
	for i, r := range w.table.Rows {
		put(l.t.fields[i], each-wide+look.Px(7), y+(look.Px(priceRow)-tall)/2, wide, tall)
		y += w.height(r)
	}
}
