package drawing

// draw draws the garment without artwork.
func (b body) draw(p *pen) {
	switch b.kind {
	case cap:
		b.drawCap(p)
	case tote:
		b.drawTote(p)
	case tank:
		b.drawTank(p)
	default:
		b.drawTop(p)
	}
}

// drawTop draws everything with sleeves: sleeves first, the body over them, then what lies on it.
func (b body) drawTop(p *pen) {
	if b.kind == hoodie || b.kind == zipHoodie {
		b.hoodBehind(p)
	} else {
		b.inside(p)
	}
	p.cloth(b.sleevePath())
	p.cloth(b.sleevePath().mirrored())
	p.shades(b.sleeveShade(), 1)
	p.cloth(b.trunk())
	b.folds(p)
	b.joins(p)
	b.cuffs(p)
	switch b.kind {
	case polo:
		b.polo(p)
	case hoodie, zipHoodie:
		b.hood(p)
	default:
		b.collar(p)
	}
	b.hemLine(p)
}

// trunk is the body without sleeves, closed.
func (b body) trunk() Path {
	var r Path
	r.MoveTo(0, b.drop)
	b.neckline(&r)
	r.LineTo(b.shoulder.X, b.shoulder.Y)
	b.armhole(&r)
	b.flank(&r)
	return r.whole()
}

// neckline goes on from the middle of the neckline to the highest point of the shoulder.
func (b body) neckline(r *Path) {
	r.CurveTo(b.neck*0.62, b.drop, b.neck*0.97, b.drop*0.62, b.neck, 0)
}

// armhole goes on from the end of the shoulder to the armpit.
func (b body) armhole(r *Path) {
	s, a := b.shoulder, b.armpit
	r.CurveTo(s.X-0.025*b.chest, s.Y+0.13*b.chest, s.X-0.015*b.chest, a.Y-0.08*b.chest, a.X, a.Y)
}

// flank goes on from the armpit to the middle of the hem.
func (b body) flank(r *Path) {
	a, foot := b.armpit, b.length-b.rib
	r.CurveTo(a.X-0.035*b.chest, a.Y+0.3*(foot-a.Y), b.hem-0.02*b.chest, a.Y+0.72*(foot-a.Y), b.hem, foot-0.12)
	r.CurveTo(b.hem*0.6, foot+0.1, b.hem*0.3, foot+0.14, 0, foot+0.14)
}

// sleevePath is the viewer's right sleeve, closed.
func (b body) sleevePath() Path {
	var r Path
	r.MoveTo(b.shoulder.X-0.06*b.chest, b.shoulder.Y-0.012*b.chest)
	r.LineTo(b.shoulder.X, b.shoulder.Y)
	b.sleeveTop(&r)
	b.sleeveEnd(&r)
	b.sleeveUnder(&r)
	r.LineTo(b.armpit.X-0.06*b.chest, b.armpit.Y)
	r.Close()
	return r
}

func (b body) sleeveTop(r *Path) {
	s, e := b.shoulder, b.cuffTop
	if b.short() {
		r.CurveTo(s.X+0.34*(e.X-s.X), s.Y+0.20*(e.Y-s.Y), s.X+0.72*(e.X-s.X), s.Y+0.58*(e.Y-s.Y), e.X, e.Y)
		return
	}
	r.CurveTo(s.X+0.36*(e.X-s.X), s.Y+0.10*(e.Y-s.Y), s.X+0.62*(e.X-s.X), s.Y+0.42*(e.Y-s.Y), e.X, e.Y)
}

func (b body) sleeveEnd(r *Path) {
	e, i := b.cuffTop, b.cuffIn
	bow := 0.06 * b.k
	r.CurveTo(e.X-0.3*(e.X-i.X)+bow, e.Y+0.3*(i.Y-e.Y)+bow, e.X-0.7*(e.X-i.X)+bow, e.Y+0.7*(i.Y-e.Y)+bow, i.X, i.Y)
}

