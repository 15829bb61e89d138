package nest

import (
	"cmp"
	"slices"
)

// shelf is a row from border to border, as high as its first piece.
type shelf struct {
	used, h int64
	spots   []spot // y is set once the shelf has its place
}

// shelves lays pieces in rows, highest first, each in the first row with room
// (first fit decreasing height). Rows in turn are at least half full, so that
// their heights add up to less than twice the area over the width plus the
// highest piece (Coffman, Garey, Johnson & Tarjan 1980). It takes next to no
// time for any number of pieces.
func (t *task) shelves(turned []bool) []shelf {
	order := make([]int, len(t.kinds))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		_, p := t.kinds[a].size(turned[a])
		_, q := t.kinds[b].size(turned[b])
		return cmp.Compare(q, p)
	})
	var out []shelf
	free := newFirstFit(t.n, t.w)
	for _, k := range order {
		w, h := t.kinds[k].size(turned[k])
		for left := t.kinds[k].count; left > 0; left-- {
			i := free.take(w)
			if i == len(out) {
				out = append(out, shelf{h: h, spots: make([]spot, 0, min(int64(left), t.w/w))})
			}
			s := &out[i]
			s.spots = append(s.spots, spot{kind: k, x: s.used, turned: turned[k]})
			s.used += w
		}
	}
	return out
}

// flat has every piece lie with its longer side across, where it may.
func (t *task) flat() []bool {
	turned := make([]bool, len(t.kinds))
	for i, k := range t.kinds {
		turned[i] = k.turn && k.h > k.w && k.h <= t.w && k.w <= t.h
	}
	return turned
}

// stack puts shelves on sheets, each on the first with room; a strip is one
// sheet high enough for all.
func (t *task) stack(shelves []shelf) [][]spot {
	var out [][]spot
	var used []int64
	free := newFirstFit(len(shelves), t.h)
	for _, s := range shelves {
		i := free.take(s.h)
		if i == len(out) {
			out, used = append(out, nil), append(used, 0)
		}
		for _, p := range s.spots {
			p.y = used[i]
			out[i] = append(out[i], p)
		}
		used[i] += s.h
	}
	return out
}

// firstFit finds the first of n holders with room for a length, in a tree of the
// most room below each branch.
type firstFit struct {
	leaves int
	room   []int64
}

func newFirstFit(n int, each int64) *firstFit {
	f := &firstFit{leaves: 1}
	for f.leaves < n {
		f.leaves *= 2
	}
	f.room = make([]int64, 2*f.leaves)
	for i := range f.room {
		f.room[i] = each
	}
	return f
}

// take uses up a length, at most that of an empty holder, and returns whose.
func (f *firstFit) take(l int64) int {
	i := 1
	for i < f.leaves {
		i *= 2
		if f.room[i] < l {
			i++
		}
	}
	f.room[i] -= l
	at := i - f.leaves
	for i /= 2; i > 0; i /= 2 {
		f.room[i] = max(f.room[2*i], f.room[2*i+1])
	}
	return at
}
