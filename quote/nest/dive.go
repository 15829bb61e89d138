package nest

import (
	"cmp"
	"slices"
)

// A dive is a depth-first search for a layout that wastes no more area than the
// region has to spare: the lowest gap is filled from its left end, or given up
// at the price of its area. It turns back as soon as what is lost for certain is
// more than there is to lose, which is at once where all pieces must fit
// without waste (Lesh, Marks, McMahon & Mitzenmacher 2004).
type dive struct {
	t     *task
	h     int64
	spare float64
	x, y  *reach
	left  []int
	order []int // place of a kind among equals
	seen  map[uint64]struct{}
	level []depth
	spots []spot
	lost  float64
	steps int
	limit int
	stop  func() bool
}

// depth is the memory of one level of a dive.
type depth struct {
	sky     skyline
	options []option
}

type option struct {
	score int64
	kind  int32
	way   int8
}

func newDive(t *task, h int64) *dive {
	v := &dive{t: t, h: h, left: t.counts(), seen: map[uint64]struct{}{}}
	v.x, v.y = newReach(t.kinds, alongX, t.w), newReach(t.kinds, alongY, h)
	v.spare = float64(t.w)*float64(h) - t.area().float()
	v.level = make([]depth, t.n+1)
	return v
}

// run searches afresh, with kinds preferred in the given order among equals, for
// a number of steps. done says that the search came to its end within them.
func (v *dive) run(order []int, steps int) (spots []spot, done bool) {
	v.order = order
	v.limit = v.steps + steps
	v.spots = v.spots[:0]
	v.lost = 0
	clear(v.seen)
	v.level[0].sky.reset(v.t.w)
	if v.down(0) {
		return v.spots, true
	}
	return nil, v.steps < v.limit
}

// down fills the region from the skyline of a level on.
func (v *dive) down(n int) bool {
	if n == v.t.n {
		return true
	}
	sky := &v.level[n].sky
	before := v.lost
	defer func() { v.lost = before }()
	for {
		if v.steps++; v.steps%4096 == 0 && v.stop != nil && v.stop() {
			v.limit = v.steps
		}
		if v.steps >= v.limit || v.hopeless(sky) || v.known(sky) {
			return false
		}
		i := sky.lowest()
		if v.fill(n, i) {
			return true
		}
		gap := sky.segs[i]
		up := sky.lift(i)
		if up == 0 {
			return false
		}
		v.lost += float64(gap.w) * float64(up)
	}
}

// hopeless says that more is lost than there is to lose. Lost for certain are,
// in the lowest gap, the width that no sum of sides fills, and above every
// segment the height that none does.
func (v *dive) hopeless(sky *skyline) bool {
	if v.lost > v.spare {
		return true
	}
	i := sky.lowest()
	gap := sky.segs[i]
	if u := v.x.below(gap.w); u < gap.w {
		left, right := sky.walls(i)
		deep := v.h - gap.y
		if left >= 0 {
			deep = min(deep, left)
		}
		if right >= 0 {
			deep = min(deep, right)
		}
		if v.lost+float64(gap.w-u)*float64(deep) > v.spare {
			return true
		}
	}
	var above float64
	for _, s := range sky.segs {
		if u := v.y.below(v.h - s.y); u < v.h-s.y {
			above += float64(s.w) * float64(v.h-s.y-u)
		}
	}
	return v.lost+above > v.spare
}

// known says that this skyline with these pieces left was looked at before.
func (v *dive) known(sky *skyline) bool {
	key := uint64(len(v.spots))
	mix := func(x uint64) {
		key = (key ^ x) * 0x9e3779b97f4a7c15
		key ^= key >> 29
	}
	for _, s := range sky.segs {
		mix(uint64(s.x))
		mix(uint64(s.y))
	}
	for _, c := range v.left {
		mix(uint64(c))
	}
	if _, ok := v.seen[key]; ok {
		return true
	}
	if len(v.seen) < maxSeen {
		v.seen[key] = struct{}{}
	}
	return false
}

// maxSeen limits the memory of a dive.
const maxSeen = 1 << 18

// fill tries every piece at the left end of segment i.
func (v *dive) fill(n, i int) bool {
	v.collect(n, i)
	for _, o := range v.level[n].options {
		k := &v.t.kinds[o.kind]
		w, h := k.size(o.way == 1)
		next := &v.level[n+1].sky
		next.w = v.t.w
		next.segs = append(next.segs[:0], v.level[n].sky.segs...)
		y := next.segs[i].y
		x := next.put(i, w, h, false)
		v.left[o.kind]--
		v.spots = append(v.spots, spot{int(o.kind), x, y, o.way == 1})
		if v.down(n + 1) {
			return true
		}
		v.spots = v.spots[:len(v.spots)-1]
		v.left[o.kind]++
		if v.steps >= v.limit {
			return false
		}
	}
	return false
}

// collect lists what may lie at the left end of segment i, best first.
func (v *dive) collect(n, i int) {
	l := &v.level[n]
	l.options = l.options[:0]
	gap := l.sky.segs[i]
	left, right := l.sky.walls(i)
	for p, k := range v.order {
		if v.left[k] == 0 {
			continue
		}
		for way := int8(0); way < 2; way++ {
			w, h := v.t.kinds[k].size(way == 1)
			if w > gap.w || h > v.h-gap.y || way == 1 && !v.t.kinds[k].turn {
				continue
			}
			s, _ := suits(w, h, gap.w, left, right)
			l.options = append(l.options, option{int64(s)<<32 - int64(p), int32(k), way})
		}
	}
	slices.SortFunc(l.options, func(a, b option) int { return cmp.Compare(b.score, a.score) })
}
