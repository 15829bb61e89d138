package drawing

import "math"

func dist(a, b Point) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }

func rgbOf(hex string) rgb {
	c, _ := parseHex(hex)
	return c
}

func (b body) drawTank(p *pen) {
	b.inside(p)
	var r Path
	r.MoveTo(0, b.drop)
	r.CurveTo(b.neck*0.72, b.drop, b.neck*0.92, b.drop*0.55, b.neck, 0)
	r.LineTo(b.shoulder.X, b.shoulder.Y)
	hole := Path{}
	hole.MoveTo(b.shoulder.X, b.shoulder.Y)
	hole.CurveTo(b.shoulder.X+0.0*b.chest, 0.24*b.chest, b.shoulder.X+0.05*b.chest, b.armpit.Y-0.04*b.chest, b.armpit.X, b.armpit.Y)
	r = append(r, hole[1:]...)
	b.flank(&r)
	p.cloth(r.whole())
	b.folds(p)
	binding := 0.5 * b.k
	p.seams(hole.Shift(-binding, 0.12*b.k))
	var n Path
	n.MoveTo(0, b.drop+binding)
	n.CurveTo((b.neck+binding)*0.72, b.drop+binding, (b.neck+binding)*0.92, b.drop*0.55, b.neck+binding, 0.05*b.k)
	p.seams(n)
	b.hemLine(p)
}

// drawCap draws a cap with a stiff front, from the front with its peak, from behind with its strap.
func (b body) drawCap(p *pen) {
	w, h := b.chest/2, 4.9
	var r Path
	r.MoveTo(0, -h)
	r.CurveTo(w*0.52, -h, w*0.93, -h*0.70, w*0.985, -h*0.22)
	r.CurveTo(w*0.995, -h*0.12, w, -0.1*h, w, 0.25)
	r.CurveTo(w*0.6, -0.35, w*0.3, -0.5, 0, -0.5)
	if b.side == Back {
		b.capBack(p, w, h)
		return
	}
	p.cloth(r.whole())
	var s Path
	s.MoveTo(w, 0.25)
	s.CurveTo(w, -0.1*h, w*0.995, -h*0.12, w*0.985, -h*0.22)
	s.CurveTo(w*0.93, -h*0.70, w*0.52, -h, 0, -h)
	s.CurveTo(w*0.62, -h*0.86, w*0.84, -h*0.42, w*0.80, -0.1)
	s.Close()
	p.shades(s, 1.1)
	b.panels(p, w, h)
	b.peak(p, w)
}

// panels are the seams of the crown, its eyelets and its button.
func (b body) panels(p *pen, w, h float64) {
	var s Path
	s.MoveTo(w*0.06, -h)
	s.CurveTo(w*0.50, -h*0.88, w*0.74, -h*0.5, w*0.745, -0.18)
	p.seams(s)
	p.stitched(s.Shift(0.13, 0.02))
	p.both(Shape{Path: Ellipse(w*0.80, -h*0.60, 0.13, 0.15), Fill: p.tone.inside, Stroke: p.tone.seam, Width: stitchWidth})
	p.add(Shape{Path: Ellipse(0, -h-0.03, 0.36, 0.16), Fill: p.color, Stroke: p.tone.edge, Width: seamWidth})
}

func (b body) peak(p *pen, w float64) {
	var r Path
	r.MoveTo(0, -0.52)
	r.CurveTo(w*0.32, -0.52, w*0.66, -0.36, w*1.0, 0.26)
	r.CurveTo(w*1.14, 0.95, w*1.06, 1.65, w*0.94, 1.95)
	r.CurveTo(w*0.62, 1.42, w*0.3, 1.30, 0, 1.30)
	p.cloth(r.whole())
	p.shade(r.whole(), 0.8)
	for _, d := range []float64{0.32, 0.62, 0.92, 1.22} {
		var s Path
		f := d / 1.8
		s.MoveTo(0, -0.52+d)
		s.CurveTo(w*0.32, -0.52+d, w*(0.66-0.02*f), -0.36+d*1.02, w*(1.02-0.03*f), 0.40+d*0.92)
		p.stitched(s)
	}
}

