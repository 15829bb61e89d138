package gang

import (
	"cmp"
	"math/big"
	"slices"
)

// boundMany is a cost that no split of many items goes below, given the cost of one: what the area of every item costs
// at the best price for its inks that a cheaper plan could reach, and every design and ink set up once.
func (s *Sheets) boundMany(g group, cost Price) Price {
	return min(cost, max(s.boundByArea(g, cost), s.window(g)))
}

// boundByArea is the part of boundMany that takes no time.
func (s *Sheets) boundByArea(g group, cost Price) Price {
	var bound Price
	for k, i := range g.items {
		inks, _ := s.inks.union([]int{i})
		bound += s.areaCost(s.items[i], inks, g.need[k], cost)
		if bound < 0 || bound > cost {
			return cost
		}
	}
	inks, designs := s.inks.union(g.items)
	setup, ok := s.setup(inks, designs)
	if !ok {
		return bound
	}
	return min(cost, max(s.dearest(g), bound+setup))
}

// window is the bound of the few items with the dearest areas by themselves: more items cost no less where more inks
// cost no less.
func (s *Sheets) window(g group) Price {
	if !s.rising() {
		return 0
	}
	places := make([]int, len(g.items))
	dear := make([]Price, len(g.items))
	for k := range places {
		places[k] = k
		dear[k] = s.dearest(group{g.items[k : k+1], g.need[k : k+1]})
	}
	slices.SortStableFunc(places, func(a, b int) int { return cmp.Compare(dear[b], dear[a]) })
	places = places[:min(Exact, len(places))]
	slices.Sort(places)
	var few group
	for _, k := range places {
		few.items, few.need = append(few.items, g.items[k]), append(few.need, g.need[k])
	}
	return s.split(few.items, few.need).bound
}

// rising says whether on every size a row for more inks is nowhere cheaper, and starts at no fewer sheets.
func (s *Sheets) rising() bool {
	for n := range s.card.Sizes {
		rows := s.card.Sizes[n].Prices
		for r := 1; r < len(rows); r++ {
			for _, b := range slices.Concat(rows[r-1].Each, rows[r].Each) {
				less, ok1 := priceAt(rows[r-1].Each, b.From)
				more, ok2 := priceAt(rows[r].Each, b.From)
				if ok2 && (!ok1 || less > more) {
					return false
				}
			}
		}
	}
	return true
}

// priceAt is the price each of a number of sheets.
func priceAt(breaks []Break, x int) (each Price, ok bool) {
	for _, b := range breaks {
		if b.From <= x {
			each, ok = b.Each, true
		}
	}
	return each, ok
}

// dearest is the least that the run of some item costs, whatever else is on it: the sheets its area needs, in any row with
// enough inks.
func (s *Sheets) dearest(g group) (bound Price) {
	for k := range g.items {
		one := group{g.items[k : k+1], g.need[k : k+1]}
		inks, designs := s.inks.union(one.items)
		setup, _ := s.setup(inks, designs)
		least := Price(most)
		for n := range s.card.Sizes {
			size := &s.card.Sizes[n]
			first := rowFor(size, inks)
			for row := first; first >= 0 && row < len(size.Prices); row++ {
				if b, ok := buy(size, row, s.byArea(one, n)); ok {
					least = min(least, b.cost)
				}
			}
		}
		if low, ok := plus(least, setup); ok {
			bound = max(bound, low)
		}
	}
	return bound
}

// areaCost is the least that the area of some copies costs in a plan that costs no more than a ceiling: at the best price
// of any row with enough inks from a number of sheets on that such a plan could pay.
func (s *Sheets) areaCost(it Item, inks, need int, ceiling Price) Price {
	best := new(big.Int).SetInt64(ceiling)
	for n := range s.card.Sizes {
		size := &s.card.Sizes[n]
		row := rowFor(size, inks)
		if row < 0 {
			continue
		}
		each, ok := reachable(size.Prices[row:], ceiling)
		if !ok {
			continue
		}
		part := product(it.W+size.Gap, it.H+size.Gap).times(need).big()
		part.Mul(part, big.NewInt(each))
		part.Div(part, product(size.W-2*size.Edge+size.Gap, size.H-2*size.Edge+size.Gap).big())
		if part.Cmp(best) < 0 {
			best = part
		}
	}
	return best.Int64()
}

// reachable is the lowest price in some ink rows at which the fewest sheets it is for cost no more than the ceiling.
func reachable(rows []InkRow, ceiling Price) (each Price, ok bool) {
	for _, row := range rows {
		for _, b := range row.Each {
			least, fine := times(max(b.From, 1), b.Each)
			if fine && least <= ceiling && (!ok || b.Each < each) {
				each, ok = b.Each, true
			}
		}
	}
	return each, ok
}
