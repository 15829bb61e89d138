package nest

import (
	"fmt"
	"testing"
)

// shopPieces draws designs like a shop's, in eighths of an inch.
func shopPieces(d *dice, designs int) []Piece {
	sizes := [][4]int64{ // from w, to w, from h, to h
		{72, 96, 48, 104}, {24, 36, 16, 36}, {12, 24, 56, 96}, {24, 32, 24, 32}, {12, 24, 8, 16}, {40, 64, 40, 64}, {32, 48, 16, 32},
	}
	var ps []Piece
	for range designs {
		z := sizes[d.below(len(sizes))]
		ps = append(ps, Piece{
			W: z[0] + int64(d.below(int(z[1]-z[0]+1))), H: z[2] + int64(d.below(int(z[3]-z[2]+1))), Turn: d.below(10) > 0,
		})
	}
	return ps
}

// nearFull sets counts so that a sheet is about full.
func nearFull(d *dice, s Sheet, fill float64) []Piece {
	for {
		ps := shopPieces(d, 2+d.below(4))
		area := func() float64 {
			a := 0.0
			for _, p := range ps {
				a += float64(p.Count) * float64((p.W+s.Gap)*(p.H+s.Gap))
			}
			return a / float64((s.W-2*s.Edge+s.Gap)*(s.H-2*s.Edge+s.Gap))
		}
		for i := range ps {
			ps[i].Count = 1
		}
		for tries := 0; tries < 200; tries++ {
			i := d.below(len(ps))
			ps[i].Count++
			if area() > fill {
				ps[i].Count--
			}
		}
		n := 0
		for _, p := range ps {
			n += p.Count
		}
		if n > 10 && n <= 60 && area() > fill-0.05 && area() <= fill && checkPieces(s, ps) == nil {
			return ps
		}
	}
}

// Questions like those of one keystroke: does this many of a few designs fit on one sheet?
func BenchmarkFit_shop(b *testing.B) {
	for _, fill := range []float64{0.75, 0.85, 0.95} {
		b.Run(fmt.Sprintf("%.0f %% full", 100*fill), func(b *testing.B) {
			s, d := Sheet{W: 104, H: 152, Edge: 2, Gap: 2}, dice(3)
			var sets [][]Piece
			for range 100 {
				sets = append(sets, nearFull(&d, s, fill))
			}
			n, proven := 0, 0
			for b.Loop() {
				_, v := Fit(s, sets[n%len(sets)], Effort{})
				if n++; v != Unknown {
					proven++
				}
			}
			b.ReportMetric(100*float64(proven)/float64(n), "proven%")
		})
	}
}
