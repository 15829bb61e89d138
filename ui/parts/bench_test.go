package parts

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
)

// The benchmarks measure a part without painting: what a key or a step costs in the part itself.

func benchWindow(b *testing.B, objects ...fyne.CanvasObject) {
	b.Helper()
	app := test.NewApp()
	b.Cleanup(app.Quit)
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	w := test.NewWindow(NewLayered(Column(8, objects...)))
	w.Resize(fyne.NewSize(1400, 900))
	b.ReportAllocs()
}

func BenchmarkField_key(b *testing.B) {
	f := NewNumber("")
	benchWindow(b, f)
	Focus(f)
	for i := 0; b.Loop(); i++ {
		f.TypedRune(rune('0' + i%10))
		if i%6 == 5 {
			f.SelectAll()
		}
	}
}

func BenchmarkText_unchanged(b *testing.B) {
	t := NewText("1,261.38", DisplayStyle)
	benchWindow(b, t)
	for b.Loop() {
		t.SetText("1,261.38")
	}
}

func BenchmarkText_changed(b *testing.B) {
	t := NewText("", DisplayStyle)
	benchWindow(b, t)
	for i := 0; b.Loop(); i++ {
		t.SetText(fmt.Sprintf("%d.38", 1000+i%500))
	}
}

func BenchmarkBasisRow_changed(b *testing.B) {
	r := NewBasisRow(BasisText{Name: "Blanks"})
	benchWindow(b, r)
	for i := 0; b.Loop(); i++ {
		r.Set(BasisText{Name: "Blanks", Basis: fmt.Sprintf("%d × 6.85 + 3 × 8.90", i%90), Amount: fmt.Sprintf("%d.10", 300+i%90)})
	}
}

func BenchmarkTable_scrollByARow(b *testing.B) {
	t := NewTable([]TableColumn{{Title: "supplier"}, {Title: "style", Width: 80}, {Title: "name"}, {Title: "colour"}, {Title: "from", Width: 60, Right: true}})
	t.Len = func() int { return 250_000 }
	t.Row = func(i int) []TableCell {
		return []TableCell{{Text: "Northgate Blanks"}, {Text: fmt.Sprint("LS-", i)}, {Text: "Long-sleeve tee"}, {Text: "Navy", Hex: "#1f3055"}, {Text: "6.85"}}
	}
	benchWindow(b)
	w := test.NewWindow(NewLayered(t))
	w.Resize(fyne.NewSize(900, 860))
	for b.Loop() {
		t.ScrollBy(1)
		if t.First() > 249_000 {
			t.Reset()
		}
	}
}

func BenchmarkTypeahead_100000Options(b *testing.B) {
	many := make([]Option, 100_000)
	for i := range many {
		many[i] = Option{Key: fmt.Sprint(i), Name: fmt.Sprint("style ", i), Detail: "Northgate Blanks"}
	}
	t := NewTypeahead("", func(_ string, show func([]Option)) { show(many) })
	benchWindow(b, t.Field)
	Focus(t.Field)
	for i := 0; b.Loop(); i++ {
		t.Field.TypedRune('a')
		if i%8 == 7 {
			t.Field.SelectAll()
		}
	}
}
