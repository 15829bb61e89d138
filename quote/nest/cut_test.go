package nest

import (
	"fmt"
	"testing"
)

// pinwheels cuts a sheet into at least n pieces, now straight across, now into five that turn round a middle one, which
// no straight cut makes.
func pinwheels(d *dice, w, h int64, n int, turn bool) []Piece {
	rs := [][2]int64{{w, h}}
	for len(rs) < n {
		i := 0
		for j := range rs {
			if rs[j][0]*rs[j][1] > rs[i][0]*rs[i][1] {
				i = j
			}
		}
		c := rs[i]
		if c[0] < 6 || c[1] < 6 || d.below(2) == 0 {
			a := 0
			if c[1] > c[0] {
				a = 1
			}
			x := c[a]/4 + int64(d.below(int(c[a]/2)))
			o := c
			o[a], c[a] = c[a]-x, x
			rs[i] = c
			rs = append(rs, o)
			continue
		}
		x1, y1 := 1+int64(d.below(int(c[0]/2-1))), 1+int64(d.below(int(c[1]/2-1)))
		x2, y2 := c[0]/2+1+int64(d.below(int(c[0]-c[0]/2-1))), c[1]/2+1+int64(d.below(int(c[1]-c[1]/2-1)))
		rs[i] = [2]int64{x2, y1}
		rs = append(rs, [2]int64{c[0] - x2, y2}, [2]int64{c[0] - x1, c[1] - y2}, [2]int64{x1, c[1] - y1}, [2]int64{x2 - x1, y2 - y1})
	}
	ps := make([]Piece, 0, len(rs))
	for _, c := range rs {
		if turn && d.below(2) == 0 {
			c[0], c[1] = c[1], c[0]
		}
		ps = append(ps, Piece{W: c[0], H: c[1], Turn: turn, Count: 1})
	}
	return ps
}

// cutCase is a kind of packing without waste, of a strip as long as it is cut or of several sheets.
type cutCase struct {
	name   string
	cut    func(d *dice, w, h int64, n int, turn bool) []Piece
	n      int
	turn   bool
	sheets int // 0: a strip
}

func cutCases() (cs []cutCase) {
	cuts := []struct {
		name string
		cut  func(d *dice, w, h int64, n int, turn bool) []Piece
	}{{"at random", cutAtRandom}, {"largest first", cutLargest}, {"pinwheels", pinwheels}}
	for _, c := range cuts {
		for _, n := range []int{16, 25, 50, 100, 200} {
			for _, turn := range []bool{true, false} {
				for _, sheets := range []int{0, 4} {
					cs = append(cs, cutCase{c.name, c.cut, n, turn, sheets})
				}
			}
		}
	}
	return cs
}

// gap is how much more than a perfect packing some cut pieces take, in percent.
func (c cutCase) gap(tb testing.TB, d *dice, steps int) float64 {
	s := Sheet{W: 100, H: 120}
	var ps []Piece
	for range max(1, c.sheets) {
		ps = append(ps, c.cut(d, s.W, s.H, c.n/max(1, c.sheets), c.turn)...)
	}
	e := Effort{Steps: steps}
	if c.sheets > 0 {
		r, err := Bins(s, ps, e)
		if err == nil {
			err = Check(s, ps, r.Placed)
		}
		if err != nil || r.Sheets < c.sheets || r.Bound > c.sheets {
			tb.Errorf("%+v: %d sheets, bound %d, cut from %d: %v", ps, r.Sheets, r.Bound, c.sheets, err)
		}
		return 100 * float64(r.Sheets-c.sheets) / float64(c.sheets)
	}
	r, err := Strip(s, ps, e)
	if err == nil {
		err = Check(Sheet{W: s.W}, ps, r.Placed)
	}
	if err != nil || r.Length < s.H || r.Bound > s.H {
		tb.Errorf("%+v: length %d, bound %d, cut from %d: %v", ps, r.Length, r.Bound, s.H, err)
	}
	return 100 * float64(r.Length-s.H) / float64(s.H)
}

// BenchmarkPack_cutSheets packs what was cut from sheets without waste, in the effort of two seconds of a pack file. With
// -short only few pieces.
func BenchmarkPack_cutSheets(b *testing.B) {
	for _, c := range cutCases() {
		if testing.Short() && c.n > 25 {
			continue
		}
		b.Run(fmt.Sprintf("%s/%d pieces/turn %v/sheets %d", c.name, c.n, c.turn, c.sheets), func(b *testing.B) {
			const each = 3
			var sum, worst float64
			for b.Loop() {
				d := dice(11)
				sum, worst = 0, 0
				for range each {
					g := c.gap(b, &d, cutSteps)
					sum, worst = sum+g, max(worst, g)
				}
			}
			b.ReportMetric(sum/each, "gap%")
			b.ReportMetric(worst, "worst%")
		})
	}
}

// cutSteps is the effort of two seconds of a pack file.
const cutSteps = 5_000_000
