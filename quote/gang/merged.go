package gang

import "slices"

// merging is a search for a cheap split of more items than every split can be tried of. Two runs become one where that
// is no dearer, an item changes its run, and the items of two runs are split anew, as long as something is saved.
type merging struct {
	*Sheets
	groups []group
	runs   []run
	left   int // questions that may still be asked
}

// questions is how many runs may be priced in one search, a run of many items counting as many.
const questions = 20_000

// near is how far apart in the list two runs are compared when there are many.
const near = 24

// merged starts from one run for each item.
func (s *Sheets) merged(g group) *split {
	m := &merging{Sheets: s, left: questions}
	for k := range g.items {
		one := group{g.items[k : k+1], g.need[k : k+1]}
		r := s.run(ask{group: one, limit: most})
		if !r.ok {
			return &split{}
		}
		m.groups, m.runs = append(m.groups, one), append(m.runs, r)
	}
	m.improve()
	return m.split(g)
}

// improve changes the split until no change helps.
func (m *merging) improve() {
	for m.join() {
	}
	for m.move() || m.join() || m.resplit() {
	}
}

// split is what was found, with a bound.
func (m *merging) split(g group) *split {
	m.arrange()
	sp := &split{ok: true, heuristic: true, groups: m.groups, runs: m.runs}
	for _, r := range m.runs {
		var ok bool
		if sp.cost, ok = plus(sp.cost, r.cost); !ok {
			return &split{}
		}
	}
	sp.bound = m.boundMany(g, sp.cost)
	return sp
}

// arrange puts runs in the order of their earliest items.
func (m *merging) arrange() {
	order := make([]int, len(m.groups))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return m.groups[a].items[0] - m.groups[b].items[0] })
	groups, runs := make([]group, len(order)), make([]run, len(order))
	for i, o := range order {
		groups[i], runs[i] = m.groups[o], m.runs[o]
	}
	m.groups, m.runs = groups, runs
}

// price is a run for a group that costs at most limit.
func (m *merging) price(g group, limit Price) (run, bool) {
	m.left -= len(g.items)
	if m.left < 0 || limit < 0 {
		return run{}, false
	}
	r := m.run(ask{group: g, limit: limit})
	return r, r.ok && r.cost <= limit
}

// both is what two runs cost.
func (m *merging) both(i, j int) Price {
	both, ok := plus(m.runs[i].cost, m.runs[j].cost)
	if !ok {
		return most
	}
	return both
}

// pairs calls with the pairs of runs that may be compared, until it says true.
func (m *merging) pairs(with func(i, j int) bool) bool {
	for i := range m.groups {
		last := len(m.groups)
		if last > 2*near {
			last = min(last, i+1+near)
		}
		for j := i + 1; j < last; j++ {
			if with(i, j) {
				return true
			}
		}
	}
	return false
}

// join makes one run of the two that save most by it; saving nothing but a run counts as well.
func (m *merging) join() bool {
	saved := Price(-1)
	var at, other int
	var found run
	m.pairs(func(i, j int) bool {
		both := m.both(i, j)
		r, ok := m.price(m.groups[i].with(m.groups[j]), both-max(saved, 0))
		if ok && both-r.cost > saved {
			saved, at, other, found = both-r.cost, i, j, r
		}
		return false
	})
	if saved < 0 {
		return false
	}
	m.groups[at], m.runs[at] = m.groups[at].with(m.groups[other]), found
	m.groups, m.runs = slices.Delete(m.groups, other, other+1), slices.Delete(m.runs, other, other+1)
	return true
}

// move takes an item from one run to another where that costs less.
func (m *merging) move() bool {
	return m.pairs(func(i, j int) bool { return m.moveFrom(i, j) || m.moveFrom(j, i) })
}

func (m *merging) moveFrom(i, j int) bool {
	if len(m.groups[i].items) < 2 {
		return false
	}
	for k := range m.groups[i].items {
		less, one := m.groups[i].without(k)
		a, ok := m.price(less, m.both(i, j)-1)
		if !ok {
			continue
		}
		more := m.groups[j].with(one)
		b, ok := m.price(more, m.both(i, j)-1-a.cost)
		if !ok {
			continue
		}
		m.groups[i], m.runs[i] = less, a
		m.groups[j], m.runs[j] = more, b
		return true
	}
	return false
}

// resplit takes two runs with few items together and tries every split of them.
func (m *merging) resplit() bool {
	return m.pairs(func(i, j int) bool {
		g := m.groups[i].with(m.groups[j])
		if len(g.items) > Exact-1 {
			return false
		}
		if m.left -= 1 << len(g.items); m.left < 0 {
			return false
		}
		sp := m.Sheets.split(g.items, g.need)
		if !sp.ok || sp.cost >= m.both(i, j) {
			return false
		}
		m.groups = slices.Concat(m.groups[:i], m.groups[i+1:j], m.groups[j+1:], sp.groups)
		m.runs = slices.Concat(m.runs[:i], m.runs[i+1:j], m.runs[j+1:], sp.runs)
		return true
	})
}

// with is both groups together.
func (g group) with(h group) group {
	var out group
	for i, j := 0, 0; i < len(g.items) || j < len(h.items); {
		if j == len(h.items) || i < len(g.items) && g.items[i] < h.items[j] {
			out.items, out.need = append(out.items, g.items[i]), append(out.need, g.need[i])
			i++
		} else {
			out.items, out.need = append(out.items, h.items[j]), append(out.need, h.need[j])
			j++
		}
	}
	return out
}

// without is a group less the item at place k, and that item.
func (g group) without(k int) (less, one group) {
	less.items = slices.Concat(g.items[:k], g.items[k+1:])
	less.need = slices.Concat(g.need[:k], g.need[k+1:])
	return less, group{g.items[k : k+1], g.need[k : k+1]}
}
