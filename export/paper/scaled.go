package paper

import (
	"image"

	"pressworth/assets/drawing"
)

// Scaled draws on another sheet, everything larger or smaller by a factor.
type Scaled struct {
	Sheet
	By float64
}

// Page begins a page, scaled.
func (s Scaled) Page(w, h float64) { s.Sheet.Page(w*s.By, h*s.By) }

// Text sets a line, scaled.
func (s Scaled) Text(x, y float64, text string, style Style) {
	style.Size *= s.By
	s.Sheet.Text(x*s.By, y*s.By, text, style)
}

// Path draws a path, scaled.
func (s Scaled) Path(path drawing.Path, look Look) {
	look.Width *= s.By
	dash := make([]float64, len(look.Dash))
	for i, d := range look.Dash {
		dash[i] = d * s.By
	}
	look.Dash = dash
	s.Sheet.Path(path.Map(func(p drawing.Point) drawing.Point { return drawing.Point{X: p.X * s.By, Y: p.Y * s.By} }), look)
}

// Image lays a picture, scaled.
func (s Scaled) Image(name string, img image.Image, at Place) {
	s.Sheet.Image(name, img, Place{CX: at.CX * s.By, CY: at.CY * s.By, W: at.W * s.By, H: at.H * s.By, Angle: at.Angle})
}
