package nest_test

import (
	"testing"

	"pressworth/quote/nest"
)

// FuzzPackers reads pieces from bytes: whatever they are, an answer is valid or there is none.
func FuzzPackers(f *testing.F) {
	f.Add([]byte{20, 30, 1, 1, 4, 5, 3, 1, 7, 2, 9, 0})
	f.Add([]byte{1, 1, 0, 0, 1, 1, 1, 1})
	f.Add([]byte{255, 255, 200, 200, 255, 255, 255, 1})
	f.Add([]byte{13, 19, 0, 0, 0, 0, 0, 0, 11, 9, 200, 1})
	f.Fuzz(func(t *testing.T, b []byte) {
		if len(b) < 4 {
			return
		}
		s := nest.Sheet{W: int64(b[0]), H: int64(b[1]), Edge: int64(int8(b[2])), Gap: int64(int8(b[3]))}
		var ps []nest.Piece
		for b = b[4:]; len(b) >= 4 && len(ps) < 8; b = b[4:] {
			ps = append(ps, nest.Piece{W: int64(int8(b[0])), H: int64(int8(b[1])), Count: int(int8(b[2])), Turn: b[3]%2 == 1})
		}
		if placed, v := nest.Fit(s, ps, nest.Effort{Steps: 200}); v == nest.Fits {
			if err := nest.Check(s, ps, placed); err != nil {
				t.Errorf("Fit(%+v, %+v): %v", s, ps, err)
			}
		}
		if r, err := nest.Bins(s, ps, nest.Effort{Steps: 200}); err == nil {
			if err := nest.Check(s, ps, r.Placed); err != nil || r.Bound > r.Sheets {
				t.Errorf("Bins(%+v, %+v): %d sheets, bound %d: %v", s, ps, r.Sheets, r.Bound, err)
			}
		}
		s.H = 0
		if r, err := nest.Strip(s, ps, nest.Effort{Steps: 200}); err == nil {
			if err := nest.Check(s, ps, r.Placed); err != nil || r.Bound > r.Length {
				t.Errorf("Strip(%+v, %+v): length %d, bound %d: %v", s, ps, r.Length, r.Bound, err)
			}
		}
	})
}
