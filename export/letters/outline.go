package letters

import (
	"github.com/go-text/typesetting/font"
	"github.com/go-text/typesetting/font/opentype"
)

// appendGlyph adds a glyph's outline, scaled by k, with its origin at (x, y). Quadratic curves become cubic ones.
func appendGlyph(to []Segment, face *font.Face, g font.GID, x, y, k float64) []Segment {
	outline, ok := face.GlyphData(g).(font.GlyphOutline)
	if !ok {
		return to
	}
	at := func(p opentype.SegmentPoint) Point { return Point{x + float64(p.X)*k, y - float64(p.Y)*k} }
	var pen Point
	open := false
	for _, s := range outline.Segments {
		a := s.Args
		switch s.Op {
		case opentype.SegmentOpMoveTo:
			if open {
				to = append(to, Segment{Op: 'Z'})
			}
			open = true
			pen = at(a[0])
			to = append(to, Segment{Op: 'M', P: [3]Point{pen}})
		case opentype.SegmentOpLineTo:
			pen = at(a[0])
			to = append(to, Segment{Op: 'L', P: [3]Point{pen}})
		case opentype.SegmentOpQuadTo:
			q, end := at(a[0]), at(a[1])
			to = append(to, Segment{Op: 'C', P: [3]Point{toward(pen, q), toward(end, q), end}})
			pen = end
		case opentype.SegmentOpCubeTo:
			to = append(to, Segment{Op: 'C', P: [3]Point{at(a[0]), at(a[1]), at(a[2])}})
			pen = at(a[2])
		}
	}
	if open {
		to = append(to, Segment{Op: 'Z'})
	}
	return to
}

// toward is the cubic control point for an end point and a quadratic control point.
func toward(end, q Point) Point {
	return Point{end.X + (q.X-end.X)*2/3, end.Y + (q.Y-end.Y)*2/3}
}
