package artwork

import (
	"image"
	"image/draw"
	"math"
)

// canvas is a picture as plain pixels with straight alpha.
type canvas struct {
	*image.NRGBA
	w, h int
}

func newCanvas(im image.Image) *canvas {
	b := im.Bounds()
	c := &canvas{NRGBA: image.NewNRGBA(image.Rect(0, 0, b.Dx(), b.Dy())), w: b.Dx(), h: b.Dy()}
	draw.Draw(c.NRGBA, c.Bounds(), im, b.Min, draw.Src)
	return c
}

// lab is a colour in Oklab, in which equal distances look about equally large: B. Ottosson, "A perceptual color space
// for image processing" (2020). L, a and b; white is 1, 0, 0.
type lab struct{ l, a, b float64 }

func (x lab) far(y lab) float64 {
	return math.Sqrt((x.l-y.l)*(x.l-y.l) + (x.a-y.a)*(x.a-y.a) + (x.b-y.b)*(x.b-y.b))
}

// linear holds the linear light of every 8-bit value of sRGB (IEC 61966-2-1).
var linear = func() (t [256]float64) {
	for i := range t {
		v := float64(i) / 255
		if v <= 0.04045 {
			t[i] = v / 12.92
		} else {
			t[i] = math.Pow((v+0.055)/1.055, 2.4)
		}
	}
	return t
}()

func toLab(r, g, b uint8) lab {
	x, y, z := linear[r], linear[g], linear[b]
	l := math.Cbrt(0.4122214708*x + 0.5363325363*y + 0.0514459929*z)
	m := math.Cbrt(0.2119034982*x + 0.6806995451*y + 0.1073969566*z)
	s := math.Cbrt(0.0883024619*x + 0.2817188376*y + 0.6299787005*z)
	return lab{
		0.2104542553*l + 0.7936177850*m - 0.0040720468*s,
		1.9779984951*l - 2.4285922050*m + 0.4505937099*s,
		0.0259040371*l + 0.7827717662*m - 0.8086757660*s,
	}
}

func (c *canvas) lab(x, y int) lab {
	i := c.PixOffset(x, y)
	return toLab(c.Pix[i], c.Pix[i+1], c.Pix[i+2])
}

func (c *canvas) alpha(x, y int) uint8 { return c.Pix[c.PixOffset(x, y)+3] }

// faint is the alpha below which a pixel is not printed, solid the one above which it is no soft edge.
const (
	faint = 24
	solid = 250
)

// near is the distance up to which two colours count as the same ground: what a JPEG file does to one colour.
const near = 0.035

// clearGround makes a ground of one colour clear, where the picture is opaque and its border has one colour. Only what
// hangs together with the border goes: white inside a drawing stays.
func (c *canvas) clearGround() {
	ground, ok := c.borderColor()
	if !ok {
		return
	}
	seen := make([]bool, c.w*c.h)
	var stack []int
	push := func(x, y int) {
		if x < 0 || y < 0 || x >= c.w || y >= c.h || seen[y*c.w+x] {
			return
		}
		seen[y*c.w+x] = true
		if c.like(x, y, ground) {
			stack = append(stack, y*c.w+x)
		}
	}
	for x := range c.w {
		push(x, 0)
		push(x, c.h-1)
	}
	for y := range c.h {
		push(0, y)
		push(c.w-1, y)
	}
	for len(stack) > 0 {
		at := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		x, y := at%c.w, at/c.w
		c.Pix[c.PixOffset(x, y)+3] = 0
		push(x-1, y)
		push(x+1, y)
		push(x, y-1)
		push(x, y+1)
	}
}

// like says whether a pixel is near the ground; the corner's very colour needs no measuring.
func (c *canvas) like(x, y int, ground lab) bool {
	i := c.PixOffset(x, y)
	if c.Pix[i] == c.Pix[0] && c.Pix[i+1] == c.Pix[1] && c.Pix[i+2] == c.Pix[2] {
		return true
	}
	return c.lab(x, y).far(ground) <= near
}

// borderColor is the colour of the border, if at least nineteen in twenty of its pixels are opaque and near each other.
func (c *canvas) borderColor() (lab, bool) {
	first := c.lab(0, 0)
	n, same := 0, 0
	look := func(x, y int) {
		n++
		if c.alpha(x, y) == 255 && c.lab(x, y).far(first) <= near {
			same++
		}
	}
	for x := range c.w {
		look(x, 0)
		look(x, c.h-1)
	}
	for y := range c.h {
		look(0, y)
		look(c.w-1, y)
	}
	return first, same*20 >= n*19
}

// printed is the smallest rectangle that holds everything that is printed.
func (c *canvas) printed() image.Rectangle {
	box := image.Rectangle{}
	for y := range c.h {
		for x := range c.w {
			if c.alpha(x, y) >= faint {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box
}

func (c *canvas) cut(box image.Rectangle) image.Image { return c.SubImage(box) }
