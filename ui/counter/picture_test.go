package counter

import (
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2/storage"
)

func TestCounter_aPictureBringsItsInksAndItsShape(t *testing.T) {
	d := newDesk(t, 0, usual)
	a := d.counter.form.artwork
	key := a.view[0].Key
	a.open(key)
	file := storage.NewFileURI(writeCrest(t))
	r, err := storage.Reader(file)
	if err != nil {
		t.Fatal(err)
	}
	a.details.picture.take(key, r)
	row := d.p.View().Form.Artwork[0]
	if row.Inks != "red" || row.Inches != "11 × 5.5" {
		t.Errorf("got inks %q, inches %q; want one red ink at half the width", row.Inks, row.Inches)
	}
	shown := strings.Join(words(a.details.box), "\n")
	for _, want := range []string{"crest.png", "1 ink found", "dots per inch at this size", "red"} {
		if !strings.Contains(shown, want) {
			t.Errorf("%q is not shown:\n%s", want, shown)
		}
	}
}

// writeCrest writes a picture of one red ink, 400 × 200 pixels inside an empty border.
func writeCrest(t *testing.T) string {
	t.Helper()
	im := image.NewNRGBA(image.Rect(0, 0, 500, 300))
	for y := 50; y < 250; y++ {
		for x := 50; x < 450; x++ {
			im.SetNRGBA(x, y, color.NRGBA{R: 0xd0, G: 0x20, B: 0x28, A: 255})
		}
	}
	path := filepath.Join(t.TempDir(), "crest.png")
	f, err := os.Create(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := png.Encode(f, im); err != nil {
		t.Fatal(err)
	}
	return path
}
