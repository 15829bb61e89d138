package chart

import (
	"math"
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Point is a quantity with its price each.
type Point struct {
	Pieces int
	Each   float64
	Label  string // the price as text
	Own    bool   // the job's own quantity
	Break  bool   // another card is chosen from here on
}

// Curve is the price each along quantity. The job's own quantity is a full dot with its price; where another card is
// chosen the line carries a mark.
type Curve struct {
	parts.Figure
	points []Point
	faded  bool
}

// NewCurve makes an empty curve.
func NewCurve() *Curve {
	c := &Curve{}
	c.SetUp(c, func() fyne.Size { return fyne.NewSize(look.Px(120), look.Px(58)) }, c.draw)
	return c
}

// Set changes the points, which stand in ascending quantity.
func (c *Curve) Set(points []Point, faded bool) {
	if slices.Equal(c.points, points) && c.faded == faded {
		return
	}
	c.points, c.faded = slices.Clone(points), faded
	c.Redraw()
}

// frame turns quantities and prices into places: quantities by their logarithm, so that doubling is one step.
type frame struct{ x, y, w, h, lowQ, highQ, low, high float64 }

func (f frame) at(p Point) (x, y float32) {
	fx := 0.5
	if f.highQ > f.lowQ {
		fx = (math.Log(float64(max(p.Pieces, 1))) - f.lowQ) / (f.highQ - f.lowQ)
	}
	fy := 0.5
	if f.high > f.low {
		fy = (f.high - p.Each) / (f.high - f.low)
	}
	return float32(f.x + fx*f.w), float32(f.y + fy*f.h)
}

func (c *Curve) frame(size fyne.Size) frame {
	side, top, foot := look.Px(22), look.Px(16), look.Px(6)
	f := frame{
		x: float64(side), y: float64(top), w: float64(size.Width - 2*side), h: float64(size.Height - top - foot),
		low: math.Inf(1), high: math.Inf(-1),
	}
	f.lowQ = math.Log(float64(max(c.points[0].Pieces, 1)))
	f.highQ = math.Log(float64(max(c.points[len(c.points)-1].Pieces, 1)))
	for _, p := range c.points {
		f.low, f.high = math.Min(f.low, p.Each), math.Max(f.high, p.Each)
	}
	return f
}

func (c *Curve) draw(p *parts.Pen, size fyne.Size) {
	if len(c.points) == 0 || size.Width <= 0 {
		return
	}
	f := c.frame(size)
	ink, muted, rule := look.Color(look.Accent), look.Color(look.Muted), look.Color(look.Rule)
	if c.faded {
		ink = muted
	}
	p.Line(0, size.Height-1, size.Width, size.Height-1, rule, 1)
	for i, pt := range c.points {
		x, y := f.at(pt)
		if i > 0 {
			fromX, fromY := f.at(c.points[i-1])
			p.Line(fromX, fromY, x, y, ink, 1.6)
		}
		if pt.Break && !pt.Own {
			p.Dashes(x, y, x, size.Height, muted)
		}
	}
	for i, pt := range c.points {
		x, y := f.at(pt)
		c.dot(p, pt, x, y, i == 0 || i == len(c.points)-1)
	}
}

func (c *Curve) dot(p *parts.Pen, pt Point, x, y float32, outer bool) {
	ink, ground := look.Color(look.Accent), look.Color(look.Panel)
	if c.faded {
		ink = look.Color(look.Muted)
	}
	style := tiny(look.Muted)
	style.Align = fyne.TextAlignCenter
	switch {
	case pt.Own:
		p.Disc(x, y, look.Px(4.5), ink, ink)
		if !c.faded {
			style = style.In(look.Accent)
		}
		style.Weight = parts.Semibold
	default:
		p.Disc(x, y, look.Px(3), ground, ink)
	}
	if pt.Own || outer {
		w := look.Px(60)
		p.Text(parts.Box{X: x - w/2, Y: y - look.Px(18), W: w, H: look.Px(13)}, pt.Label, style)
	}
}
