package drawing

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/vector"
)

// Image draws a picture at so many dots per inch on a transparent ground.
func Image(p Picture, dotsPerInch float64) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, int(math.Ceil(p.W*dotsPerInch)), int(math.Ceil(p.H*dotsPerInch))))
	Paint(img, p, dotsPerInch)
	return img
}

// Paint draws a picture onto an image at so many dots per inch, from its corner.
func Paint(img *image.RGBA, p Picture, dotsPerInch float64) {
	for _, s := range p.Outlined() {
		fill(img, s, dotsPerInch)
	}
}

// fill draws one shape within its own box, which keeps small shapes cheap.
func fill(img *image.RGBA, s Shape, k float64) {
	x0, y0, x1, y1 := s.Path.Box()
	box := image.Rect(int(math.Floor(x0*k)), int(math.Floor(y0*k)), int(math.Ceil(x1*k))+1, int(math.Ceil(y1*k))+1).Intersect(img.Bounds())
	if box.Empty() {
		return
	}
	var r vector.Rasterizer
	r.Reset(box.Dx(), box.Dy())
	at := func(q Point) (x, y float32) {
		return float32(q.X*k) - float32(box.Min.X), float32(q.Y*k) - float32(box.Min.Y)
	}
	for _, g := range s.Path {
		ax, ay := at(g.P[0])
		switch g.Op {
		case 'M':
			r.MoveTo(ax, ay)
		case 'L':
			r.LineTo(ax, ay)
		case 'C':
			bx, by := at(g.P[1])
			cx, cy := at(g.P[2])
			r.CubeTo(ax, ay, bx, by, cx, cy)
		case 'Z':
			r.ClosePath()
		}
	}
	c := rgbOf(s.Fill)
	a := s.Alpha()
	src := image.NewUniform(color.NRGBA{uint8(c[0]), uint8(c[1]), uint8(c[2]), uint8(a*255 + 0.5)})
	r.DrawOp = draw.Over
	r.Draw(img, box, src, image.Point{})
}
