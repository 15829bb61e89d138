package drawing

import "math"

// body is a garment's geometry in inches. The origin is the middle of the garment at the height of the highest point of the shoulder
// (cap: where crown and peak meet; tote: its upper edge); x to the viewer's right, y down.
type body struct {
	kind
	measure
	side     Side
	k        float64 // size against a medium one of its kind, for details that grow with it
	neck     float64 // half the width of the neckline
	drop     float64 // depth of the neckline in the middle
	shoulder Point   // end of the shoulder seam
	cuffTop  Point   // sleeve end, outer corner
	cuffIn   Point   // sleeve end, inner corner
	armpit   Point
	hem      float64 // half the width of the hem
	rib      float64 // height of ribbed waistband and cuffs, 0: none
}

func newBody(g Garment) body {
	k := kindOf(g.Category)
	b := body{kind: k, measure: measureOf(k, g.Category, g.Size), side: g.Side, hem: 0}
	if b.side != Back {
		b.side = Front
	}
	b.k = b.chest / 20
	switch k {
	case cap, tote:
		return b
	case tank:
		b.tankPoints()
		return b
	}
	b.topPoints()
	return b
}

// topPoints are the corners of everything with sleeves.
func (b *body) topPoints() {
	c := b.chest
	b.neck, b.drop = 0.175*c, 0.19*c
	b.shoulder = Point{0.43 * c, 0.085 * c}
	b.armpit = Point{c / 2, 0.45 * c}
	b.hem = c/2 - 0.15*b.k
	short := b.kind == tee || b.kind == polo
	if b.kind == crew || b.kind == hoodie || b.kind == zipHoodie {
		b.rib = 2.3 * b.k
		b.neck, b.drop = 0.165*c, 0.15*c
	}
	if b.kind == polo {
		b.neck, b.drop = 0.17*c, 0.15*c
	}
	if b.side == Back {
		b.drop = 0.04 * c
	}
	if short {
		b.sleeve(32, 0.385*c, 0.315*c)
		return
	}
	b.sleeve(63, 0.82*b.length, 0.19*c)
}

// sleeve lays the sleeve out at an angle below the horizontal, with its length along the top and the width of its end.
func (b *body) sleeve(angle, length, end float64) {
	sin, cos := math.Sincos(angle * math.Pi / 180)
	b.cuffTop = Point{b.shoulder.X + length*cos, b.shoulder.Y + length*sin}
	b.cuffIn = Point{b.cuffTop.X - end*sin, b.cuffTop.Y + end*cos}
}

func (b *body) tankPoints() {
	c := b.chest
	b.neck, b.drop = 0.19*c, 0.30*c
	if b.side == Back {
		b.drop = 0.16 * c
	}
	b.shoulder = Point{0.31 * c, 0.03 * c}
	b.armpit = Point{c/2 - 0.2, 0.48 * c}
	b.hem = c/2 - 0.1
}

// upper is true of everything that is worn on the upper body.
func (b body) upper() bool { return b.kind != cap && b.kind != tote }

func (b body) short() bool { return b.kind == tee || b.kind == polo }

// zone is a rectangle that artwork should keep off, or within.
type zone struct {
	name           string
	x0, y0, x1, y1 float64
}

// area is where a print fits, side seams kept clear by a good two inches, since the body curves away. Common practice, no source.
func (b body) area() zone {
	switch b.kind {
	case cap:
		if b.side == Back {
			return zone{"printable area", -2.0, -4.4, 2.0, -2.9}
		}
		return zone{"printable area", -2.6, -3.3, 2.6, -0.4}
	case tote:
		return zone{"printable area", -b.chest/2 + 1.25, 2, b.chest/2 - 1.25, b.length - 1.25}
	}
	side := b.chest/2 - 2.25
	top := b.drop + 1*b.k
	bottom := b.length - 2*b.k - b.rib
	if b.kind == tank {
		side = b.chest/2 - 2.75
	}
	return zone{"printable area", -side, top, side, bottom}
}

// obstacles are what a print should not cross.
func (b body) obstacles() []zone {
	if b.side == Back {
		if b.kind == hoodie || b.kind == zipHoodie {
			return []zone{{"hood", -b.neck - 1, -12, b.neck + 1, b.hoodHang()}}
		}
		return nil
	}
	switch b.kind {
	case hoodie:
		return []zone{b.pocket()}
	case zipHoodie:
		return []zone{b.pocket(), {"zip", -0.35, b.drop, 0.35, b.length}}
	case polo:
		return []zone{{"placket", -0.75, 0, 0.75, b.placket()}}
	}
	return nil
}

// pocket is the pouch of a hoodie.
func (b body) pocket() zone {
	foot := b.length - b.rib
	return zone{"pocket", -6 * b.k, foot - 6.1*b.k, 6 * b.k, foot}
}

// placket is how far down a polo's buttons go.
func (b body) placket() float64 { return b.drop + 5.2*b.k }

// hoodHang is how far a hood lies down the back.
func (b body) hoodHang() float64 { return b.drop + 0.24*b.chest }
