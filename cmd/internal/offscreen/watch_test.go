package offscreen

import (
	"image"
	"image/color"
	"testing"
	"time"
)

func TestFirstDifference_findsThePixel(t *testing.T) {
	a, b := image.NewRGBA(image.Rect(0, 0, 9, 9)), image.NewRGBA(image.Rect(0, 0, 9, 9))
	if at, differ := FirstDifference(a, b, a.Rect); differ {
		t.Errorf("equal pictures differ at %v", at)
	}
	b.SetRGBA(7, 4, color.RGBA{R: 1})
	b.SetRGBA(2, 5, color.RGBA{R: 1})
	if at, differ := FirstDifference(a, b, a.Rect); !differ || at != image.Pt(7, 4) {
		t.Errorf("first difference at %v, %v, want (7,4)", at, differ)
	}
	if at, differ := FirstDifference(a, b, image.Rect(0, 5, 9, 9)); !differ || at != image.Pt(2, 5) {
		t.Errorf("first difference below line 5 at %v, %v, want (2,5)", at, differ)
	}
}

func TestScreen_anEmptyScreenStaysBlack(t *testing.T) {
	screen, err := Connect(server(t).Display)
	if err != nil {
		t.Fatal(err)
	}
	defer screen.Close()
	area := image.Rect(0, 0, 16, 16)
	if err := screen.Lit(area, 20*time.Millisecond); err == nil {
		t.Error("a screen with nothing on it was lit")
	}
	if took, err := screen.Answer('a', area, 20*time.Millisecond); err == nil {
		t.Errorf("a screen with nothing on it answered a key in %v", took)
	}
}
