package paper

import (
	"fmt"
	"image"
	"strings"

	"pressworth/assets/drawing"
)

// Record writes down what is drawn, a line a mark: the golden text that tests hold a document to.
type Record struct {
	b     strings.Builder
	Pages int
}

// Page begins a page.
func (r *Record) Page(w, h float64) {
	r.Pages++
	fmt.Fprintf(&r.b, "page %d %.0f × %.0f\n", r.Pages, w, h)
}

// Text writes a line of text down.
func (r *Record) Text(x, y float64, text string, s Style) {
	fmt.Fprintf(&r.b, "text %.1f %.1f %.4g %v %s %q\n", x, y, s.Size, s.Weight, s.Color, text)
}

// Path writes a path down by its box.
func (r *Record) Path(p drawing.Path, l Look) {
	x0, y0, x1, y1 := p.Box()
	fmt.Fprintf(&r.b, "path %.1f %.1f %.1f %.1f fill %q stroke %q %.2f\n", x0, y0, x1, y1, l.Fill, l.Stroke, l.Width)
}

// Image writes a picture down by its size in pixels and its place.
func (r *Record) Image(name string, img image.Image, at Place) {
	b := img.Bounds()
	fmt.Fprintf(&r.b, "image %q %d × %d about %.1f %.1f, %.1f × %.1f, turned %.1f\n", name, b.Dx(), b.Dy(), at.CX, at.CY, at.W, at.H, at.Angle)
}

// String is everything drawn so far.
func (r *Record) String() string { return r.b.String() }
