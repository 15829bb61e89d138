package drawing

import "math"

// Outlined returns the picture's shapes with every stroke turned into filled shapes: some readers of SVG neither scale the width of a
// line nor its dashes.
func (p Picture) Outlined() []Shape {
	var list []Shape
	for _, s := range p.Shapes {
		if s.Fill != "" {
			list = append(list, Shape{Path: s.Path, Fill: s.Fill, Opacity: s.Opacity})
		}
		if s.Stroke != "" && s.Width > 0 {
			list = append(list, Shape{Path: strokeOutline(s.Path, s.Width, s.Dash), Fill: s.Stroke, Opacity: s.Opacity})
		}
	}
	return list
}

// flatten walks a path as straight pieces: one polyline a part.
func flatten(p Path) [][]Point {
	var parts [][]Point
	var line []Point
	for _, s := range p {
		switch s.Op {
		case 'M':
			if len(line) > 1 {
				parts = append(parts, line)
			}
			line = []Point{s.P[0]}
		case 'L':
			line = append(line, s.P[0])
		case 'C':
			line = appendCurve(line, s.P)
		case 'Z':
			line = append(line, line[0])
			parts = append(parts, line)
			line = line[:1:1]
		}
	}
	if len(line) > 1 {
		parts = append(parts, line)
	}
	return parts
}

// curvePieces is enough for curves a hand or a forearm long at screen and paper sizes.
const curvePieces = 14

func appendCurve(line []Point, c [3]Point) []Point {
	a := line[len(line)-1]
	for i := 1; i <= curvePieces; i++ {
		t := float64(i) / curvePieces
		u := 1 - t
		w0, w1, w2, w3 := u*u*u, 3*u*u*t, 3*u*t*t, t*t*t
		line = append(line, Point{w0*a.X + w1*c[0].X + w2*c[1].X + w3*c[2].X, w0*a.Y + w1*c[0].Y + w2*c[1].Y + w3*c[2].Y})
	}
	return line
}

// strokeOutline covers a stroke with pieces that all turn the same way, so that where they overlap nothing is cut out.
func strokeOutline(p Path, width float64, dash []float64) Path {
	var out Path
	for _, line := range flatten(p) {
		for _, part := range dashed(line, dash) {
			for i := 1; i < len(part); i++ {
				out = appendBar(out, part[i-1], part[i], width/2)
			}
			for _, q := range part[1 : len(part)-1] {
				out = appendDot(out, q, width/2)
			}
			if len(dash) == 0 {
				out = appendDot(appendDot(out, part[0], width/2), part[len(part)-1], width/2)
			}
		}
	}
	return out
}

// dashed cuts a polyline by a pattern of lengths drawn and left out.
func dashed(line []Point, pattern []float64) [][]Point {
	if len(pattern) == 0 {
		return [][]Point{line}
	}
	var parts [][]Point
	part, on, left, k := []Point{line[0]}, true, pattern[0], 0
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		for length := dist(a, b); length > 0; length = dist(a, b) {
			if length <= left {
				left -= length
				part = append(part, b)
				break
			}
			a = Point{a.X + (b.X-a.X)*left/length, a.Y + (b.Y-a.Y)*left/length}
			if on {
				parts = append(parts, append(part, a))
			}
			part, on, k = []Point{a}, !on, k+1
			left = max(pattern[k%len(pattern)], 0.01)
		}
	}
	if on && len(part) > 1 {
		parts = append(parts, part)
	}
	return parts
}

func appendBar(out Path, a, b Point, r float64) Path {
	l := dist(a, b)
	if l == 0 {
		return out
	}
	nx, ny := -(b.Y-a.Y)/l*r, (b.X-a.X)/l*r
	out.MoveTo(a.X+nx, a.Y+ny)
	out.LineTo(a.X-nx, a.Y-ny)
	out.LineTo(b.X-nx, b.Y-ny)
	out.LineTo(b.X+nx, b.Y+ny)
	out.Close()
	return out
}

// appendDot rounds a joint: an octagon that turns as a bar does.
func appendDot(out Path, c Point, r float64) Path {
	for i := range 8 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 4)
		if i == 0 {
			out.MoveTo(c.X+r*cos, c.Y+r*sin)
			continue
		}
		out.LineTo(c.X+r*cos, c.Y+r*sin)
	}
	out.Close()
	return out
}
