package gang

import "slices"

// merging is a search for a cheap split of more items than every split can be tried of. Two runs become one where that
// is no dearer, an item changes its run, and the items of two runs are split anew, as long as something is saved.
type merging struct {
	*Sheets
	groups []group
	runs   []run
	left   int // questions that may still be asked
	asked  map[string]answer
}

// answer is the cheapest run of a group, or that none costs at most limit.
type answer struct {
	run   run
	limit Price
}

func (s *Sheets) merging(items int) *merging {
	return &merging{Sheets: s, left: questions + perItem*items, asked: map[string]answer{}}
}

// questions is how many runs may be priced in one search, a run of many items counting as many.
const questions = 4000

// perItem is how many more may be priced for every item.
const perItem = 40

// near is how far apart in the list two runs are compared when there are many.
const near = 24

// starts is how many joins are tried as the first; for more items they are fewer.
const starts = 6

// merged starts from one run for each item, and again with another first join, and takes the best it comes to. What
// is tried is packed quickly; the runs that are taken are then looked at in earnest.
func (s *Sheets) merged(g group) *split {
	m := s.quickly().merging(len(g.items))
	for k := range g.items {
		one := group{g.items[k : k+1], g.need[k : k+1]}
		r := s.run(ask{group: one, limit: most})
		if !r.ok {
			return &split{}
		}
		m.groups, m.runs = append(m.groups, one), append(m.runs, r)
	}
	groups, runs := slices.Clone(m.groups), slices.Clone(m.runs)
	best := &split{}
	for _, first := range m.joins(max(1, min(starts, 60/len(g.items)))) {
		m.groups, m.runs = slices.Clone(groups), slices.Clone(runs)
		m.apply(first)
		m.improve()
		best = best.orBetter(m.split())
	}
	if !best.ok {
		best = m.split()
	}
	return s.firm(best)
}

// firm looks at the runs of a split in earnest, and at what joins of them give then.
func (s *Sheets) firm(sp *split) *split {
	m := s.merging(0)
	m.left = firmly
	m.groups, m.runs = sp.groups, sp.runs
	for k, g := range m.groups {
		if r, ok := m.price(g, m.runs[k].cost); ok {
			m.runs[k] = r
		}
	}
	m.asOne(sp.cost)
	for m.join() || m.move() {
	}
	m.resplit()
	return m.split()
}

// asOne takes one run of everything where that costs less than a limit.
func (m *merging) asOne(limit Price) {
	var all group
	for _, g := range m.groups {
		all = all.with(g)
	}
	if r, ok := m.price(all, limit-1); ok {
		m.groups, m.runs = []group{all}, []run{r}
	}
}

// firmly is how many questions are asked in earnest.
const firmly = 100

// orBetter is another split if that one is cheaper, or as cheap with fewer runs.
func (sp *split) orBetter(o *split) *split {
	if o.ok && (!sp.ok || o.cost < sp.cost || o.cost == sp.cost && len(o.runs) < len(sp.runs)) {
		return o
	}
	return sp
}

// improve changes the split until no change helps.
func (m *merging) improve() {
	for m.join() || m.move() || m.swap() || m.resplit() {
	}
}

// split is what was found.
func (m *merging) split() *split {
	m.arrange()
	sp := &split{ok: true, heuristic: true, groups: m.groups, runs: m.runs}
	for _, r := range m.runs {
		var ok bool
		if sp.cost, ok = plus(sp.cost, r.cost); !ok {
			return &split{}
		}
	}
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
	if limit < 0 {
		return run{}, false
	}
	m.buf = g.key(m.buf[:0])
	a, known := m.asked[string(m.buf)]
	if !known || !a.run.ok && limit > a.limit {
		if m.left -= len(g.items); m.left < 0 {
			return run{}, false
		}
		key := string(m.buf)
		a = answer{m.run(ask{group: g, limit: limit}), limit}
		m.asked[key] = a
	}
	return a.run, a.run.ok && a.run.cost <= limit
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
