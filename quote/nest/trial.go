package nest

import "math"

// A trial lays pieces sheet by sheet, always in the lowest gap. For each gap it
// takes the piece that suits it best; between equals the sequence decides, so
// that a better sequence makes a better layout (after Burke, Kendall & Whitwell
// 2004 and Leung, Zhang & Sim 2011). It keeps its memory from layout to layout.
type trial struct {
	t     *task
	fits  *reach
	sky   skyline
	first []int32 // where a kind's places begin
	place []int32 // places in the sequence, kind by kind, rising
	next  []int32 // a kind's next copy, as an index into place
	live  []lying // ways to lie of what is left
	spots []spot
	ends  []int   // how many spots there are when a sheet is full
	lost  float64 // area given up
	rule  rule
	slack int64 // how far off still counts as near
	work  int   // candidates looked at
}

// lying is one way a kind may lie.
type lying struct {
	w, h   int64
	place  int32 // of its next copy
	kind   int32
	turned bool
}

func newTrial(t *task) *trial {
	r := &trial{
		t: t, fits: newReach(t.kinds, alongX, t.w),
		first: make([]int32, len(t.kinds)+1), next: make([]int32, len(t.kinds)),
		place: make([]int32, t.n), spots: make([]spot, 0, t.n),
		live: make([]lying, 0, 2*len(t.kinds)), slack: t.w / nearBy,
	}
	for i, k := range t.kinds {
		r.first[i+1] = r.first[i] + int32(k.count)
	}
	return r
}

// rank notes the places of every kind's copies in the sequence.
func (r *trial) rank(seq []int32) {
	copy(r.next, r.first)
	for i, e := range seq {
		k := e >> 1
		r.place[r.next[k]] = int32(i)<<1 | e&1
		r.next[k]++
	}
	copy(r.next, r.first)
	r.live = r.live[:0]
	for i, k := range r.t.kinds {
		if k.count == 0 {
			continue
		}
		at := r.place[r.first[i]]
		r.live = append(r.live, lying{k.w, k.h, at, int32(i), false})
		if k.turn {
			r.live = append(r.live, lying{k.h, k.w, at ^ 1, int32(i), true})
		}
	}
}

// run lays the sequence on a number of sheets of height h, and returns how many
// pieces lie. It gives up as soon as more area is lost than it may.
func (r *trial) run(seq []int32, h int64, sheets int, may float64) int {
	r.rank(seq)
	r.spots, r.ends, r.lost = r.spots[:0], r.ends[:0], 0
	for len(r.ends) < sheets && len(r.live) > 0 && r.sheet(h, may) {
		r.ends = append(r.ends, len(r.spots))
	}
	return len(r.spots)
}

// sheet fills one sheet; false says that too much was lost.
func (r *trial) sheet(h int64, may float64) bool {
	r.sky.reset(r.t.w)
	for len(r.live) > 0 {
		i := r.sky.lowest()
		if at := r.choose(i, h); at.index >= 0 {
			r.lay(i, at)
			continue
		}
		gap := r.sky.segs[i]
		up := r.sky.lift(i)
		if up == 0 {
			r.lost += float64(gap.w) * float64(h-gap.y)
			return r.lost <= may
		}
		if r.lost += float64(gap.w) * float64(up); r.lost > may {
			return false
		}
	}
	return true
}

// pick is a way to lie, by its index in live, and the end of the gap it goes to.
type pick struct {
	index int
	right bool
}

func (r *trial) lay(i int, p pick) {
	l := r.live[p.index]
	y := r.sky.segs[i].y
	x := r.sky.put(i, l.w, l.h, p.right)
	r.spots = append(r.spots, spot{int(l.kind), x, y, l.turned})
	k := l.kind
	r.next[k]++
	from := p.index
	if l.turned {
		from--
	}
	ways := 1
	if r.t.kinds[k].turn {
		ways = 2
	}
	if r.next[k] == r.first[k+1] {
		last := len(r.live) - ways
		copy(r.live[from:], r.live[from+ways:])
		r.live = r.live[:last]
		return
	}
	for j := from; j < from+ways; j++ {
		r.live[j].place = r.place[r.next[k]] ^ int32(j-from)
	}
}

// choose finds the piece for segment i; index -1: none.
func (r *trial) choose(i int, h int64) pick {
	gap := r.sky.segs[i]
	left, right := r.sky.walls(i)
	best, p := int64(math.MinInt64), pick{index: -1}
	high := h - gap.y
	r.work += len(r.live) + 8
	for j := range r.live {
		l := &r.live[j]
		if l.w > gap.w || l.h > high {
			continue
		}
		v, atRight := r.score(l.w, l.h, gap.w, left, right)
		if v = v<<32 - int64(l.place); v > best {
			best, p = v, pick{j, atRight}
		}
	}
	return p
}

// rule is how much the fit of a piece counts against its place in the sequence.
// None is best everywhere: pieces cut from one sheet want the strict ones, many
// copies of few designs the loose ones, so that a search goes through them all.
type rule int

const (
	thrifty rule = iota // leave no width beside that nothing fills, then as snug
	snug                // all that suits tells
	level               // fill the width, or end level with a wall
	loose               // fill the width
	near                // level, or almost
	rules
)

// nearBy is the part of the region's width that counts as almost nothing: where
// lengths are fine, hardly any two of them are equal.
const nearBy = 100

func (r *trial) score(w, h, gap, left, right int64) (score int64, atRight bool) {
	if r.rule == near {
		w, h = r.almost(w, gap), r.almost(r.almost(h, left), right)
	}
	v, atRight := suits(w, h, gap, left, right)
	switch {
	case r.rule == thrifty && (w == gap || r.fits.below(gap-w) == gap-w):
		return int64(v) + 8, atRight
	case r.rule <= snug:
		return int64(v), atRight
	case w == gap:
		return 2, atRight
	case (r.rule == level || r.rule == near) && v > 0:
		return 1, atRight
	default:
		return 0, atRight
	}
}

// almost is a length, or the one it is almost equal to.
func (r *trial) almost(l, other int64) int64 {
	if d := l - other; other >= 0 && d >= -r.slack && d <= r.slack {
		return other
	}
	return l
}

// out is the area of the pieces that do not lie.
func (r *trial) out() float64 {
	var sum float64
	for _, l := range r.live {
		if !l.turned {
			sum += float64(r.first[l.kind+1]-r.next[l.kind]) * float64(l.w) * float64(l.h)
		}
	}
	return sum
}

var unlimited = math.Inf(1)
