package chart

import (
	"image"
	"image/color"
	"image/draw"
	"testing"

	"pressworth/assets/drawing"
)

var longSleeve = drawing.Draw(drawing.Garment{Category: "long sleeve", Size: "M", Side: drawing.Back, Color: "#22335c"},
	[]drawing.Art{{Name: "Full back", W: 11, H: 8.5, Inks: []string{"white"}}})

func TestRaster_paintsGarmentAndArtworkAndLeavesTheGroundClear(t *testing.T) {
	im := Raster(longSleeve, 10, nil)
	if w, h := im.Bounds().Dx(), im.Bounds().Dy(); w != int(longSleeve.W*10+0.5) || h != int(longSleeve.H*10+0.5) {
		t.Errorf("got %d × %d pixels for %.1f × %.1f in at 10 an inch", w, h, longSleeve.W, longSleeve.H)
	}
	if a := im.RGBAAt(0, 0).A; a != 0 {
		t.Errorf("the corner is painted: alpha %d", a)
	}
	if c := im.RGBAAt(im.Bounds().Dx()/2, im.Bounds().Dy()*9/10); c.B < 0x40 || c.A != 0xff {
		t.Errorf("the garment is %v near its hem, want navy", c)
	}
	white := 0
	for i := 0; i < len(im.Pix); i += 4 {
		if im.Pix[i] > 0xf0 && im.Pix[i+1] > 0xf0 && im.Pix[i+2] > 0xf0 {
			white++
		}
	}
	if white < 100 {
		t.Errorf("%d white pixels, want the artwork", white)
	}
}

func TestRaster_laysAPictureIntoItsFrame(t *testing.T) {
	p := drawing.Draw(drawing.Garment{Category: "tee", Size: "M", Side: drawing.Back, Color: "#22335c"},
		[]drawing.Art{{Name: "Full back", W: 10, H: 6, Text: " "}})
	red := image.NewUniform(color.NRGBA{R: 0xff, A: 0xff})
	print := image.NewNRGBA(image.Rect(0, 0, 50, 30))
	draw.Draw(print, print.Bounds(), red, image.Point{}, draw.Src)
	im := Raster(p, 10, []image.Image{print})
	n := 0
	for i := 0; i < len(im.Pix); i += 4 {
		if im.Pix[i] > 0xf0 && im.Pix[i+1] < 0x10 {
			n++
		}
	}
	if n < 5800 || n > 6100 {
		t.Errorf("%d red pixels, want about 100 × 60", n)
	}
}

func BenchmarkRaster(b *testing.B) {
	for range b.N {
		Raster(longSleeve, 22, nil)
	}
}
