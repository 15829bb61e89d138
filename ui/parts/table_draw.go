package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

const (
	tablePad   = 10 // left and right of the rows, at 100 %
	columnGap  = 16
	barWide    = 5
	cellDotGap = 19
)

// tableDrawing is the objects of a table: as many rows as there is room for, made as the table grows and then reused.
type tableDrawing struct {
	t       *Table
	objects []fyne.CanvasObject
	titles  []*canvas.Text
	head    *canvas.Rectangle
	empty   *canvas.Text
	bar     *canvas.Rectangle
	rows    []tableRow
	x, wide []float32 // of the columns; wide 0: hidden
	r       *painted
}

type tableRow struct {
	back, line *canvas.Rectangle
	chip       *canvas.Rectangle
	dot        *canvas.Circle
	cells      []*canvas.Text
}

// CreateRenderer is part of the toolkit's Widget.
func (t *Table) CreateRenderer() fyne.WidgetRenderer {
	d := &tableDrawing{
		t: t, head: canvas.NewRectangle(nil), empty: canvas.NewText("", nil), bar: canvas.NewRectangle(nil),
		x: make([]float32, len(t.columns)), wide: make([]float32, len(t.columns)),
	}
	d.objects = []fyne.CanvasObject{d.head, d.empty, d.bar}
	for range t.columns {
		title := canvas.NewText("", nil)
		d.titles = append(d.titles, title)
		d.objects = append(d.objects, title)
	}
	t.draw, t.drawn = d, true
	d.r = newPainted(painted{
		part: t, objects: d.objects, paint: d.paint, layout: d.layout,
		min: func() fyne.Size { return fyne.NewSize(look.Px(200), t.headHeight()+float32(t.least())*t.rowHeight()) },
	})
	return d.r
}

func (d *tableDrawing) paint() {
	setRect(d.head, look.Rule, look.Clear, 0, 0)
	setRect(d.bar, look.Rule, look.Clear, 0, barWide/2)
}

func (d *tableDrawing) layout(s fyne.Size) {
	d.layColumns(s.Width)
	d.layHead(s)
	n := d.t.Len()
	sight := 0
	if s.Height > d.t.headHeight() {
		sight = d.t.inSight()
	}
	d.grow(sight)
	for i := range d.rows {
		at := d.t.first + i
		d.layRow(i, at, i < sight && at < n, s.Width)
	}
	show(d.empty, n == 0)
	setText(d.empty, shorten(d.t.Empty, MutedStyle, s.Width-2*look.Px(tablePad)), MutedStyle)
	place(d.empty, look.Px(tablePad), d.t.headHeight()+look.Px(8), s.Width, d.t.rowHeight())
	d.layBar(s, n, sight)
}

// layColumns shares out the width: fixed columns first, then shares of what is left.
func (d *tableDrawing) layColumns(width float32) {
	left, shares, shown := width-2*look.Px(tablePad)-barWide, float32(0), 0
	for i, c := range d.t.columns {
		d.wide[i] = look.Px(c.Width)
		if c.Least > 0 && width < look.Px(c.Least) {
			d.wide[i] = -1
			continue
		}
		shown++
		left -= d.wide[i]
		if c.Width == 0 {
			shares += max(c.Share, 1)
		}
	}
	left = max(left-look.Px(columnGap)*float32(max(shown-1, 0)), 0)
	x := look.Px(tablePad)
	for i, c := range d.t.columns {
		if d.wide[i] < 0 {
			continue
		}
		if c.Width == 0 {
			d.wide[i] = left * max(c.Share, 1) / shares
		}
		d.x[i] = x
		x += d.wide[i] + look.Px(columnGap)
	}
}

func (d *tableDrawing) columnAt(x float32) int {
	for i := range d.x {
		if d.wide[i] > 0 && x >= d.x[i] && x <= d.x[i]+d.wide[i] {
			return i
		}
	}
	return -1
}

func (d *tableDrawing) layHead(s fyne.Size) {
	h := d.t.headHeight()
	show(d.head, !d.t.Plain)
	for i, c := range d.t.columns {
		show(d.titles[i], d.wide[i] > 0 && !d.t.Plain)
		if d.wide[i] <= 0 {
			continue
		}
		style, title := CaptionStyle, c.Title
		if i == d.t.head {
			style.Color = look.Accent
			title += map[bool]string{false: " ↑", true: " ↓"}[d.t.down]
		}
		if c.Right {
			style = style.Right()
		}
		setText(d.titles[i], shorten(title, style, d.wide[i]), style)
		place(d.titles[i], d.x[i], 0, d.wide[i], h)
	}
	place(d.head, 0, h-look.Hairline, s.Width, look.Hairline)
}

