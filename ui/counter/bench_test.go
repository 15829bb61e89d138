package counter

import (
	"slices"
	"strconv"
	"testing"
	"time"

	"pressworth/ui/present"
	"pressworth/ui/present/presenttest"
)

// large types a job of 6 garment lines with 6 placements.
func large(d *desk) {
	p := d.p
	n := 0
	for _, s := range d.shop.Demo.Styles {
		if len(s.Sizes) < 4 || len(s.Colors) < 2 || n == 6 {
			continue
		}
		for _, c := range s.Colors[:2] {
			if n < 6 {
				key := p.AddGarment(s.ID, c.Name)
				p.FillSizes(key, s.Sizes[0].Size, "6/12/9/4")
				n++
			}
		}
	}
	for i, name := range []string{"Full back", "Left chest", "Sleeve", "Nape", "Full front", "Hood"} {
		p.SetInks(p.AddPlacement(name), []string{"white, gold", "2", "red", "full colour", "white", "3"}[i])
	}
	d.shop.Run()
}

// BenchmarkCounter_keystroke is one key in a size cell of a job of 6 lines and 6 placements, through presenter, engine
// and panel, without painting; it reports the 95th percentile beside the mean.
func BenchmarkCounter_keystroke(b *testing.B) {
	d := newDesk(b, -1, usual)
	large(d)
	if !d.p.Ready() {
		b.Fatal(d.p.Problems())
	}
	_, row := d.counter.form.garments.find(d.p.Draft().Garments[0].Key)
	row.cells.Focus(1)
	keystrokes(b, d, func(i int) {
		f := row.cells.Cell(1)
		f.SelectAll()
		f.TypedRune(rune('1' + i%9))
	})
}

// BenchmarkCounter_keystrokeDemo is the same for the demo's first job.
func BenchmarkCounter_keystrokeDemo(b *testing.B) {
	d := newDesk(b, 0, usual)
	_, row := d.counter.form.garments.find(d.p.Draft().Garments[0].Key)
	row.cells.Focus(1)
	keystrokes(b, d, func(i int) {
		f := row.cells.Cell(1)
		f.SelectAll()
		f.TypedRune(rune('1' + i%9))
	})
}

func keystrokes(b *testing.B, d *desk, key func(i int)) {
	took := make([]time.Duration, 0, b.N)
	b.ResetTimer()
	for i := range b.N {
		start := time.Now()
		key(i)
		took = append(took, time.Since(start))
	}
	b.StopTimer()
	slices.Sort(took)
	b.ReportMetric(float64(took[len(took)*95/100].Microseconds())/1000, "p95-ms")
	b.ReportMetric(float64(took[len(took)/2].Microseconds())/1000, "p50-ms")
}

// BenchmarkEngine_keystroke is the engine's part of the same key, so that one sees what form and panel add.
func BenchmarkEngine_keystroke(b *testing.B) {
	d := newDesk(b, -1, usual)
	large(d)
	book, _ := d.shop.Book(nil, "")
	draft := d.p.Draft()
	engine := presenttest.Engine()
	b.ResetTimer()
	for i := range b.N {
		draft.Garments[0].Sizes[1].Qty = strconv.Itoa(1 + i%9)
		job, _ := engine.Freeze(draft, book, draft.QuotedOn)
		if _, err := engine.Price(job); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkCounter_rosterOf300 is one key in the roster of a team of 300, with names and numbers on every back, through
// presenter, engine and panel.
func BenchmarkCounter_rosterOf300(b *testing.B) {
	d := newDesk(b, -1, usual)
	for _, s := range d.shop.Demo.Styles {
		if s.Number == "LS-240" {
			d.p.AddGarment(s.ID, s.Colors[0].Name)
		}
	}
	var rows [][]string
	for i := range 300 {
		rows = append(rows, []string{strconv.Itoa(i + 1), "PLAYER" + strconv.Itoa(i), []string{"S", "M", "L", "XL"}[i%4]})
	}
	d.p.PasteRoster(0, 0, rows)
	d.p.SizesFromRoster()
	d.p.AddLetters(present.LettersName)
	d.p.AddLetters(present.LettersNumber)
	if !d.p.Ready() {
		b.Fatal(d.p.Problems())
	}
	f := d.counter.form.roster.rows[0].fields[present.RosterName].Field
	d.win.Canvas().Focus(f)
	keystrokes(b, d, func(i int) {
		f.SelectAll()
		f.TypedRune(rune('A' + i%26))
	})
}