func (b body) capBack(p *pen, w, h float64) {
	var r Path
	r.MoveTo(0, -h)
	r.CurveTo(w*0.52, -h, w*0.93, -h*0.70, w*0.985, -h*0.22)
	r.CurveTo(w*0.995, -h*0.12, w, 0, w*0.98, 0.35)
	r.CurveTo(w*0.8, 0.5, w*0.6, 0.58, w*0.45, 0.6)
	r.CurveTo(w*0.5, -1.6, w*0.3, -2.5, 0, -2.5)
	p.cloth(r.whole())
	p.seam(Line(0, -h, 0, -2.5))
	var s Path
	s.MoveTo(w*0.04, -h)
	s.CurveTo(w*0.5, -h*0.86, w*0.80, -h*0.5, w*0.80, 0.48)
	p.seams(s)
	var in Path
	in.MoveTo(0, -2.5)
	in.CurveTo(w*0.3, -2.5, w*0.5, -1.6, w*0.45, 0.6)
	in.CurveTo(w*0.3, 0.5, w*0.15, 0.45, 0, 0.45)
	p.add(Shape{Path: in.whole(), Fill: p.tone.deep, Stroke: p.tone.edge, Width: seamWidth})
	var strap Path
	strap.MoveTo(0, -0.25)
	strap.CurveTo(w*0.2, -0.25, w*0.35, -0.2, w*0.5, -0.1)
	strap.LineTo(w*0.47, 0.68)
	strap.CurveTo(w*0.3, 0.6, w*0.15, 0.55, 0, 0.55)
	p.cloth(strap.whole())
	p.add(Shape{Path: RoundRect(-0.5, -0.3, 1.0, 0.9, 0.12), Stroke: p.tone.edge, Width: 0.14})
	p.both(Shape{Path: Ellipse(w*0.62, -h*0.62, 0.13, 0.15), Fill: p.tone.inside, Stroke: p.tone.seam, Width: stitchWidth})
	p.add(Shape{Path: Ellipse(0, -h-0.03, 0.36, 0.16), Fill: p.color, Stroke: p.tone.edge, Width: seamWidth})
}

func (b body) drawTote(p *pen) {
	w, h := b.chest/2, b.length
	handle := func(rise float64, dark bool) {
		var r Path
		r.MoveTo(0, -rise)
		r.CurveTo(w*0.42, -rise, w*0.5, -rise*0.6, w*0.52, 1.2)
		fill := p.color
		if dark {
			fill = p.tone.inside
		}
		inner := Path{}
		inner.MoveTo(w*0.52-1.0, 1.2)
		inner.CurveTo(w*0.5-1.0, -rise*0.55, w*0.42-0.7, -rise+1.0, 0, -rise+1.0)
		half := append(Path(nil), r...)
		half.LineTo(w*0.52-1.0, 1.2)
		half = append(half, inner[1:]...)
		whole := append(Path(nil), half...)
		whole = append(whole, half.mirrored().reversed()[1:]...)
		whole.Close()
		p.add(Shape{Path: whole, Fill: fill, Stroke: p.tone.edge, Width: seamWidth})
	}
	handle(9.2, true)
	var r Path
	r.MoveTo(0, 0)
	r.LineTo(w, 0)
	r.CurveTo(w-0.12, h*0.4, w+0.1, h*0.75, w-0.05, h-0.2)
	r.CurveTo(w-0.05, h, w-0.2, h+0.05, w-0.35, h+0.05)
	r.CurveTo(w*0.5, h+0.15, w*0.2, h+0.18, 0, h+0.18)
	handle(8.3, false)
	p.cloth(r.whole())
	b.toteShades(p, w, h)
	for _, y := range []float64{1.05, 1.2} {
		p.stitched(Line(0, y, w-0.05, y))
	}
	x := w*0.52 - 1.0
	p.both(Shape{Path: Rect(x, 0.02, 1.0, 1.5), Fill: p.color, Stroke: p.tone.seam, Width: stitchWidth})
	p.stitched(Line(x+0.12, 0.15, x+0.88, 1.38))
	p.stitched(Line(x+0.88, 0.15, x+0.12, 1.38))
}

func (b body) toteShades(p *pen, w, h float64) {
	for _, in := range []float64{0.7, 1.5} {
		var r Path
		r.MoveTo(w, 0)
		r.CurveTo(w-0.12, h*0.4, w+0.1, h*0.75, w-0.05, h-0.2)
		r.LineTo(w-in*0.7, h)
		r.CurveTo(w-in, h*0.75, w-in*0.8, h*0.4, w-in*0.15, 0)
		r.Close()
		p.shades(r, 0.5)
	}
	var f Path
	f.MoveTo(-w*0.9, h)
	f.CurveTo(-w*0.5, h*0.86, -w*0.2, h*0.82, w*0.1, h*0.86)
	f.CurveTo(-w*0.2, h*0.86, -w*0.5, h*0.92, -w*0.72, h)
	f.Close()
	p.shade(f, 0.7)
}
