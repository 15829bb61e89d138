package nest

import (
	"testing"

	"pgregory.net/rapid"
)

// oracle fills a small sheet cell by cell, every cell with the corner of a piece
// or with nothing: slow, and without a thought in common with the packers.
type oracle struct {
	w, h  int
	taken []bool
	ps    []Piece
	left  []int
}

func newOracle(s Sheet, ps []Piece) *oracle {
	o := &oracle{w: int(s.W), h: int(s.H), taken: make([]bool, s.W*s.H), ps: ps}
	for _, p := range ps {
		o.left = append(o.left, p.Count)
	}
	return o
}

func (o *oracle) fits(cell int) bool {
	done := true
	for _, n := range o.left {
		done = done && n == 0
	}
	if done || cell == len(o.taken) {
		return done
	}
	if !o.taken[cell] {
		for i, p := range o.ps {
			if o.left[i] == 0 {
				continue
			}
			if o.lay(cell, i, int(p.W), int(p.H)) || p.Turn && p.W != p.H && o.lay(cell, i, int(p.H), int(p.W)) {
				return true
			}
		}
	}
	return o.fits(cell + 1)
}

func (o *oracle) lay(cell, i, w, h int) bool {
	x, y := cell%o.w, cell/o.w
	if x+w > o.w || y+h > o.h || !o.mark(x, y, w, h, true) {
		return false
	}
	o.left[i]--
	ok := o.fits(cell + 1)
	o.left[i]++
	o.mark(x, y, w, h, false)
	return ok
}

// mark takes the cells of a piece, all or none, or gives them back.
func (o *oracle) mark(x, y, w, h int, take bool) bool {
	for j := y; j < y+h && take; j++ {
		for i := x; i < x+w; i++ {
			if o.taken[j*o.w+i] {
				return false
			}
		}
	}
	for j := y; j < y+h; j++ {
		for i := x; i < x+w; i++ {
			o.taken[j*o.w+i] = take
		}
	}
	return true
}

func TestFit_agreesWithTryingEveryCell(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Sheet{W: rapid.Int64Range(3, 6).Draw(t, "w"), H: rapid.Int64Range(3, 6).Draw(t, "h")}
		n := rapid.IntRange(2, 4).Draw(t, "designs")
		ps := make([]Piece, n)
		for i := range ps {
			ps[i] = Piece{
				W: rapid.Int64Range(1, 4).Draw(t, "piece w"), H: rapid.Int64Range(1, 4).Draw(t, "piece h"),
				Turn: rapid.Bool().Draw(t, "turn"), Count: rapid.IntRange(1, 2).Draw(t, "count"),
			}
		}
		want := CannotFit
		if newOracle(s, ps).fits(0) {
			want = Fits
		}
		if _, got := Fit(s, ps, Effort{}); got != want {
			t.Fatalf("Fit(%+v, %+v) = %v, want %v", s, ps, got, want)
		}
		// the exact search alone, without the bounds and searches before it
		if checkPieces(s, ps) == nil {
			task := newTask(s, ps)
			if _, got := newStair(task, task.h).solve(); got != want {
				t.Fatalf("stair(%+v, %+v) = %v, want %v", s, ps, got, want)
			}
			if b := task.sheetsBound(task.w, task.h, true); want == Fits && b > 1 {
				t.Fatalf("sheetsBound(%+v, %+v) = %d, but one sheet is enough", s, ps, b)
			}
		}
	})
}

// A sheet cut to pieces holds them, so no bound may say otherwise.
func TestBounds_neverExceedAKnownOptimum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := dice(rapid.Uint64().Draw(t, "seed"))
		s := Sheet{W: rapid.Int64Range(10, 200).Draw(t, "w"), H: rapid.Int64Range(10, 200).Draw(t, "h")}
		n := rapid.IntRange(1, 30).Draw(t, "pieces")
		cut := cutAtRandom
		if rapid.Bool().Draw(t, "largest first") {
			cut = cutLargest
		}
		ps := cut(&d, s.W, s.H, n, rapid.Bool().Draw(t, "turn"))
		b, err := Bins(s, ps, Effort{})
		if err != nil || b.Bound != 1 || b.Sheets < 1 {
			t.Fatalf("Bins(%+v, %+v): bound %d, %d sheets, %v; one sheet was cut", s, ps, b.Bound, b.Sheets, err)
		}
		r, err := Strip(Sheet{W: s.W}, ps, Effort{})
		if err != nil || r.Bound > s.H || r.Length < s.H {
			t.Fatalf("Strip(%+v): bound %d, length %d, %v; the optimum is %d", ps, r.Bound, r.Length, err, s.H)
		}
	})
}
