// Package paper is what documents are drawn on: pages in points, text on a baseline, paths. Layout knows nothing but
// Sheet; PDF and Record are the two that there are.
//
// Not in this package: what stands on a page; the file that a PDF ends up in.
package paper

import (
	"image"

	"pressworth/assets/drawing"
	"pressworth/export/letters"
)

// Sheet takes the marks of a document, page after page. Lengths are points (1/72 in), y grows downwards.
type Sheet interface {
	// Page begins a page of a width and a height.
	Page(w, h float64)
	// Text sets one line, its baseline at y.
	Text(x, y float64, text string, style Style)
	// Path fills and strokes a path.
	Path(path drawing.Path, look Look)
	// Image lays a picture into a place, as large as fits without stretching it. One name is one picture.
	Image(name string, img image.Image, at Place)
}

// Place is a rectangle about a centre, turned clockwise by an angle in degrees.
type Place struct{ CX, CY, W, H, Angle float64 }

// fitted is the largest place of a picture's proportions within it.
func (p Place) fitted(img image.Image) Place {
	b := img.Bounds()
	k := min(p.W/float64(max(b.Dx(), 1)), p.H/float64(max(b.Dy(), 1)))
	p.W, p.H = float64(b.Dx())*k, float64(b.Dy())*k
	return p
}

// Style is how a line of text looks.
type Style struct {
	Size   float64 // points
	Weight letters.Weight
	Color  string // #rrggbb
}

// Width is how wide a line comes out.
func (s Style) Width(text string) float64 { return letters.Width(text, s.Weight, s.Size) }

// Look is how a path looks; empty colours draw nothing.
type Look struct {
	Fill, Stroke string
	Width        float64 // of the stroke
	Dash         []float64
	Alpha        float64 // 0 counts as 1
}

// Right sets a line that ends at x.
func Right(s Sheet, x, y float64, text string, style Style) {
	s.Text(x-style.Width(text), y, text, style)
}

// Rule draws a straight line.
func Rule(s Sheet, x0, y0, x1, y1 float64, look Look) {
	var p drawing.Path
	p.MoveTo(x0, y0)
	p.LineTo(x1, y1)
	s.Path(p, look)
}

// Box draws a rectangle.
func Box(s Sheet, x, y, w, h float64, look Look) { s.Path(drawing.Rect(x, y, w, h), look) }

// Picture draws a picture with its corner at x, y, points to an inch of the picture as given.
func Picture(s Sheet, p drawing.Picture, x, y, scale float64) {
	for _, shape := range p.Shapes {
		dash := make([]float64, len(shape.Dash))
		for i, d := range shape.Dash {
			dash[i] = d * scale
		}
		s.Path(shape.Path.Map(func(q drawing.Point) drawing.Point {
			return drawing.Point{X: x + q.X*scale, Y: y + q.Y*scale}
		}), Look{Fill: shape.Fill, Stroke: shape.Stroke, Width: shape.Width * scale, Dash: dash, Alpha: shape.Alpha()})
	}
}
