package artwork

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"image/png"
	"math"
	"math/rand/v2"
	"testing"

	"golang.org/x/image/vector"
)

var spots = []color.NRGBA{
	{0xd0, 0x20, 0x28, 255},
	{0x1f, 0x30, 0x55, 255},
	{0xf2, 0xc0, 0x2b, 255},
	{0x10, 0x80, 0x50, 255},
	{0x10, 0x10, 0x10, 255},
	{0xf0, 0x80, 0x20, 255},
}

// discs draws n soft-edged discs, each of an ink of its own, on a ground; the drawing keeps 40 pixels off the border.
func discs(n int, ground color.Color) *image.NRGBA {
	im := image.NewNRGBA(image.Rect(0, 0, 640, 480))
	draw.Draw(im, im.Bounds(), image.NewUniform(ground), image.Point{}, draw.Src)
	for i := range n {
		r := vector.NewRasterizer(640, 480)
		cx, cy := 120+float64(i%3)*200, 120+float64(i/3)*220
		for k := range 72 {
			a := float64(k) * math.Pi / 36
			x, y := float32(cx+80*math.Cos(a)), float32(cy+80*math.Sin(a))
			if k == 0 {
				r.MoveTo(x, y)
			}
			r.LineTo(x, y)
		}
		r.ClosePath()
		r.Draw(im, im.Bounds(), image.NewUniform(spots[i]), image.Point{})
	}
	return im
}

func encoded(t *testing.T, im image.Image, asJPEG bool) []byte {
	t.Helper()
	var b bytes.Buffer
	var err error
	if asJPEG {
		err = jpeg.Encode(&b, im, &jpeg.Options{Quality: 85})
	} else {
		err = png.Encode(&b, im)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestInks_ofFlatArtAreCounted(t *testing.T) {
	grounds := map[string]color.Color{"clear": color.Transparent, "white": color.White, "grey": color.NRGBA{0xc8, 0xc8, 0xc8, 255}}
	for name, ground := range grounds {
		for n := 1; n <= 6; n++ {
			for _, asJPEG := range []bool{false, true} {
				if asJPEG && name == "clear" {
					continue
				}
				p, err := Read(encoded(t, discs(n, ground), asJPEG))
				if err != nil || p.Photo || len(p.Inks) != n {
					t.Errorf("%d inks on %s ground, JPEG %v: got %d inks %v, photo %v, %v", n, name, asJPEG, len(p.Inks), p.Inks, p.Photo, err)
				}
			}
		}
	}
}

func TestInks_areNamedAndOrderedByArea(t *testing.T) {
	im := discs(2, color.White)
	draw.Draw(im, image.Rect(40, 300, 600, 440), image.NewUniform(spots[2]), image.Point{}, draw.Src)
	p, err := Look(im)
	if err != nil || len(p.Inks) != 3 || p.Inks[0].Name != "gold" && p.Inks[0].Name != "yellow" {
		t.Errorf("got %v, %v; want the large gold bar first", p.Inks, err)
	}
	sum := 0.0
	for _, i := range p.Inks {
		sum += i.Share
	}
	if sum < 0.97 || sum > 1.0001 {
		t.Errorf("the shares add up to %f", sum)
	}
}

func TestPhoto_andGradientWantFullColour(t *testing.T) {
	gradient := image.NewNRGBA(image.Rect(0, 0, 400, 300))
	photo := image.NewNRGBA(image.Rect(0, 0, 400, 300))
	random := rand.New(rand.NewPCG(1, 2))
	for y := range 300 {
		for x := range 400 {
			gradient.SetNRGBA(x, y, color.NRGBA{uint8(60 + x/3), uint8(200 - y/2), 90, 255})
			base := 90 + 60*math.Sin(float64(x)/23)*math.Cos(float64(y)/31)
			noise := func() uint8 { return uint8(base + random.NormFloat64()*14) }
			photo.SetNRGBA(x, y, color.NRGBA{noise(), noise(), noise(), 255})
		}
	}
	for name, im := range map[string]image.Image{"gradient": gradient, "photo": photo} {
		for _, asJPEG := range []bool{false, true} {
			p, err := Read(encoded(t, im, asJPEG))
			if err != nil || !p.Photo {
				t.Errorf("%s, JPEG %v: got %d inks, photo %v, %v; want full colour", name, asJPEG, len(p.Inks), p.Photo, err)
			}
		}
	}
}

func TestBorder_isTrimmed(t *testing.T) {
	for name, ground := range map[string]color.Color{"clear": color.Transparent, "white": color.White} {
		p, err := Look(discs(1, ground))
		if err != nil || p.Width < 159 || p.Width > 162 || p.Height < 159 || p.Height > 162 {
			t.Errorf("%s: got %d × %d, %v; want the disc of 160", name, p.Width, p.Height, err)
		}
	}
}

func TestGround_insideADrawingStays(t *testing.T) {
	im := discs(1, color.White)
	draw.Draw(im, image.Rect(100, 100, 140, 140), image.White, image.Point{}, draw.Src)
	p, err := Look(im)
	if err != nil || len(p.Inks) != 2 {
		t.Errorf("got %v, %v; want the red disc and the white square in it", p.Inks, err)
	}
}

func TestDots_followTheSize(t *testing.T) {
	p := Picture{Width: 1200, Height: 900}
	if w, h := p.At(Sharp); w != 4 || h != 3 {
		t.Errorf("at 300 dots an inch: got %.2f × %.2f, want 4 × 3", w, h)
	}
	if got := p.Dots(11, 8.25); got != 109 || got >= Coarse {
		t.Errorf("got %d dots an inch, want 109", got)
	}
}

func TestRead_aDrawingHasItsInksAndNoDots(t *testing.T) {
	svg := `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 120"><rect x="20" y="20" width="160" height="80" fill="#d02028"/>` +
		`<circle cx="100" cy="60" r="30" fill="#f2c02b"/></svg>`
	p, err := Read([]byte(svg))
	if err != nil || len(p.Inks) != 2 || !p.Vector || p.Dots(10, 5) != 0 {
		t.Errorf("got %+v, %v; want two inks and no dots", p.Inks, err)
	}
	if a := p.Aspect(); a < 0.49 || a > 0.51 {
		t.Errorf("got %.3f as high as wide, want 0.5: the border is trimmed", a)
	}
	if _, err := Read([]byte("<svg><path d='M")); err == nil {
		t.Error("a broken drawing is taken")
	}
}

func TestRead_saysWhatIsWrong(t *testing.T) {
	whole := encoded(t, discs(1, color.White), false)
	for name, data := range map[string][]byte{
		"text": []byte("no picture"), "nothing": nil, "half": whole[:len(whole)/2],
		"empty": encoded(t, image.NewNRGBA(image.Rect(0, 0, 9, 9)), false),
	} {
		if _, err := Read(data); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
