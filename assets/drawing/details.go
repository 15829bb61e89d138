package drawing

// band is the closed strip between the neckline and the same curve set in by w inches.
func (b body) band(w float64) (strip, lower Path) {
	var up, low Path
	up.MoveTo(0, b.drop)
	b.neckline(&up)
	low.MoveTo(0, b.drop+w)
	low.CurveTo((b.neck+w)*0.62, b.drop+w, (b.neck+w*0.9)*0.97, b.drop*0.62+w*0.7, b.neck+w*0.95, w*0.19)
	half := append(Path(nil), low...)
	half.LineTo(b.neck, 0)
	half = append(half, up.reversed()[1:]...)
	whole := append(Path(nil), half...)
	whole = append(whole, half.mirrored().reversed()[1:]...)
	whole.Close()
	return whole, low
}

// collar is the ribbed band of tees and crews.
func (b body) collar(p *pen) {
	w := 0.85 * b.k
	if b.kind == crew {
		w = 1.0 * b.k
	}
	if b.side == Back {
		w *= 0.85
	}
	strip, low := b.band(w)
	p.cloth(strip)
	p.shade(strip, 0.5)
	p.stitched(low.Shift(0, 0.22*b.k))
	if b.kind == crew && b.side == Front {
		v := Path{}
		v.MoveTo(0, b.drop+w+1.9*b.k)
		v.LineTo(1.35*b.k, b.drop+w*0.96)
		p.seams(v)
	}
	if b.side == Front {
		var tape Path
		tape.MoveTo(0, 0.035*b.chest+0.5*b.k)
		tape.CurveTo(b.neck*0.55, 0.035*b.chest+0.5*b.k, b.neck*0.85, 0.02*b.chest+0.45*b.k, b.neck*0.97, 0.35*b.k)
		p.seams(tape)
	}
}

// hemLine is the stitching above the hem, or the ribbed waistband.
func (b body) hemLine(p *pen) {
	if b.rib > 0 {
		b.waistband(p)
		return
	}
	for _, up := range []float64{0.75, 0.95} {
		var r Path
		r.MoveTo(0, b.length+0.14-up*b.k)
		r.CurveTo(b.hem*0.3, b.length+0.14-up*b.k, b.hem*0.6, b.length+0.1-up*b.k, b.hem-0.08, b.length-0.12-up*b.k)
		p.stitched(r)
	}
}

func (b body) waistband(p *pen) {
	foot, in := b.length-b.rib, 0.35*b.k
	var r Path
	r.MoveTo(0, foot+0.14)
	r.CurveTo(b.hem*0.3, foot+0.14, b.hem*0.6, foot+0.1, b.hem, foot-0.12)
	r.CurveTo(b.hem+0.1, foot+0.4*b.rib, b.hem-in+0.1, b.length-0.2*b.rib, b.hem-in, b.length)
	r.CurveTo(b.hem*0.6, b.length+0.16, b.hem*0.3, b.length+0.2, 0, b.length+0.2)
	p.cloth(r.whole())
	p.shade(r.whole(), 0.5)
	for i := 1; i < 16; i++ {
		x := b.hem * float64(i) / 16.5
		p.seams(Line(x, foot+0.35, x*(b.hem-in)/b.hem, b.length-0.1))
	}
}

// cuffs are the stitching at the ends of short sleeves, a narrow band on long ones, ribs on sweatshirts.
func (b body) cuffs(p *pen) {
	switch {
	case b.rib > 0:
		p.seams(b.across(b.rib))
		for n := 1; n < 7; n++ {
			f := float64(n) / 7
			a, z := b.across(b.rib*0.92), b.across(0.12)
			p.seams(Line(between(a[0].P[0].X, a[1].P[0].X, f), between(a[0].P[0].Y, a[1].P[0].Y, f),
				between(z[0].P[0].X, z[1].P[0].X, f), between(z[0].P[0].Y, z[1].P[0].Y, f)))
		}
	case b.kind == polo:
		p.seams(b.across(1.0 * b.k))
	case b.kind == longSleeve:
		p.seams(b.across(1.9 * b.k))
	default:
		p.stitched(b.across(0.75 * b.k))
		p.stitched(b.across(0.95 * b.k))
	}
}

func between(a, b, share float64) float64 { return a + (b-a)*share }

// across is a line over the sleeve, d inches above its end, from edge to edge.
func (b body) across(d float64) Path {
	var top, under Path
	top.MoveTo(b.shoulder.X, b.shoulder.Y)
	b.sleeveTop(&top)
	under.MoveTo(b.cuffIn.X, b.cuffIn.Y)
	b.sleeveUnder(&under)
	a, z := beforeEnd(top, d), beforeEnd(under.reversed(), d)
	return Line(a.X, a.Y, z.X, z.Y)
}

// beforeEnd is the point of a path's last curve some d inches before its end.
func beforeEnd(p Path, d float64) Point {
	c := p[len(p)-1].P
	t := 1 - d/max(3*dist(c[1], c[2]), d*1.01)
	line := appendCurve([]Point{p[len(p)-2].P[p[len(p)-2].Points()-1]}, c)
	at := t * float64(len(line)-1)
	i := min(int(at), len(line)-2)
	f := at - float64(i)
	return Point{between(line[i].X, line[i+1].X, f), between(line[i].Y, line[i+1].Y, f)}
}

// polo is the collar that lies open over the shoulders, and the placket with its buttons.
func (b body) polo(p *pen) {
	k := b.k
	if b.side == Back {
		var r Path
		r.MoveTo(0, b.drop-0.9*k)
		r.CurveTo(b.neck*0.6, b.drop-0.9*k, b.neck*0.9, -0.5*k, b.neck, -0.15*k)
		r.LineTo(b.neck+1.15*k, 1.55*k)
		r.CurveTo(b.neck*0.8, b.drop+1.9*k, b.neck*0.4, b.drop+2.0*k, 0, b.drop+2.0*k)
		p.cloth(r.whole())
		p.shade(r.whole(), 0.35)
		return
	}
	foot := b.placket()
	p.cloth(RoundRect(-0.62*k, b.drop-0.4*k, 1.24*k, foot-b.drop+0.4*k, 0.12))
	p.seam(Line(-0.62*k, foot-0.7*k, 0.62*k, foot-0.7*k))
	for i := range 3 {
		y := b.drop + (0.75+1.5*float64(i))*k
		p.add(Shape{Path: Ellipse(0, y, 0.2*k, 0.2*k), Fill: p.tone.inside, Stroke: p.tone.edge, Width: stitchWidth})
	}
	var r Path
	r.MoveTo(0.02, b.drop-0.2*k)
	r.CurveTo(b.neck*0.5, b.drop*0.85, b.neck*0.85, b.drop*0.45, b.neck*0.96, -0.25*k)
	r.LineTo(b.neck+0.2*k, -0.1*k)
	r.CurveTo(b.neck+0.75*k, 0.9*k, b.neck+0.95*k, 1.4*k, b.neck+0.75*k, 2.3*k)
	r.LineTo(b.neck*0.62, b.drop+2.1*k)
	r.CurveTo(b.neck*0.45, b.drop+1.1*k, b.neck*0.2, b.drop+0.3*k, 0.02, b.drop-0.2*k)
	r.Close()
	p.both(Shape{Path: r, Fill: p.color, Stroke: p.tone.edge, Width: edgeWidth})
	p.shades(r, 0.4)
}
