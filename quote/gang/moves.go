package gang

import (
	"cmp"
	"slices"
)

// joint is two runs made one.
type joint struct {
	i, j  int
	run   run
	saves Price
}

// joins are the joins that save most, saving nothing but a run counted in.
func (m *merging) joins(n int) (best []joint) {
	m.pairs(func(i, j int) bool {
		both := m.both(i, j)
		if r, ok := m.price(m.groups[i].with(m.groups[j]), both); ok {
			best = append(best, joint{i, j, r, both - r.cost})
		}
		return false
	})
	slices.SortStableFunc(best, func(a, b joint) int { return cmp.Compare(b.saves, a.saves) })
	return best[:min(n, len(best))]
}

func (m *merging) apply(t joint) {
	m.groups[t.i], m.runs[t.i] = m.groups[t.i].with(m.groups[t.j]), t.run
	m.groups, m.runs = slices.Delete(m.groups, t.j, t.j+1), slices.Delete(m.runs, t.j, t.j+1)
}

// join makes one run of the two that save most by it.
func (m *merging) join() bool {
	best := m.joins(1)
	if len(best) > 0 {
		m.apply(best[0])
	}
	return len(best) > 0
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
		if m.change(i, j, less, m.groups[j].with(one)) {
			return true
		}
	}
	return false
}

// swap exchanges two items of two runs where that costs less.
func (m *merging) swap() bool {
	return m.pairs(func(i, j int) bool {
		for k := range m.groups[i].items {
			for l := range m.groups[j].items {
				less, one := m.groups[i].without(k)
				other, two := m.groups[j].without(l)
				if m.change(i, j, less.with(two), other.with(one)) {
					return true
				}
			}
		}
		return false
	})
}

// change gives two runs other items if that costs less.
func (m *merging) change(i, j int, a, b group) bool {
	ra, ok := m.price(a, m.both(i, j)-1)
	if !ok {
		return false
	}
	rb, ok := m.price(b, m.both(i, j)-1-ra.cost)
	if !ok {
		return false
	}
	m.groups[i], m.runs[i], m.groups[j], m.runs[j] = a, ra, b, rb
	return true
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
