package parts

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Figure is a part that is drawn anew by a function whenever what it shows, its size or the theme changes: charts,
// dense tables. Whatever is drawn again in the same order reuses the same objects, and only those that differ are
// painted.
type Figure struct {
	base
	pen  Pen
	min  func() fyne.Size
	draw func(p *Pen, size fyne.Size)
}

// SetUp gives a figure its functions and makes it a widget; self is the widget that embeds it, or the figure itself.
func (f *Figure) SetUp(self fyne.Widget, min func() fyne.Size, draw func(p *Pen, size fyne.Size)) {
	f.min, f.draw = min, draw
	f.ExtendBaseWidget(self)
}

// Redraw draws the figure anew, if anybody has drawn it yet.
func (f *Figure) Redraw() {
	if !f.drawn {
		return
	}
	size := f.Size()
	f.pen.begin()
	f.draw(&f.pen, size)
	if f.pen.end() {
		f.Refresh()
	}
}

// CreateRenderer is part of the toolkit's Widget.
func (f *Figure) CreateRenderer() fyne.WidgetRenderer {
	f.drawn = true
	return &figureRenderer{f}
}

type figureRenderer struct{ f *Figure }

func (r *figureRenderer) Objects() []fyne.CanvasObject { return r.f.pen.objects }
func (r *figureRenderer) MinSize() fyne.Size           { return r.f.min() }
func (r *figureRenderer) Destroy()                     {}

func (r *figureRenderer) Layout(size fyne.Size) {
	r.f.pen.begin()
	r.f.draw(&r.f.pen, size)
	r.f.pen.end()
}

func (r *figureRenderer) Refresh() { r.Layout(r.f.Size()) }

// Pen draws a figure. Surfaces lie lowest, then lines, discs and text.
type Pen struct {
	rects   []*canvas.Rectangle
	lines   []*canvas.Line
	discs   []*canvas.Circle
	texts   []*canvas.Text
	n       [4]int // of each kind drawn so far
	objects []fyne.CanvasObject
	grown   bool
}

func (p *Pen) begin() { p.n = [4]int{} }

// end hides what was not drawn again, and tells whether there are objects that were not there before.
func (p *Pen) end() bool {
	for i, r := range p.rects {
		show(r, i < p.n[0])
	}
	for i, l := range p.lines {
		show(l, i < p.n[1])
	}
	for i, d := range p.discs {
		show(d, i < p.n[2])
	}
	for i, t := range p.texts {
		show(t, i < p.n[3])
	}
	if !p.grown {
		return false
	}
	p.grown = false
	p.gather()
	return true
}

func (p *Pen) gather() {
	p.objects = make([]fyne.CanvasObject, 0, len(p.rects)+len(p.lines)+len(p.discs)+len(p.texts))
	for _, o := range p.rects {
		p.objects = append(p.objects, o)
	}
	for _, o := range p.lines {
		p.objects = append(p.objects, o)
	}
	for _, o := range p.discs {
		p.objects = append(p.objects, o)
	}
	for _, o := range p.texts {
		p.objects = append(p.objects, o)
	}
}

// Box is where something is drawn.
type Box struct{ X, Y, W, H float32 }

// Fill is how a surface looks.
type Fill struct {
	Color  color.Color
	Border color.Color // nil: none
	Radius float32
}

// Rect draws a rectangle.
func (p *Pen) Rect(b Box, f Fill) {
	if p.n[0] == len(p.rects) {
		p.rects, p.grown = append(p.rects, canvas.NewRectangle(nil)), true
	}
	r := p.rects[p.n[0]]
	p.n[0]++
	width := float32(0)
	if f.Border != nil {
		width = 1
	}
	if r.FillColor != f.Color || r.StrokeColor != f.Border || r.StrokeWidth != width || r.CornerRadius != f.Radius {
		r.FillColor, r.StrokeColor, r.StrokeWidth, r.CornerRadius = f.Color, f.Border, width, f.Radius
		r.Refresh()
	}
	place(r, b.X, b.Y, b.W, b.H)
}

// Line draws a straight line.
func (p *Pen) Line(x1, y1, x2, y2 float32, c color.Color, width float32) {
	if p.n[1] == len(p.lines) {
		p.lines, p.grown = append(p.lines, canvas.NewLine(nil)), true
	}
	l := p.lines[p.n[1]]
	p.n[1]++
	from, to := fyne.NewPos(x1, y1), fyne.NewPos(x2, y2)
	if l.StrokeColor != c || l.StrokeWidth != width || l.Position1 != from || l.Position2 != to {
		l.StrokeColor, l.StrokeWidth, l.Position1, l.Position2 = c, width, from, to
		l.Refresh()
	}
}

// Dashes draws a straight line along an axis, broken into dashes.
func (p *Pen) Dashes(x1, y1, x2, y2 float32, c color.Color) {
	const on, off = 3, 3
	dx, dy := x2-x1, y2-y1
	long := max(dx, dy)
	for at := float32(0); at < long; at += on + off {
		a, b := at/long, min(at+on, long)/long
		p.Line(x1+dx*a, y1+dy*a, x1+dx*b, y1+dy*b, c, 1)
	}
}

// Disc draws a disc round a point.
func (p *Pen) Disc(x, y, radius float32, fill, border color.Color) {
	if p.n[2] == len(p.discs) {
		p.discs, p.grown = append(p.discs, canvas.NewCircle(nil)), true
	}
	d := p.discs[p.n[2]]
	p.n[2]++
	width := float32(0)
	if border != nil {
		width = 1
	}
	if d.FillColor != fill || d.StrokeColor != border || d.StrokeWidth != width {
		d.FillColor, d.StrokeColor, d.StrokeWidth = fill, border, width
		d.Refresh()
	}
	place(d, x-radius, y-radius, 2*radius, 2*radius)
}

// Text draws a line of text into a box, centred over its height; it is cut where it does not fit.
func (p *Pen) Text(b Box, text string, s Style) {
	if p.n[3] == len(p.texts) {
		p.texts, p.grown = append(p.texts, canvas.NewText("", nil)), true
	}
	t := p.texts[p.n[3]]
	p.n[3]++
	setText(t, shorten(text, s, b.W), s)
	place(t, b.X, b.Y, b.W, b.H)
}

// Measure is how much room a line of text takes.
func (s Style) Measure(text string) fyne.Size { return s.measure(text) }

// Height is the height of a line of text.
func (s Style) Height() float32 { return s.height() }