// grow makes the rows that are still missing.
func (d *tableDrawing) grow(n int) {
	if len(d.rows) >= n {
		return
	}
	for len(d.rows) < n {
		r := tableRow{back: canvas.NewRectangle(nil), line: canvas.NewRectangle(nil), chip: canvas.NewRectangle(nil), dot: canvas.NewCircle(nil)}
		d.objects = append(d.objects, r.back, r.line, r.chip, r.dot)
		for range d.t.columns {
			cell := canvas.NewText("", nil)
			r.cells = append(r.cells, cell)
			d.objects = append(d.objects, cell)
		}
		d.rows = append(d.rows, r)
	}
	if d.r != nil {
		d.r.objects = d.objects
	}
}

func (d *tableDrawing) layRow(i, at int, visible bool, width float32) {
	r, h := d.rows[i], d.t.rowHeight()
	y := d.t.headHeight() + float32(i)*h
	show(r.back, visible)
	show(r.line, visible)
	if !visible {
		show(r.dot, false)
		show(r.chip, false)
		for _, c := range r.cells {
			show(c, false)
		}
		return
	}
	fill, border, edge := look.Clear, look.Clear, float32(0)
	switch {
	case at == d.t.selected:
		fill = look.Tint
		if d.t.focused {
			border, edge = look.Accent, look.FocusBorder
		}
	case at == d.t.hover:
		fill = look.Hover
	}
	setRect(r.back, fill, border, edge, look.FieldRadius)
	place(r.back, 1, y, max(width-2, 0), h-look.Hairline)
	setRect(r.line, look.Rule, look.Clear, 0, 0)
	place(r.line, 0, y+h-look.Hairline, width, look.Hairline)
	d.layCells(r, d.t.Row(at), y, h)
}

func (d *tableDrawing) layCells(r tableRow, cells []TableCell, y, h float32) {
	dotted, chipped := false, false
	for c, text := range r.cells {
		if d.wide[c] <= 0 || c >= len(cells) {
			show(text, false)
			continue
		}
		show(text, true)
		cell := cells[c]
		style := Style{Color: cell.Color}
		if cell.Strong {
			style.Weight = Medium
		}
		if d.t.columns[c].Right {
			style = style.Right()
		}
		x, wide := d.x[c], d.wide[c]
		if fill, ok := ParseHex(cell.Hex); ok {
			side := look.Px(12)
			dot(r.dot, fill)
			place(r.dot, x, y+(h-side)/2, side, side)
			x, wide, dotted = x+look.Px(cellDotGap), wide-look.Px(cellDotGap), true
		}
		if cell.Chip && cell.Text != "" {
			d.layChip(r.chip, text, cell, Box{x, y, wide, h})
			chipped = true
			continue
		}
		setText(text, shorten(cell.Text, style, wide), style)
		place(text, x, y, max(wide, 0), h)
	}
	show(r.dot, dotted)
	show(r.chip, chipped)
}

// layChip draws a cell's word in a border of its colour, as a Badge is.
func (d *tableDrawing) layChip(box *canvas.Rectangle, text *canvas.Text, cell TableCell, at Box) {
	style := Style{Size: look.Caption, Weight: Medium, Color: cell.Color, Align: fyne.TextAlignCenter}
	word := shorten(cell.Text, style, at.W-look.Px(14))
	wide, tall := style.measure(word).Width+look.Px(14), look.Px(19)
	setRect(box, look.Clear, cell.Color, look.Hairline, 4)
	place(box, at.X, at.Y+(at.H-tall)/2, wide, tall)
	setText(text, word, style)
	place(text, at.X, at.Y, wide, at.H)
}

func (d *tableDrawing) layBar(s fyne.Size, n, sight int) {
	show(d.bar, n > sight && sight > 0)
	if n <= sight || sight == 0 {
		return
	}
	room := s.Height - d.t.headHeight()
	long := max(room*float32(sight)/float32(n), look.Px(24))
	y := d.t.headHeight() + (room-long)*float32(d.t.first)/float32(n-sight)
	place(d.bar, s.Width-barWide-1, y, barWide, long)
}
