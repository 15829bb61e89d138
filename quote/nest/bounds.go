package nest

// sheetsBound is a number of regions no layout does without. far tries every
// pair of duals, not only those that promise most, and widened sides.
func (t *task) sheetsBound(w, h int64, far bool) int {
	if t.n == 0 {
		return 0
	}
	plain := t.ways()
	best := max(1, t.rivals(w, h), dualBound(plain, w, h, duals(plain, alongX, w), far))
	if far && t.few(max(w, h)) {
		wide := t.widened(w, h)
		best = max(best, dualBound(wide, w, h, duals(wide, alongX, w), true))
	}
	return best
}

// dualBound is the most that duals prove; those across are at hand.
func dualBound(kinds []ways, w, h int64, fs []dual, far bool) int {
	gs := duals(kinds, alongY, h)
	best := 0
	try := func(f, g *dual) {
		if f.limit > 0 && g.limit > 0 {
			whole := product(f.limit, g.limit)
			if m := measure(kinds, f, g); whole.times(best).less(m) {
				best = m.overArea(whole)
			}
		}
	}
	for i := range fs {
		try(&fs[i], &gs[0])
	}
	for i := range gs {
		try(&fs[0], &gs[i])
	}
	if far && len(fs)*len(gs)*len(kinds) < 4_000_000 {
		for i := range fs {
			for j := range gs {
				try(&fs[i], &gs[j])
			}
		}
	}
	return best
}

// rivals counts pieces no two of which go on one region, as a greedy clique.
func (t *task) rivals(w, h int64) int {
	best := 0
	kinds := t.kinds[:min(len(t.kinds), maxDuals)]
	for i := range kinds {
		var group []int
		n := 0
		for o := range kinds {
			k := (i + o) % len(kinds)
			apart := true
			for _, g := range group {
				apart = apart && !together(kinds[k], kinds[g], w, h)
			}
			switch {
			case !apart:
			case !together(kinds[k], kinds[k], w, h):
				n += kinds[k].count
				group = append(group, k)
			case o == 0:
				n++
				group = append(group, k)
			}
		}
		best = max(best, n)
	}
	return best
}

// together says whether two pieces go side by side or one above the other.
func together(a, b kind, w, h int64) bool {
	for _, p := range a.bothWays() {
		for _, q := range b.bothWays() {
			if max(p.h, q.h) <= h && p.w+q.w <= w || max(p.w, q.w) <= w && p.h+q.h <= h {
				return true
			}
		}
	}
	return false
}

// bothWays are the sizes a kind may lie in.
func (k kind) bothWays() []kind {
	if k.turn {
		return []kind{k, {w: k.h, h: k.w}}
	}
	return []kind{k}
}

// stripBound is a length no layout goes below: by duals across the strip, the
// shortest piece, and what a sheet of that length is proven not to hold.
func (t *task) stripBound() int64 {
	var bound int64
	for _, k := range t.kinds {
		least := k.h
		if k.turn && k.w <= t.h {
			least = min(k.w, k.h)
		}
		bound = max(bound, least)
	}
	kinds := t.ways()
	few := t.few(t.w)
	if few {
		kinds = t.widenedAcross(t.w)
	}
	fs := duals(kinds, alongX, t.w)
	length := dual{limit: 1}
	for i := range kinds {
		length.values = append(length.values, kinds[i].y)
	}
	for i := range fs {
		if fs[i].limit > 0 {
			bound = max(bound, measure(kinds, &fs[i], &length).over(fs[i].limit))
		}
	}
	sums := newReach(t.kinds, alongY, min(t.h, maxReach))
	bound = sums.from(bound)
	if len(t.kinds) > 1000 {
		return bound
	}
	low, high := bound, bound+bound/4
	for low < high {
		mid := low + (high-low)/2
		if dualBound(kinds, t.w, mid, fs, false) > 1 {
			low = mid + 1
		} else {
			high = mid
		}
	}
	return sums.from(low)
}
