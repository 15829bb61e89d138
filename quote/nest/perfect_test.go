package nest

import (
	"fmt"
	"testing"
)

// cutAtRandom cuts a sheet into n pieces by straight cuts.
func cutAtRandom(d *dice, w, h int64, n int, turn bool) []Piece {
	type r struct{ w, h int64 }
	rs := []r{{w, h}}
	for len(rs) < n {
		i := d.below(len(rs))
		c := rs[i]
		if d.below(2) == 0 {
			c.w, c.h = c.h, c.w
			if c.w < 2 {
				continue
			}
			x := 1 + int64(d.below(int(c.w-1)))
			rs[i] = r{c.h, x}
			rs = append(rs, r{c.h, c.w - x})
			continue
		}
		if c.w < 2 {
			continue
		}
		x := 1 + int64(d.below(int(c.w-1)))
		rs[i] = r{x, c.h}
		rs = append(rs, r{c.w - x, c.h})
	}
	var ps []Piece
	for _, c := range rs {
		if turn && d.below(2) == 0 {
			c.w, c.h = c.h, c.w
		}
		ps = append(ps, Piece{W: c.w, H: c.h, Turn: turn, Count: 1})
	}
	return ps
}

// cutLargest cuts the largest piece across its longer side, over and over.
func cutLargest(d *dice, w, h int64, n int, turn bool) []Piece {
	rs := [][2]int64{{w, h}}
	for len(rs) < n {
		i := 0
		for j := range rs {
			if rs[j][0]*rs[j][1] > rs[i][0]*rs[i][1] {
				i = j
			}
		}
		c := rs[i]
		a := 0
		if c[1] > c[0] {
			a = 1
		}
		lo := max(c[a]/4, 1)
		x := lo + int64(d.below(int(c[a]-2*lo+1)))
		o := c
		o[a] -= x
		c[a] = x
		rs[i] = c
		rs = append(rs, o)
	}
	var ps []Piece
	for _, c := range rs {
		ps = append(ps, Piece{W: c[0], H: c[1], Turn: turn, Count: 1})
	}
	return ps
}

// perfectSteps is the effort for one perfect packing of 20 pieces: under two seconds on two cores.
const perfectSteps = 2_000_000

// perfectShare is how many of n perfect packings, cut from a sheet, are found.
func perfectShare(tb testing.TB, cut func(d *dice, w, h int64, n int, turn bool) []Piece, s Sheet, n int) int {
	d := dice(7)
	found := 0
	for range n {
		ps := cut(&d, s.W, s.H, 20, true)
		placed, v := Fit(s, ps, Effort{Steps: perfectSteps})
		switch v {
		case Fits:
			found++
			if err := Check(s, ps, placed); err != nil {
				tb.Errorf("Fit(%+v, %+v): %v", s, ps, err)
			}
		case CannotFit:
			tb.Errorf("Fit(%+v, %+v): said to be impossible, but cut from that sheet", s, ps)
		}
	}
	return found
}

func TestFit_findsMostPerfectPackings(t *testing.T) {
	const n = 10
	for _, s := range []Sheet{{W: 20, H: 20}, {W: 26, H: 38}, {W: 1300, H: 1900}} {
		if found := perfectShare(t, cutAtRandom, s, n); found < n*8/10 {
			t.Errorf("%d × %d: %d of %d perfect packings found, want 80 %%", s.W, s.H, found, n)
		}
	}
}

func BenchmarkFit_perfectPackings(b *testing.B) {
	for name, cut := range map[string]func(*dice, int64, int64, int, bool) []Piece{"at random": cutAtRandom, "largest first": cutLargest} {
		for _, s := range []Sheet{{W: 20, H: 20}, {W: 26, H: 38}, {W: 104, H: 152}, {W: 1300, H: 1900}} {
			b.Run(fmt.Sprintf("%s %dx%d", name, s.W, s.H), func(b *testing.B) {
				const n = 40
				found := 0
				for b.Loop() {
					found = perfectShare(b, cut, s, n)
				}
				b.ReportMetric(100*float64(found)/n, "found%")
			})
		}
	}
}
