package drawing

import "math"

// Point is a place on the picture.
type Point struct{ X, Y float64 }

// Segment is one step of a path: 'M' and 'L' have one point, 'C' (a cubic curve) three, 'Z' none.
type Segment struct {
	Op byte
	P  [3]Point
}

// Path is an outline of one or more parts.
type Path []Segment

// MoveTo begins a part.
func (p *Path) MoveTo(x, y float64) { *p = append(*p, Segment{'M', [3]Point{{x, y}}}) }

// LineTo adds a straight line.
func (p *Path) LineTo(x, y float64) { *p = append(*p, Segment{'L', [3]Point{{x, y}}}) }

// CurveTo adds a cubic curve by its two control points and its end.
func (p *Path) CurveTo(ax, ay, bx, by, x, y float64) {
	*p = append(*p, Segment{'C', [3]Point{{ax, ay}, {bx, by}, {x, y}}})
}

// Close closes the part.
func (p *Path) Close() { *p = append(*p, Segment{Op: 'Z'}) }

// Points returns how many points of P the segment uses.
func (s Segment) Points() int {
	switch s.Op {
	case 'M', 'L':
		return 1
	case 'C':
		return 3
	}
	return 0
}

// Map returns the path with every point moved by f.
func (p Path) Map(f func(Point) Point) Path {
	q := make(Path, len(p))
	for i, s := range p {
		q[i].Op = s.Op
		for k := range s.Points() {
			q[i].P[k] = f(s.P[k])
		}
	}
	return q
}

// Shift moves a path.
func (p Path) Shift(dx, dy float64) Path {
	return p.Map(func(q Point) Point { return Point{q.X + dx, q.Y + dy} })
}

// Box returns the smallest upright rectangle that holds all points of the path, control points included.
func (p Path) Box() (x0, y0, x1, y1 float64) {
	x0, y0, x1, y1 = math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	for _, s := range p {
		for _, q := range s.P[:s.Points()] {
			x0, x1 = min(x0, q.X), max(x1, q.X)
			y0, y1 = min(y0, q.Y), max(y1, q.Y)
		}
	}
	return x0, y0, x1, y1
}

// Rect is an upright rectangle.
func Rect(x, y, w, h float64) Path {
	var p Path
	p.MoveTo(x, y)
	p.LineTo(x+w, y)
	p.LineTo(x+w, y+h)
	p.LineTo(x, y+h)
	p.Close()
	return p
}

// round is how far control points stand out for a quarter of a circle.
const round = 0.5523

// RoundRect is an upright rectangle with rounded corners.
func RoundRect(x, y, w, h, r float64) Path {
	r = min(r, w/2, h/2)
	k := r * (1 - round)
	var p Path
	p.MoveTo(x+r, y)
	p.LineTo(x+w-r, y)
	p.CurveTo(x+w-k, y, x+w, y+k, x+w, y+r)
	p.LineTo(x+w, y+h-r)
	p.CurveTo(x+w, y+h-k, x+w-k, y+h, x+w-r, y+h)
	p.LineTo(x+r, y+h)
	p.CurveTo(x+k, y+h, x, y+h-k, x, y+h-r)
	p.LineTo(x, y+r)
	p.CurveTo(x, y+k, x+k, y, x+r, y)
	p.Close()
	return p
}

// Ellipse is an upright ellipse about a centre.
func Ellipse(cx, cy, rx, ry float64) Path {
	var p Path
	p.MoveTo(cx+rx, cy)
	p.CurveTo(cx+rx, cy+ry*round, cx+rx*round, cy+ry, cx, cy+ry)
	p.CurveTo(cx-rx*round, cy+ry, cx-rx, cy+ry*round, cx-rx, cy)
	p.CurveTo(cx-rx, cy-ry*round, cx-rx*round, cy-ry, cx, cy-ry)
	p.CurveTo(cx+rx*round, cy-ry, cx+rx, cy-ry*round, cx+rx, cy)
	p.Close()
	return p
}

// Line is a straight line.
func Line(x0, y0, x1, y1 float64) Path {
	var p Path
	p.MoveTo(x0, y0)
	p.LineTo(x1, y1)
	return p
}

// turned turns a path clockwise by degrees about a point.
func (p Path) turned(degrees, cx, cy float64) Path {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return p.Map(func(q Point) Point {
		x, y := q.X-cx, q.Y-cy
		return Point{cx + x*cos - y*sin, cy + x*sin + y*cos}
	})
}

// mirrored turns left and right about x = 0.
func (p Path) mirrored() Path {
	return p.Map(func(q Point) Point { return Point{-q.X, q.Y} })
}

// reversed walks an open single-part path from its end.
func (p Path) reversed() Path {
	if len(p) == 0 {
		return nil
	}
	var q Path
	end := func(s Segment) Point { return s.P[s.Points()-1] }
	q.MoveTo(end(p[len(p)-1]).X, end(p[len(p)-1]).Y)
	for i := len(p) - 1; i > 0; i-- {
		to := end(p[i-1])
		if p[i].Op == 'C' {
			q.CurveTo(p[i].P[1].X, p[i].P[1].Y, p[i].P[0].X, p[i].P[0].Y, to.X, to.Y)
		} else {
			q.LineTo(to.X, to.Y)
		}
	}
	return q
}

// whole closes the right half of an outline, walked from the top of its middle line to the bottom, with its mirror image.
func (p Path) whole() Path {
	q := append(Path(nil), p...)
	q = append(q, p.mirrored().reversed()[1:]...)
	q.Close()
	return q
}
