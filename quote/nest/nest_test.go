package nest_test

import (
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote/nest"
)

// shopSet draws pieces like a shop's: few designs, many copies.
func shopSet(t *rapid.T) (nest.Sheet, []nest.Piece) {
	s := nest.Sheet{
		W:    rapid.Int64Range(20, 60).Draw(t, "sheet width"),
		H:    rapid.Int64Range(20, 60).Draw(t, "sheet height"),
		Edge: rapid.Int64Range(0, 3).Draw(t, "edge"),
		Gap:  rapid.Int64Range(0, 3).Draw(t, "gap"),
	}
	n := rapid.IntRange(1, 5).Draw(t, "designs")
	ps := make([]nest.Piece, n)
	for i := range ps {
		ps[i] = nest.Piece{
			W:     rapid.Int64Range(1, 14).Draw(t, "w"),
			H:     rapid.Int64Range(1, 14).Draw(t, "h"),
			Turn:  rapid.Bool().Draw(t, "turn"),
			Count: rapid.IntRange(0, 12).Draw(t, "count"),
		}
	}
	return s, ps
}

func TestLayouts_passTheCheck(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, ps := shopSet(t)
		e := nest.Effort{Steps: rapid.SampledFrom([]int{0, 2000}).Draw(t, "steps")}
		if placed, v := nest.Fit(s, ps, e); v == nest.Fits {
			if err := nest.Check(s, ps, placed); err != nil {
				t.Fatalf("Fit(%+v, %+v): %v", s, ps, err)
			}
		}
		if placed, ok := nest.Straight(s, ps); ok {
			if err := nest.Check(s, ps, placed); err != nil {
				t.Fatalf("Straight(%+v, %+v): %v", s, ps, err)
			}
		}
		bins, err := nest.Bins(s, ps, e)
		if err != nil {
			t.Fatalf("Bins(%+v, %+v): %v", s, ps, err)
		}
		if err := nest.Check(s, ps, bins.Placed); err != nil || bins.Bound > bins.Sheets {
			t.Fatalf("Bins(%+v, %+v): %d sheets, bound %d, %v", s, ps, bins.Sheets, bins.Bound, err)
		}
		open := s
		open.H = 0
		strip, err := nest.Strip(open, ps, e)
		if err != nil {
			t.Fatalf("Strip(%+v, %+v): %v", open, ps, err)
		}
		if err := nest.Check(open, ps, strip.Placed); err != nil || strip.Bound > strip.Length {
			t.Fatalf("Strip(%+v, %+v): length %d, bound %d, %v", open, ps, strip.Length, strip.Bound, err)
		}
	})
}
