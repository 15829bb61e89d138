package chart

import (
	"flag"
	"image"
	"image/draw"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/assets/drawing"
	"pressworth/ui/look"
)

// go test ./ui/chart -run Golden -update writes the pictures anew; look at them before they are committed.
var update = flag.Bool("update", false, "write the golden pictures anew")

const (
	tolerance = 2    // of 255: processors round the mixing of colours differently
	strays    = 2000 // one pixel in so many may be off by more, on the edge of a stroke
)

// differing counts the pixels of two pictures that are not alike within the tolerance; -1: they are not of one size.
func differing(a, b image.Image) (n int) {
	if a.Bounds() != b.Bounds() {
		return -1
	}
	x, y := image.NewRGBA(a.Bounds()), image.NewRGBA(a.Bounds())
	draw.Draw(x, x.Bounds(), a, a.Bounds().Min, draw.Src)
	draw.Draw(y, y.Bounds(), b, b.Bounds().Min, draw.Src)
	for i := 0; i < len(x.Pix); i += 4 {
		for k := range 4 {
			if d := int(x.Pix[i+k]) - int(y.Pix[i+k]); d > tolerance || d < -tolerance {
				n++
				break
			}
		}
	}
	return n
}

func golden(t *testing.T, name string, got image.Image) {
	t.Helper()
	path := filepath.Join("testdata", name+".png")
	if *update {
		write(t, path, got)
	}
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	want, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	if n, all := differing(got, want), got.Bounds().Dx()*got.Bounds().Dy(); n < 0 || n > all/strays {
		t.Errorf("%s: %d of %d pixels differ (-1: another size)", path, n, all)
	}
}

func write(t *testing.T, path string, im image.Image) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, im); err != nil {
		t.Fatal(err)
	}
}

func TestGolden_garmentsWithNamesNumbersAndArtwork(t *testing.T) {
	team := []drawing.Art{
		{Name: "Name", Position: "back, across the shoulders", W: 8.4, H: 2, Inks: []string{"white"}, Text: "RIVERA"},
		{Name: "Number", Position: "back, below the name", W: 12, H: 10, Inks: []string{"gold"}, Text: "24"},
	}
	front := []drawing.Art{{Name: "Full front", W: 12, H: 10, Inks: []string{"red", "white"}}}
	for name, x := range map[string]struct {
		garment drawing.Garment
		arts    []drawing.Art
	}{
		"team-back-small": {drawing.Garment{Category: "tee", Size: "YS", Side: drawing.Back, Color: "#22335c"}, team},
		"team-back-large": {drawing.Garment{Category: "tee", Size: "2XL", Side: drawing.Back, Color: "#22335c"}, team},
		"hoodie-front":    {drawing.Garment{Category: "hoodie", Size: "M", Side: drawing.Front, Color: "#d9d9d9"}, front},
	} {
		golden(t, name, Raster(drawing.Draw(x.garment, x.arts), 8, nil))
	}
}

func TestGolden_bandsInBothThemes(t *testing.T) {
	for name, mode := range map[string]look.Mode{"bands-light": look.Light, "bands-dark": look.Dark} {
		app := test.NewApp()
		t.Cleanup(app.Quit)
		app.Settings().SetTheme(look.NewTheme(mode, 100))
		b := NewBands()
		w := test.NewWindow(b)
		w.Resize(fyne.NewSize(420, 90))
		b.Set([]Band{
			{Name: "1 ink", Own: true, Spans: []Span{{1, 12, "film", 0, true}, {13, 150, "sheets from 13", 1, false}}},
			{Name: "full colour", Spans: []Span{{1, 150, "film at every quantity", 0, true}}},
		}, 150, 46, false)
		golden(t, name, w.Canvas().Capture())
	}
}

func TestGolden_compareFindsAChange(t *testing.T) {
	art := []drawing.Art{{Name: "Number", Position: "back", W: 6, H: 10, Inks: []string{"gold"}, Text: "7"}}
	tee := func(size string) image.Image {
		return Raster(drawing.Draw(drawing.Garment{Category: "tee", Size: "M", Side: drawing.Back, Color: size}, art), 8, nil)
	}
	if n := differing(tee("#22335c"), tee("#22335c")); n != 0 {
		t.Errorf("a picture against itself: %d pixels differ", n)
	}
	if n := differing(tee("#22335c"), tee("#22405c")); n < 1000 {
		t.Errorf("another navy: %d pixels differ, want the whole garment", n)
	}
	if n := differing(tee("#22335c"), image.NewRGBA(image.Rect(0, 0, 1, 1))); n != -1 {
		t.Errorf("another size: got %d, want -1", n)
	}
}
