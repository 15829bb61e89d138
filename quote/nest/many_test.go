package nest

import "testing"

// A hundred thousand pieces, all different or all in one row of a very wide
// sheet, are answered and checked like any others.
func TestPackers_aHundredThousandDifferentPieces(t *testing.T) {
	d := dice(1)
	draw := func(designs, each, side int) (ps []Piece) {
		for range designs {
			ps = append(ps, Piece{W: 1 + int64(d.below(side)), H: 1 + int64(d.below(side)), Turn: d.below(2) == 0, Count: each})
		}
		return ps
	}
	for name, c := range map[string]struct {
		s  Sheet
		ps []Piece
	}{
		"all different":     {Sheet{W: 13000, H: 13000, Gap: 1, Edge: 1}, draw(100_000, 1, 1000)},
		"a very wide sheet": {Sheet{W: 1 << 20, H: 1 << 20, Gap: 1}, draw(5, 20_000, 10)},
		"very fine lengths": {Sheet{W: MaxLength, H: MaxLength}, draw(200, 5, MaxLength/2)},
	} {
		t.Run(name, func(t *testing.T) {
			e := Effort{Steps: 1000}
			b, err := Bins(c.s, c.ps, e)
			if err == nil {
				err = Check(c.s, c.ps, b.Placed)
			}
			if err != nil || b.Bound > b.Sheets {
				t.Errorf("Bins: %d sheets, bound %d, %v", b.Sheets, b.Bound, err)
			}
			if placed, v := Fit(c.s, c.ps, e); v == Fits && Check(c.s, c.ps, placed) != nil || v == CannotFit && b.Sheets == 1 {
				t.Errorf("Fit: %v, of %d sheets", v, b.Sheets)
			}
			c.s.H = 0
			r, err := Strip(c.s, c.ps, e)
			if err == nil {
				err = Check(c.s, c.ps, r.Placed)
			}
			if err != nil || r.Bound > r.Length {
				t.Errorf("Strip: length %d, bound %d, %v", r.Length, r.Bound, err)
			}
			if placed, ok := Straight(c.s, c.ps); ok && Check(c.s, c.ps, placed) != nil {
				t.Error("Straight: breaks the rules")
			}
		})
	}
}
