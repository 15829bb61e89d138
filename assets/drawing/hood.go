package drawing

// hoodBehind is the hood as it stands behind the neckline of the front, with its opening; on the back it lies on top instead.
func (b body) hoodBehind(p *pen) {
	if b.side == Back {
		return
	}
	w, h := b.neck*1.42, 0.43*b.chest
	var r Path
	r.MoveTo(0, -h)
	r.CurveTo(w*0.75, -h, w*1.12, -h*0.62, w*1.04, -h*0.2)
	r.CurveTo(w*1.0, 0, w*0.95, 0.06*b.chest, w*0.9, 0.1*b.chest)
	r.LineTo(0, b.drop+1.2*b.k)
	p.cloth(r.whole())
	p.shade(r.whole(), 0.4)
	var o Path
	o.MoveTo(0, -h*0.86)
	o.CurveTo(w*0.56, -h*0.86, w*0.80, -h*0.5, w*0.74, -h*0.12)
	o.CurveTo(w*0.7, b.drop*0.4, w*0.4, b.drop, 0, b.drop+0.6*b.k)
	p.add(Shape{Path: o.whole(), Fill: p.tone.inside, Stroke: p.tone.edge, Width: seamWidth})
	var d Path
	d.MoveTo(0, -h*0.60)
	d.CurveTo(w*0.42, -h*0.60, w*0.62, -h*0.3, w*0.58, 0)
	d.CurveTo(w*0.5, b.drop*0.6, w*0.3, b.drop, 0, b.drop+0.5*b.k)
	p.add(Shape{Path: d.whole(), Fill: p.tone.deep})
	p.seam(Line(0, -h, 0, -h*0.86))
}

// hood is what of it lies on the body: crossed fronts with cords, the zip and the pouch; on the back the hood lying down.
func (b body) hood(p *pen) {
	k := b.k
	if b.side == Back {
		b.hoodDown(p)
		return
	}
	b.hoodFront(p)
	z := b.pocket()
	var r Path
	r.MoveTo(0, z.y0)
	r.LineTo(z.x1*0.66, z.y0)
	r.CurveTo(z.x1*0.76, z.y0+0.3*(z.y1-z.y0), z.x1*0.92, z.y0+0.62*(z.y1-z.y0), z.x1, z.y0+0.72*(z.y1-z.y0))
	r.LineTo(z.x1, z.y1+0.06)
	r.LineTo(0, z.y1+0.13)
	p.add(Shape{Path: r.whole(), Fill: p.color, Stroke: p.tone.edge, Width: seamWidth})
	p.shade(r.whole(), 0.35)
	var s Path
	s.MoveTo(z.x1*0.62, z.y0+0.05)
	s.CurveTo(z.x1*0.72, z.y0+0.32*(z.y1-z.y0), z.x1*0.88, z.y0+0.66*(z.y1-z.y0), z.x1*0.97, z.y0+0.77*(z.y1-z.y0))
	p.stitched(s)
	if b.kind == zipHoodie {
		p.add(Shape{Path: Rect(-0.3*k, b.drop+0.9*k, 0.6*k, b.length-b.drop-0.9*k), Fill: p.tone.inside, Stroke: p.tone.edge, Width: stitchWidth})
		p.add(Shape{Path: Line(0, b.drop+1*k, 0, b.length), Stroke: p.tone.edge, Width: 0.16, Dash: []float64{0.16, 0.12}})
		p.add(Shape{Path: RoundRect(-0.22*k, b.drop+1.2*k, 0.44*k, 1.1*k, 0.15), Fill: p.tone.edge})
	}
}

func (b body) hoodFront(p *pen) {
	k := b.k
	var r Path
	r.MoveTo(0, b.drop+1.5*k)
	r.CurveTo(b.neck*0.35, b.drop+1.2*k, b.neck*0.8, b.drop*0.75, b.neck*1.02, -0.1*b.chest)
	r.CurveTo(b.neck*1.32, -0.08*b.chest, b.neck*1.38, 0.0*b.chest, b.neck*1.3, 0.09*b.chest)
	r.CurveTo(b.neck*1.05, b.drop*0.9, b.neck*0.6, b.drop+2.2*k, 0, b.drop+2.7*k)
	r.Close()
	p.add(Shape{Path: r.mirrored(), Fill: p.color, Stroke: p.tone.edge, Width: edgeWidth})
	p.shade(r.mirrored(), 0.3)
	p.add(Shape{Path: r, Fill: p.color, Stroke: p.tone.edge, Width: edgeWidth})
	p.shade(r, 0.3)
	for _, side := range []float64{1, -1} {
		x := side * b.neck * 0.62
		y := b.drop * 0.98
		var c Path
		c.MoveTo(x, y)
		c.CurveTo(x*1.04, y+1.1*k, x*0.92, y+2.3*k, x*0.98, y+3.5*k)
		p.add(Shape{Path: c, Stroke: p.tone.edge, Width: 0.34 * k})
		p.add(Shape{Path: c, Stroke: rgbOf(p.color).mix(white, 0.55).hex(), Width: 0.2 * k})
		p.add(Shape{Path: Ellipse(x, y, 0.24*k, 0.24*k), Fill: p.tone.deep})
	}
}

// hoodDown is the hood lying on the back, its edge rolled over the collar.
func (b body) hoodDown(p *pen) {
	c, n, foot := b.chest, b.neck, b.hoodHang()
	top := -0.07 * c
	var r Path
	r.MoveTo(0, top)
	r.CurveTo(n*0.6, top, n*1.0, top*0.8, n*1.2, 0.01*c)
	r.CurveTo(n*1.5, 0.06*c, n*1.36, foot*0.72, n*0.8, foot*0.93)
	r.CurveTo(n*0.55, foot*1.0, n*0.25, foot, 0, foot)
	p.cloth(r.whole())
	p.shade(r.whole(), 0.3)
	var roll Path
	roll.MoveTo(0, top)
	roll.CurveTo(n*0.6, top, n*1.0, top*0.8, n*1.2, 0.01*c)
	roll.CurveTo(n*0.9, 0.03*c, n*0.5, 0.025*c, 0, 0.025*c)
	p.shade(roll.whole(), 0.8)
	var edge Path
	edge.MoveTo(0, 0.025*c)
	edge.CurveTo(n*0.5, 0.025*c, n*0.9, 0.03*c, n*1.2, 0.01*c)
	p.seams(edge)
	p.seam(Line(0, 0.025*c, 0, foot))
}
