package nest

import (
	"cmp"
	"slices"
)

// A task is a problem with gap and edge worked into it: every piece is grown by
// the gap, and so is the region inside the edges, so that grown pieces may
// touch. Alike pieces are one kind, and lengths are divided by what divides
// every side of every piece: a layout pushed to the corner has no other
// coordinates.
type task struct {
	sheet Sheet
	unit  int64 // task lengths times unit are lengths of the caller
	w, h  int64 // region; h is far beyond any need on a strip
	kinds []kind
	n     int // pieces in all
}

// kind is a size with all its copies.
type kind struct {
	w, h   int64
	turn   bool // both ways fit and differ
	count  int
	member []member
}

// member says which copies of a kind belong to which piece of the caller.
type member struct {
	piece, count int
	across       bool // the piece's W is the kind's h
}

// spot is a piece of a kind set down in the region.
type spot struct {
	kind   int
	x, y   int64
	turned bool
}

// newTask takes input that was checked.
func newTask(s Sheet, ps []Piece) *task {
	t := &task{sheet: s, unit: 1, w: s.W - 2*s.Edge + s.Gap}
	index := map[kindKey]int{}
	for i, p := range ps {
		if p.Count > 0 {
			t.add(index, i, p)
		}
	}
	t.divide()
	if s.H > 0 {
		t.h = (s.H - 2*s.Edge + s.Gap) / t.unit
	} else {
		for _, k := range t.kinds {
			t.h += max(k.w, k.h) * int64(k.count)
		}
	}
	t.w /= t.unit
	slices.SortStableFunc(t.kinds, kind.compare)
	return t
}

type kindKey struct {
	w, h int64
	turn bool
}

func (t *task) add(index map[kindKey]int, i int, p Piece) {
	s, g := t.sheet, t.sheet.Gap
	m := member{piece: i, count: p.Count}
	key := kindKey{p.W + g, p.H + g, p.Turn && p.W != p.H}
	if key.turn && !fitsAlone(s, p.H, p.W) {
		key.turn = false
	} else if key.turn && !fitsAlone(s, p.W, p.H) {
		key = kindKey{key.h, key.w, false}
		m.across = true
	} else if key.turn && key.w < key.h {
		key.w, key.h, m.across = key.h, key.w, true
	}
	at, ok := index[key]
	if !ok {
		at = len(t.kinds)
		index[key] = at
		t.kinds = append(t.kinds, kind{w: key.w, h: key.h, turn: key.turn})
	}
	k := &t.kinds[at]
	k.count += p.Count
	k.member = append(k.member, m)
	t.n += p.Count
}

// divide brings lengths down to the unit all sides share.
func (t *task) divide() {
	var d int64
	for _, k := range t.kinds {
		d = gcd(gcd(d, k.w), k.h)
	}
	if d <= 1 {
		return
	}
	t.unit = d
	for i := range t.kinds {
		t.kinds[i].w /= d
		t.kinds[i].h /= d
	}
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// compare orders kinds from large to small.
func (k kind) compare(o kind) int {
	if a, b := k.area(), o.area(); a != b {
		if b.less(a) {
			return -1
		}
		return 1
	}
	return cmp.Or(cmp.Compare(o.w, k.w), cmp.Compare(o.h, k.h))
}

// size is the kind's width and height as it lies.
func (k kind) size(turned bool) (w, h int64) {
	if turned {
		return k.h, k.w
	}
	return k.w, k.h
}

// counts lists how many of each kind there are.
func (t *task) counts() []int {
	c := make([]int, len(t.kinds))
	for i, k := range t.kinds {
		c[i] = k.count
	}
	return c
}

// placed turns spots, one list a sheet, into the caller's terms.
func (t *task) placed(sheets ...[]spot) []Placed {
	out := make([]Placed, 0, t.n)
	at := make([]int, len(t.kinds))   // member in turn
	used := make([]int, len(t.kinds)) // copies taken of it
	for sheet, spots := range sheets {
		for _, s := range spots {
			k := &t.kinds[s.kind]
			for used[s.kind] == k.member[at[s.kind]].count {
				at[s.kind]++
				used[s.kind] = 0
			}
			used[s.kind]++
			m := k.member[at[s.kind]]
			out = append(out, Placed{
				Piece: m.piece, Sheet: sheet, Turned: s.turned != m.across,
				X: s.x*t.unit + t.sheet.Edge, Y: s.y*t.unit + t.sheet.Edge,
			})
		}
	}
	return out
}

// length is how far spots reach along the strip.
func (t *task) length(spots []spot) int64 {
	var l int64
	for _, s := range spots {
		_, h := t.kinds[s.kind].size(s.turned)
		l = max(l, s.y+h)
	}
	return l
}

// outer turns a length of the task into one of the strip, edges included.
func (t *task) outer(l int64) int64 {
	if l == 0 {
		return 0
	}
	return l*t.unit - t.sheet.Gap + 2*t.sheet.Edge
}
