package chart

import (
	"image"
	"math"

	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"

	"pressworth/assets/drawing"
)

// Raster paints a drawing of a garment on clear ground, with so many pixels an inch, and lays the pictures of
// its artworks into their frames. It may be called on any goroutine.
func Raster(p drawing.Picture, perInch float64, prints []image.Image) *image.RGBA {
	w, h := max(int(p.W*perInch+0.5), 1), max(int(p.H*perInch+0.5), 1)
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	drawing.Paint(out, p, perInch)
	for _, f := range p.Frames {
		if f.Art < len(prints) && prints[f.Art] != nil {
			lay(out, prints[f.Art], f, perInch)
		}
	}
	return out
}

// lay puts a picture into its frame: first brought to size, then turned.
func lay(out *image.RGBA, print image.Image, f drawing.Frame, k float64) {
	w, h := max(int(f.W*k+0.5), 1), max(int(f.H*k+0.5), 1)
	small := image.NewRGBA(image.Rect(0, 0, w, h))
	draw.ApproxBiLinear.Scale(small, small.Bounds(), print, print.Bounds(), draw.Src, nil)
	sin, cos := math.Sincos(f.Angle * math.Pi / 180)
	x, y := float64(w)/2, float64(h)/2
	turn := f64.Aff3{cos, -sin, f.CX*k - cos*x + sin*y, sin, cos, f.CY*k - sin*x - cos*y}
	draw.BiLinear.Transform(out, turn, small, small.Bounds(), draw.Over, nil)
}
