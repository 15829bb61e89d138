package nest_test

import (
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote/nest"
)

func TestFreeRectangle_isFreeAndTheLargest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := nest.Sheet{
			W: rapid.Int64Range(6, 16).Draw(t, "w"), H: rapid.Int64Range(6, 16).Draw(t, "h"),
			Edge: rapid.Int64Range(0, 1).Draw(t, "edge"), Gap: rapid.Int64Range(0, 2).Draw(t, "gap"),
		}
		ps := []nest.Piece{{W: rapid.Int64Range(1, 4).Draw(t, "piece w"), H: rapid.Int64Range(1, 4).Draw(t, "piece h"), Turn: true, Count: rapid.IntRange(0, 6).Draw(t, "count")}}
		placed, v := nest.Fit(s, ps, nest.Effort{})
		if v != nest.Fits {
			return
		}
		x, y, w, h, ok := nest.FreeRectangle(s, ps, placed)
		area := int64(0)
		if ok {
			area = w * h
			if !goesIn(s, ps, placed, x, y, w, h) {
				t.Fatalf("FreeRectangle(%+v, %+v, %+v) = %d, %d, %d x %d: not free", s, ps, placed, x, y, w, h)
			}
		}
		for x := s.Edge; x < s.W; x++ { // every other rectangle
			for y := s.Edge; y < s.H; y++ {
				for w := int64(1); x+w <= s.W-s.Edge; w++ {
					for h := area/w + 1; y+h <= s.H-s.Edge; h++ {
						if goesIn(s, ps, placed, x, y, w, h) {
							t.Fatalf("FreeRectangle(%+v, %+v, %+v): area %d, but %d x %d at %d, %d is free", s, ps, placed, area, w, h, x, y)
						}
					}
				}
			}
		}
	})
}

// goesIn asks the checker whether one more piece may lie there.
func goesIn(s nest.Sheet, ps []nest.Piece, placed []nest.Placed, x, y, w, h int64) bool {
	more := append(append([]nest.Piece(nil), ps...), nest.Piece{W: w, H: h, Count: 1})
	return nest.Check(s, more, append(append([]nest.Placed(nil), placed...), nest.Placed{Piece: len(ps), X: x, Y: y})) == nil
}

func TestFreeRectangle_fullSheetHasNone(t *testing.T) {
	s, ps := nest.Sheet{W: 10, H: 10}, []nest.Piece{{W: 10, H: 10, Count: 1}}
	if x, y, w, h, ok := nest.FreeRectangle(s, ps, []nest.Placed{{}}); ok {
		t.Errorf("got %d x %d at %d, %d on a full sheet", w, h, x, y)
	}
}
