package chart

import (
	"math"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
)

// shown puts a chart into a window of the toolkit's test driver.
func shown(t testing.TB, o fyne.CanvasObject, mode look.Mode) {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	app.Settings().SetTheme(look.NewTheme(mode, 100))
	w := test.NewWindow(o)
	w.Resize(fyne.NewSize(420, 200))
}

// objects are what a chart draws now.
func objects(o fyne.Widget) (rects []*canvas.Rectangle, lines []*canvas.Line, words []string) {
	for _, x := range test.WidgetRenderer(o).Objects() {
		if !x.Visible() {
			continue
		}
		switch x := x.(type) {
		case *canvas.Rectangle:
			rects = append(rects, x)
		case *canvas.Line:
			lines = append(lines, x)
		case *canvas.Text:
			words = append(words, x.Text)
		}
	}
	return rects, lines, words
}

func TestStack_slicesAreAsWideAsTheirParts(t *testing.T) {
	s := NewStack()
	shown(t, s, look.Light)
	s.Set([]Slice{{look.Blanks, 0.5}, {look.Transfers, 0.25}, {look.Art, 0.25}}, false)
	rects, _, _ := objects(s)
	if len(rects) != 3 {
		t.Fatalf("got %d slices, want 3", len(rects))
	}
	if got := rects[0].Size().Width / s.Size().Width; math.Abs(float64(got)-0.5) > 0.01 {
		t.Errorf("the first slice is %.3f of the bar, want 0.5", got)
	}
	if rects[0].FillColor != look.Blanks.Color() {
		t.Errorf("got %v, want the colour of blanks", rects[0].FillColor)
	}
	s.Set([]Slice{{look.Blanks, 1}}, false)
	if rects, _, _ = objects(s); len(rects) != 1 {
		t.Errorf("%d slices are left of three, want 1", len(rects))
	}
}

func TestBands_sayTheirAnswersInWordsAndMarkTheJob(t *testing.T) {
	b := NewBands()
	shown(t, b, look.Dark)
	b.Set([]Band{{Name: "2 inks", Own: true, Spans: []Span{{1, 21, "film", 0, true}, {22, 150, "sheets from 22", 1, false}}}}, 150, 46, false)
	rects, lines, words := objects(b)
	all := strings.Join(words, "|")
	for _, want := range []string{"2 inks", "film", "sheets from 22", "46", "1"} {
		if !strings.Contains("|"+all+"|", "|"+want+"|") {
			t.Errorf("%q is not on the chart: %s", want, all)
		}
	}
	if len(rects) != 2 || len(lines) != 1 {
		t.Fatalf("got %d spans and %d marks, want 2 and 1", len(rects), len(lines))
	}
	if end := rects[0].Position().X + rects[0].Size().Width; end > lines[0].Position1.X || rects[1].Position().X > lines[0].Position1.X {
		t.Errorf("46 is marked at %.0f, the span from 22 begins at %.0f", lines[0].Position1.X, rects[1].Position().X)
	}
	if rects[0].FillColor == rects[1].FillColor {
		t.Error("two cards are drawn in one tone")
	}
}

func TestCurve_fallsFromLeftToRightAndNamesTheJob(t *testing.T) {
	c := NewCurve()
	shown(t, c, look.Light)
	c.Set([]Point{{12, 30.13, "30.13", false, false}, {46, 24.29, "24.29", true, true}, {144, 19.05, "19.05", false, false}}, false)
	_, lines, words := objects(c)
	if got := strings.Join(words, " "); got != "30.13 24.29 19.05" {
		t.Errorf("got %q", got)
	}
	for _, l := range lines[1:] {
		if l.Position2.Y < l.Position1.Y {
			t.Errorf("the price rises from %v to %v", l.Position1, l.Position2)
		}
	}
}

func TestSheet_isDrawnToScale(t *testing.T) {
	s := NewSheet(130, 95)
	shown(t, s, look.Light)
	s.Set(Layout{Width: 13, Height: 9.5, Edge: 0.25, Pieces: []Piece{{X: 0.25, Y: 0.25, W: 11, H: 8.5, Label: "back 11 × 8.5"}}}, false)
	rects, _, words := objects(s)
	if len(rects) != 3 || len(words) != 1 {
		t.Fatalf("got %d rectangles and %q, want sheet, piece and border, and the piece's name", len(rects), words)
	}
	sheet, piece := rects[0].Size(), rects[1].Size()
	for what, got := range map[string]float32{"width": piece.Width / sheet.Width * 13 / 11, "height": piece.Height / sheet.Height * 9.5 / 8.5} {
		if math.Abs(float64(got)-1) > 0.01 {
			t.Errorf("the piece's %s is off by %.3f", what, got)
		}
	}
}

func TestSheet_aLongRollLiesOnItsSide(t *testing.T) {
	s := NewSheet(400, 90)
	shown(t, s, look.Light)
	s.Set(Layout{Width: 22, Height: 60, Film: true, Pieces: []Piece{{W: 11, H: 8, Label: "x"}}}, false)
	rects, _, _ := objects(s)
	if z := rects[0].Size(); z.Width < z.Height {
		t.Errorf("got %v, want the roll lying", z)
	}
}

func TestLevers_reachToBothSides(t *testing.T) {
	l := NewLevers()
	shown(t, l, look.Light)
	l.Set([]Lever{{"blanks", "−54.75", "+54.75", -1, 1}, {"wage", "−8.00", "+8.44", -0.15, 0.15}}, false)
	rects, lines, words := objects(l)
	if len(rects) != 4 || len(lines) != 1 || len(words) != 6 {
		t.Fatalf("got %d bars, %d lines, %q", len(rects), len(lines), words)
	}
	middle := lines[0].Position1.X
	if right := rects[0].Position().X + rects[0].Size().Width; math.Abs(float64(right-middle)) > 0.5 || rects[1].Position().X != middle {
		t.Errorf("the bars of blanks end at %.1f and begin at %.1f, the middle is %.1f", right, rects[1].Position().X, middle)
	}
}

// Labels stand on tones that are mixed with the panel: they must be readable there too, by 4.5 to 1 (WCAG 2.1, 1.4.3).
func TestTones_carryTheirLabels(t *testing.T) {
	for _, mode := range []look.Mode{look.Light, look.Dark} {
		b := NewBands()
		shown(t, b, mode)
		for tone := range 3 {
			for _, film := range []bool{true, false} {
				ground, ink := b.tone(Span{Tone: tone, Film: film}), look.Color(look.Ink)
				if got := contrast(ground, ink); got < 4.5 {
					t.Errorf("mode %v, tone %d, film %v: %.2f to 1", mode, tone, film, got)
				}
			}
		}
	}
}

func TestFigures_reuseTheirObjects(t *testing.T) {
	s := NewStack()
	shown(t, s, look.Light)
	s.Set([]Slice{{look.Blanks, 0.5}, {look.Transfers, 0.5}}, false)
	before, _, _ := objects(s)
	s.Set([]Slice{{look.Blanks, 0.4}, {look.Transfers, 0.6}}, false)
	after, _, _ := objects(s)
	if before[0] != after[0] || before[1] != after[1] {
		t.Error("a change of figures made new objects")
	}
}