func (b body) sleeveUnder(r *Path) {
	i, a := b.cuffIn, b.armpit
	if b.short() {
		r.CurveTo(i.X-0.35*(i.X-a.X), i.Y-0.28*(i.Y-a.Y), a.X+0.12*(i.X-a.X), a.Y+0.25*(i.Y-a.Y), a.X, a.Y)
		return
	}
	r.CurveTo(i.X-0.40*(i.X-a.X), i.Y-0.46*(i.Y-a.Y), a.X+0.22*(i.X-a.X), a.Y+0.24*(i.Y-a.Y), a.X, a.Y)
}

// sleeveShade is the shadow along the underside of the sleeve.
func (b body) sleeveShade() Path {
	var r Path
	r.MoveTo(b.cuffIn.X, b.cuffIn.Y)
	b.sleeveUnder(&r)
	in := Point{b.cuffIn.X + 0.34*(b.cuffTop.X-b.cuffIn.X), b.cuffIn.Y + 0.34*(b.cuffTop.Y-b.cuffIn.Y)}
	r.LineTo(b.armpit.X-0.03*b.chest, b.armpit.Y-0.10*b.chest)
	r.CurveTo(b.armpit.X+0.06*b.chest, b.armpit.Y-0.02*b.chest, in.X-0.3*(in.X-b.armpit.X), in.Y-0.4*(in.Y-b.armpit.Y), in.X, in.Y)
	r.Close()
	return r
}

// folds are the soft shadows of cloth that lies flat: along the flanks, and from the armpits.
func (b body) folds(p *pen) {
	a, foot := b.armpit, b.length-b.rib
	for _, in := range []float64{0.055, 0.11} {
		var r Path
		r.MoveTo(a.X, a.Y)
		r.CurveTo(a.X-0.035*b.chest, a.Y+0.3*(foot-a.Y), b.hem-0.02*b.chest, a.Y+0.72*(foot-a.Y), b.hem, foot-0.12)
		r.LineTo(b.hem-in*0.5*b.chest, foot)
		r.CurveTo(b.hem-in*1.25*b.chest, a.Y+0.72*(foot-a.Y), a.X-in*1.3*b.chest, a.Y+0.3*(foot-a.Y), a.X, a.Y)
		r.Close()
		p.shades(r, 0.55)
	}
	p.shades(b.fold(0.30, 0.16, 0.035), 0.8)
	p.shades(b.fold(0.20, 0.34, 0.03), 0.6)
}

// fold is a crescent from the armpit inwards and down, by shares of the chest.
func (b body) fold(in, down, thick float64) Path {
	a, c := b.armpit, b.chest
	var r Path
	r.MoveTo(a.X-0.01*c, a.Y+0.01*c)
	r.CurveTo(a.X-0.4*in*c, a.Y+0.1*down*c, a.X-0.8*in*c, a.Y+0.5*down*c, a.X-in*c, a.Y+down*c)
	r.CurveTo(a.X-0.75*in*c, a.Y+(0.5*down+thick)*c, a.X-0.4*in*c, a.Y+(0.2*down+thick)*c, a.X-0.01*c, a.Y+0.01*c)
	r.Close()
	return r
}

// joins are the seams where sleeves meet the body.
func (b body) joins(p *pen) {
	var r Path
	r.MoveTo(b.shoulder.X, b.shoulder.Y)
	b.armhole(&r)
	p.seams(r)
	if b.kind == crew || b.kind == hoodie || b.kind == zipHoodie {
		p.stitched(r.Shift(-0.28*b.k, 0))
	}
}

// inside is the inner side of the back, seen through the neckline of the front.
func (b body) inside(p *pen) {
	if b.side == Back {
		return
	}
	var r Path
	r.MoveTo(0, 0.035*b.chest)
	r.CurveTo(b.neck*0.6, 0.035*b.chest, b.neck*0.9, 0.02*b.chest, b.neck, 0)
	r.LineTo(b.neck, 0.02)
	r.CurveTo(b.neck*0.99, b.drop*0.64, b.neck*0.64, b.drop+0.1, 0, b.drop+0.1)
	p.add(Shape{Path: r.whole(), Fill: p.tone.inside, Stroke: p.tone.edge, Width: edgeWidth})
}
