package counter

import (
	"reflect"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// artColumns are the left edges and widths of a row's columns; in a narrow form a row takes two lines.
type artColumns struct {
	x, w   [6]float32 // name, inches, inks, on, method, each
	two    bool
	remove float32
}

// Measures at 100 %.
const (
	artHead    = 20
	artRowTall = 34
	artSecond  = 15
	artEach    = 50
	artMore    = 24
	artNarrow  = 560
)

func columnsFor(width float32) artColumns {
	c := artColumns{two: width < px(artNarrow), remove: width - px(artMore)}
	each := px(artEach)
	room := width - px(artMore) - each - px(6)
	shares := []float32{0.185, 0.15, 0.265, 0.165, 0.235}
	if c.two {
		shares = []float32{0.30, 0.26, 0.44, 0.36, 0.64}
	}
	x := float32(0)
	for i, s := range shares {
		if c.two && i == 3 {
			x = 0
		}
		c.x[i], c.w[i] = x, room*s
		x += c.w[i]
	}
	c.x[5], c.w[5] = width-px(artMore)-each, each
	return c
}

// rowTall is the height of a row with its second line and its problem.
func (c artColumns) rowTall(r present.ArtRow) float32 {
	h := px(artRowTall)
	if c.two {
		h += px(28)
	}
	if r.Against != "" {
		h += px(artSecond - 5)
	}
	if problemOf(r) != "" {
		h += px(problemTall)
	}
	return h
}

func problemOf(r present.ArtRow) string {
	return firstOf(r.Problems.Name, r.Problems.Inches, r.Problems.Inks, r.Problems.On, r.Problems.Method, r.Problems.Other)
}

// artLayout sets the rows' parts and the details below the row they belong to.
type artLayout struct{ a *artwork }

// MinSize is part of the toolkit's Layout.
func (l artLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	width := l.a.table.Size().Width
	if width == 0 {
		width = px(640)
	}
	c := columnsFor(width)
	h := px(artHead)
	for _, r := range l.a.view {
		h += c.rowTall(r)
		if r.Key == l.a.details.key {
			h += l.a.details.box.MinSize().Height + px(6)
		}
	}
	return fyne.NewSize(px(300), h)
}

// Layout is part of the toolkit's Layout.
func (l artLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	a := l.a
	put(a.words, 0, 0, size.Width, size.Height)
	c := columnsFor(size.Width)
	y := px(artHead)
	for i, r := range a.rows {
		if i >= len(a.view) {
			break
		}
		r.lay(c, y)
		y += c.rowTall(a.view[i])
		if a.view[i].Key == a.details.key {
			h := a.details.box.MinSize().Height
			put(a.details.box, 0, y, size.Width, h)
			y += a.details.box.MinSize().Height + px(6)
		}
	}
}

func (r *artRow) lay(c artColumns, y float32) {
	tall := px(28)
	top := y + (px(artRowTall)-tall)/2
	cell := px(look.CellHeight)
	hang := px(9) // bare fields start left of their column, so that their text lines up with its name
	put(r.name.Field, c.x[0]-hang, top, c.w[0], tall)
	put(r.inches.Field, c.x[1]-hang, top, c.w[1], tall)
	put(r.inks.box, c.x[2]-hang, top, c.w[2], tall)
	lower := y + (px(artRowTall)-cell)/2
	if c.two {
		lower += px(27)
	}
	put(r.on, c.x[3]-hang, lower, c.w[3], cell)
	put(r.method, c.x[4]-hang, lower, c.w[4], cell)
	m := r.more.MinSize()
	put(r.more, c.remove, y+(px(artRowTall)-m.Height)/2, px(artMore)+px(4), m.Height)
}

// artWords draws everything of the table that is not typed into.
type artWords struct {
	parts.Figure
	art  *artwork
	view []present.ArtRow
}

func (w *artWords) set(v []present.ArtRow) {
	if !reflect.DeepEqual(w.view, v) {
		w.view = v
		w.Redraw()
	}
}

func (w *artWords) draw(p *parts.Pen, size fyne.Size) {
	c := columnsFor(size.Width)
	heads := []string{"placement", "inches", "inks", "on", "method", "each"}
	for i, name := range heads {
		if c.two && (i == 3 || i == 4) {
			continue
		}
		style := parts.CaptionStyle
		if i == 5 {
			style = style.Right()
		}
		p.Text(parts.Box{X: c.x[i], W: c.w[i], H: px(14)}, name, style)
	}
	y := px(artHead)
	for _, r := range w.art.view {
		p.Rect(parts.Box{Y: y - 1, W: size.Width, H: 1}, parts.Fill{Color: look.Color(look.Rule)})
		w.row(p, c, r, y, size.Width)
		y += c.rowTall(r)
		if r.Key == w.art.details.key {
			y += w.art.details.box.MinSize().Height + px(6)
		}
	}
}

func (w *artWords) row(p *parts.Pen, c artColumns, r present.ArtRow, y, width float32) {
	tall := px(artRowTall)
	p.Text(parts.Box{X: c.x[5], Y: y, W: c.w[5], H: tall}, r.Each, parts.Style{}.Right())
	bottom := y + px(artRowTall)
	if c.two {
		bottom += px(28)
	}
	if r.Against != "" {
		wide := c.w[4]
		if !c.two {
			wide += c.w[5]
		}
		p.Text(parts.Box{X: c.x[4], Y: bottom - px(9), W: wide, H: px(artSecond)}, r.Against, parts.CaptionStyle)
		bottom += px(artSecond - 5)
	}
	if text := problemOf(r); text != "" {
		p.Text(parts.Box{X: c.x[0], Y: bottom - px(3), W: width, H: px(problemTall)}, text, parts.CaptionStyle.In(look.Fault))
	}
}
