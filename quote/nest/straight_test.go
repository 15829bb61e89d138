package nest

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// rowsOf says whether pieces form rows: sorted by Y, every piece begins where its
// row does or beyond the row's farthest border.
func rowsOf(s Sheet, ps []Piece, placed []Placed, columns bool) bool {
	type span struct{ near, far int64 }
	var spans []span
	for _, p := range placed {
		w, h := ps[p.Piece].W, ps[p.Piece].H
		if p.Turned {
			w, h = h, w
		}
		if columns {
			spans = append(spans, span{p.X, p.X + w})
		} else {
			spans = append(spans, span{p.Y, p.Y + h})
		}
	}
	slices.SortFunc(spans, func(a, b span) int { return int(a.near - b.near) })
	for i := 1; i < len(spans); i++ {
		if spans[i].near != spans[i-1].near && spans[i].near < spans[i-1].far+s.Gap {
			return false
		}
		if spans[i].near == spans[i-1].near {
			spans[i].far = max(spans[i].far, spans[i-1].far)
		}
	}
	return true
}

func TestStraight_isRowsOrColumnsOneWayRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := dice(rapid.Uint64().Draw(t, "seed"))
		s := Sheet{W: 104, H: 152, Edge: 2, Gap: 2}
		ps := nearFull(&d, s, 0.7)
		placed, ok := Straight(s, ps)
		if !ok {
			return
		}
		if err := Check(s, ps, placed); err != nil {
			t.Fatalf("Straight(%+v, %+v): %v", s, ps, err)
		}
		way := map[int]bool{}
		for _, p := range placed {
			if was, seen := way[p.Piece]; seen && was != p.Turned {
				t.Fatalf("Straight(%+v, %+v): piece %d lies both ways", s, ps, p.Piece)
			}
			way[p.Piece] = p.Turned
		}
		if !rowsOf(s, ps, placed, false) && !rowsOf(s, ps, placed, true) {
			t.Fatalf("Straight(%+v, %+v): neither rows nor columns: %+v", s, ps, placed)
		}
	})
}

func TestStraight_findsWhatRowsHold(t *testing.T) {
	for name, c := range map[string]struct {
		s  Sheet
		ps []Piece
	}{
		"one design turned":             {Sheet{W: 10, H: 9}, []Piece{{W: 3, H: 5, Turn: true, Count: 6}}},
		"columns only":                  {Sheet{W: 7, H: 10}, []Piece{{W: 3, H: 5, Count: 2}, {W: 4, H: 10, Count: 1}}},
		"two heights in rows of a kind": {Sheet{W: 12, H: 7}, []Piece{{W: 4, H: 3, Count: 3}, {W: 6, H: 4, Count: 2}}},
		"a row of two designs":          {Sheet{W: 12, H: 4}, []Piece{{W: 4, H: 4, Count: 2}, {W: 2, H: 3, Count: 2}}},
		"an open strip":                 {Sheet{W: 10}, []Piece{{W: 4, H: 4, Count: 9}}},
	} {
		t.Run(name, func(t *testing.T) {
			placed, ok := Straight(c.s, c.ps)
			if err := Check(c.s, c.ps, placed); !ok || err != nil {
				t.Errorf("Straight(%+v, %+v): %v, %v", c.s, c.ps, ok, err)
			}
		})
	}
}
