package quote

import "slices"

// worked is the job worked out at one quantity.
type worked struct {
	*costing
	us     []*unit
	each   []int64 // by group, kept from rising
	totals totals
}

// work finds the methods at a quantity and prices it; nil where no card serves, or a blank has no price.
func (m *model) work(pieces int, hint []int) *worked {
	s := m.at(pieces)
	best, heuristic := combination{}, false
	if s.frozen != nil {
		best.choice, best.ok = s.frozen.choice, true
	} else {
		best, heuristic = s.best(s.allowed, hint)
	}
	if !best.ok {
		return nil
	}
	c := s.costs(best.choice)
	if c.failed || len(c.unpriced) > 0 {
		return nil
	}
	c.heuristic = heuristic
	w := &worked{costing: c, us: c.units()}
	for _, u := range w.us {
		each := int64(0)
		if u != nil {
			each = u.each
		}
		w.each = append(w.each, each)
	}
	return w
}

// stair is the job's ladder: each step worked out, its prices each never above those of a smaller step.
type stair struct {
	m          *model
	quantities []int
	steps      []*worked // nil: not served
	above      *ahead    // nil: nothing is worked out ahead
}

func (m *model) stair() *stair {
	s := &stair{m: m, quantities: slices.Clone(m.job.Ladder)}
	slices.Sort(s.quantities)
	s.quantities = slices.Compact(s.quantities)
	var hint []int
	for _, q := range s.quantities {
		w := m.work(q, hint)
		if w != nil {
			hint = w.choice
			s.settle(w)
		}
		s.steps = append(s.steps, w)
	}
	return s
}

// settle keeps prices each from rising above those of smaller steps, and works out the totals.
func (s *stair) settle(w *worked) {
	if !s.m.job.Pricing.MayRise {
		for k, below := range s.steps {
			if s.quantities[k] >= w.pieces || below == nil {
				continue
			}
			for g, u := range w.us {
				if u != nil && below.us[g] != nil {
					w.each[g] = min(w.each[g], below.each[g])
				}
			}
		}
	}
	w.totals = w.costing.totals(w.us, w.each)
}

// at works out a quantity like a step of the ladder; nil where it is not served.
func (s *stair) at(pieces int, hint []int) *worked {
	if k := slices.Index(s.quantities, pieces); k >= 0 {
		return s.steps[k]
	}
	w, ok := s.above.at(pieces)
	if !ok {
		w = s.m.work(pieces, hint)
	}
	if w != nil {
		s.settle(w)
	}
	return w
}

// hint is the choice of the largest step that is not above the job's own quantity, nil where there is none.
func (s *stair) hint() (choice []int) {
	for k, step := range s.steps {
		if step != nil && s.quantities[k] <= s.m.pieces {
			choice = step.choice
		}
	}
	return choice
}

// own works out the job's own quantity, with its typed prices.
func (s *stair) own() *worked {
	w := s.m.work(s.m.pieces, s.hint())
	if w == nil {
		return nil
	}
	s.settle(w)
	for g := range s.m.groups {
		if p, ok := s.m.typed(g); ok && w.us[g] != nil {
			w.each[g] = p
		}
	}
	w.totals = w.costing.totals(w.us, w.each)
	w.layOut()
	return w
}

// typed is the price each that was typed for a group, on its first line with pieces that has one.
func (m *model) typed(g int) (int64, bool) {
	for _, l := range m.groups[g].lines {
		if p := m.lines[l].Price; p != nil && m.at(m.pieces).lineQty[l] > 0 {
			return m.minor(*p), true
		}
	}
	return 0, false
}

// cliffsUpTo is the largest quantity above the job's own that is looked at for a lower total.
func (m *model) cliffsUpTo() int {
	return min(m.pieces+max(6, min(50, (m.pieces+9)/10)), MaxPieces)
}

// cliffs are the quantities at which more pieces have a lower total.
func (s *stair) cliffs(own *worked) (cs []Cliff) {
	type point struct {
		pieces int
		total  int64
	}
	points := []point{{own.pieces, own.totals.total}}
	for k, q := range s.quantities {
		if w := s.steps[k]; w != nil && q != own.pieces {
			points = append(points, point{q, w.totals.total})
		}
	}
	slices.SortFunc(points, func(a, b point) int { return a.pieces - b.pieces })
	seen := map[Cliff]bool{}
	report := func(a, b point) {
		c := Cliff{From: a.pieces, To: b.pieces, Saves: s.m.amount(a.total - b.total)}
		if key := (Cliff{From: c.From, To: c.To}); !seen[key] {
			seen[key] = true
			cs = append(cs, c)
		}
	}
	for k := 1; k < len(points); k++ {
		if points[k].total < points[k-1].total {
			report(points[k-1], points[k])
		}
	}
	for q := own.pieces + 1; q <= s.m.cliffsUpTo(); q++ {
		if w := s.at(q, own.choice); w != nil && w.totals.total < own.totals.total {
			report(point{own.pieces, own.totals.total}, point{q, w.totals.total})
			break
		}
	}
	return cs
}
