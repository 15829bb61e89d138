package chart

import (
	"image"
	"image/color"
	"math"

	"golang.org/x/image/draw"
	"golang.org/x/image/math/f64"
	"golang.org/x/image/vector"

	"pressworth/assets/drawing"
	"pressworth/ui/parts"
)

// Raster paints a drawing of a garment on clear ground, with so many pixels an inch, and lays the pictures of
// its artworks into their frames. It may be called on any goroutine.
func Raster(p drawing.Picture, perInch float64, prints []image.Image) *image.RGBA {
	w, h := max(int(p.W*perInch+0.5), 1), max(int(p.H*perInch+0.5), 1)
	out := image.NewRGBA(image.Rect(0, 0, w, h))
	r := vector.NewRasterizer(1, 1)
	for _, s := range p.Outlined() {
		x0, y0, x1, y1 := s.Path.Box()
		box := image.Rect(int(x0*perInch)-1, int(y0*perInch)-1, int(x1*perInch)+2, int(y1*perInch)+2).Intersect(out.Bounds())
		if box.Empty() {
			continue
		}
		r.Reset(box.Dx(), box.Dy())
		trace(r, s.Path, perInch, box.Min)
		r.Draw(out, box, image.NewUniform(ink(s)), image.Point{})
	}
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

func ink(s drawing.Shape) color.NRGBA {
	c, _ := parts.ParseHex(s.Fill)
	c.A = uint8(s.Alpha()*255 + 0.5)
	return c
}

// trace follows a path; the rasterizer's corner lies at origin.
func trace(r *vector.Rasterizer, path drawing.Path, k float64, origin image.Point) {
	at := func(p drawing.Point) (float32, float32) {
		return float32(p.X*k) - float32(origin.X), float32(p.Y*k) - float32(origin.Y)
	}
	for _, s := range path {
		x, y := at(s.P[0])
		switch s.Op {
		case 'M':
			r.MoveTo(x, y)
		case 'L':
			r.LineTo(x, y)
		case 'C':
			x2, y2 := at(s.P[1])
			x3, y3 := at(s.P[2])
			r.CubeTo(x, y, x2, y2, x3, y3)
		case 'Z':
			r.ClosePath()
		}
	}
}
