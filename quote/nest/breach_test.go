package nest_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote/nest"
)

func TestCheck_catchesEachBreach(t *testing.T) {
	s := nest.Sheet{W: 20, H: 20, Edge: 1, Gap: 2}
	ps := []nest.Piece{{W: 4, H: 6, Turn: true, Count: 2}, {W: 5, H: 3, Count: 1}}
	good := []nest.Placed{{Piece: 0, X: 1, Y: 1}, {Piece: 0, X: 7, Y: 1}, {Piece: 1, X: 1, Y: 9}}
	if err := nest.Check(s, ps, good); err != nil {
		t.Fatalf("a good layout: %v", err)
	}
	for name, spoil := range map[string]func([]nest.Placed) []nest.Placed{
		"an overlap":               func(p []nest.Placed) []nest.Placed { p[1].X = 3; return p },
		"a gap that is too small":  func(p []nest.Placed) []nest.Placed { p[1].X = 6; return p },
		"a piece over the edge":    func(p []nest.Placed) []nest.Placed { p[0].X = 0; return p },
		"a piece out of the sheet": func(p []nest.Placed) []nest.Placed { p[2].Y = 18; return p },
		"a missing piece":          func(p []nest.Placed) []nest.Placed { return p[:2] },
		"a piece too many":         func(p []nest.Placed) []nest.Placed { return append(p, nest.Placed{Piece: 1, X: 10, Y: 14}) },
		"a turned piece that may not be": func(p []nest.Placed) []nest.Placed {
			p[2].Turned = true
			return p
		},
		"an unknown piece": func(p []nest.Placed) []nest.Placed { p[0].Piece = 7; return p },
	} {
		t.Run(name, func(t *testing.T) {
			if err := nest.Check(s, ps, spoil(append([]nest.Placed(nil), good...))); err == nil {
				t.Error("got no error")
			}
		})
	}
}

func TestFit_tenPiecesAreAlwaysDecided(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, ps := shopSet(t)
		n := 0
		for i := range ps {
			ps[i].Count = min(ps[i].Count, 10-n)
			n += ps[i].Count
		}
		if _, v := nest.Fit(s, ps, nest.Effort{}); v == nest.Unknown && valid(s, ps) {
			t.Fatalf("Fit(%+v, %+v) does not know", s, ps)
		}
	})
}

// valid says whether every piece fits on an empty sheet.
func valid(s nest.Sheet, ps []nest.Piece) bool {
	w, h := s.W-2*s.Edge, s.H-2*s.Edge
	for _, p := range ps {
		if p.Count > 0 && !(p.W <= w && p.H <= h || p.Turn && p.H <= w && p.W <= h) {
			return false
		}
	}
	return w > 0 && h > 0
}

func TestPackers_badInputIsAnError(t *testing.T) {
	sheet := nest.Sheet{W: 10, H: 10}
	for name, c := range map[string]struct {
		s  nest.Sheet
		ps []nest.Piece
	}{
		"a piece larger than the sheet": {sheet, []nest.Piece{{W: 11, H: 11, Turn: true, Count: 1}}},
		"a size of zero":                {sheet, []nest.Piece{{W: 0, H: 3, Count: 1}}},
		"a negative size":               {sheet, []nest.Piece{{W: 3, H: -3, Count: 1}}},
		"a negative count":              {sheet, []nest.Piece{{W: 3, H: 3, Count: -1}}},
		"edges wider than the sheet":    {nest.Sheet{W: 10, H: 10, Edge: 6}, []nest.Piece{{W: 1, H: 1, Count: 1}}},
		"a negative gap":                {nest.Sheet{W: 10, H: 10, Gap: -1}, []nest.Piece{{W: 1, H: 1, Count: 1}}},
		"too many pieces":               {sheet, []nest.Piece{{W: 1, H: 1, Count: 1 << 40}}},
		"lengths that overflow":         {nest.Sheet{W: 1 << 62, H: 1 << 62, Gap: 1 << 62}, []nest.Piece{{W: 1 << 62, H: 1 << 62, Count: 2}}},
	} {
		t.Run(name, func(t *testing.T) {
			if _, err := nest.Bins(c.s, c.ps, nest.Effort{Steps: 100}); err == nil {
				t.Error("Bins: got no error")
			}
			if _, v := nest.Fit(c.s, c.ps, nest.Effort{Steps: 100}); v == nest.Fits {
				t.Error("Fit: said to fit")
			}
			c.s.H = 0
			if _, err := nest.Strip(c.s, c.ps, nest.Effort{Steps: 100}); err == nil && !strings.Contains(name, "larger") {
				t.Error("Strip: got no error")
			}
		})
	}
}

func TestPackers_aHundredThousandPieces(t *testing.T) {
	ps := []nest.Piece{{W: 3, H: 2, Turn: true, Count: 60_000}, {W: 5, H: 1, Count: 39_999}, {W: 7, H: 7, Count: 1}}
	s := nest.Sheet{W: 100, H: 100, Edge: 1, Gap: 1}
	r, err := nest.Bins(s, ps, nest.Effort{Steps: 1000})
	if err != nil {
		t.Fatal(err)
	}
	if err := nest.Check(s, ps, r.Placed); err != nil || r.Bound > r.Sheets {
		t.Errorf("%d sheets, bound %d: %v", r.Sheets, r.Bound, err)
	}
}
