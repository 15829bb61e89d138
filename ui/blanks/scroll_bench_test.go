package blanks

import (
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/software"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// BenchmarkBlanks_scroll scrolls 1 000 rows of a list of 250 000 by one row a frame. It reports a frame's time without its
// painting, which is what the place itself takes, and for 100 rows with the whole canvas painted anew by the toolkit's
// software painter, which paints everything there is each time.
func BenchmarkBlanks_scroll(b *testing.B) {
	for _, way := range []struct {
		name  string
		paint bool
		rows  int
	}{{"frame", false, 1000}, {"frame_painted_whole_in_software", true, 100}} {
		b.Run(way.name, func(b *testing.B) {
			p := New(stock(250_000), func() time.Time { return day })
			app := test.NewApp()
			b.Cleanup(app.Quit)
			b.Cleanup(parts.Inline())
			app.Settings().SetTheme(look.NewTheme(look.Light, 100))
			canvas := software.NewCanvas()
			canvas.SetContent(parts.NewLayered(p.Content()))
			canvas.Resize(fyne.NewSize(1280, 820))
			p.Shown()
			canvas.Capture()
			var took []float64
			for b.Loop() {
				p.table.ScrollBy(-250_000)
				for range way.rows {
					start := time.Now()
					p.table.ScrollBy(1)
					if way.paint {
						canvas.Capture()
					}
					took = append(took, float64(time.Since(start).Microseconds())/1000)
				}
			}
			slices.Sort(took)
			b.ReportMetric(took[len(took)/2], "ms-p50")
			b.ReportMetric(took[len(took)*95/100], "ms-p95")
		})
	}
}

func BenchmarkBlanks_scrollByOneRow(b *testing.B) {
	p := New(stock(250_000), func() time.Time { return day })
	onScreen(b, p)
	for i := 0; b.Loop(); i++ {
		p.table.ScrollBy(1)
	}
}
