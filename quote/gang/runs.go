package gang

import (
	"encoding/binary"
	"math"
	"slices"
)

// run is the cheapest way to print a group in one run.
type run struct {
	ok     bool
	size   int
	row    int
	inks   int
	buying buying
	setup  Price
	cost   Price // setup included

	possible bool  // a run is not ruled out
	low      Price // no run costs less
	fewest   []int // by size: fewer sheets than these are ruled out
}

// ask is a group for which a run is looked for.
type ask struct {
	group
	limit  Price // runs that cost more are of no use
	fewest []int // by size: fewer sheets are known not to do; nil: nothing is known
}

// never is a number of sheets that stands for: on no number of them.
const never = math.MaxInt

// group is some of the items with what is needed of each.
type group struct {
	items []int // ascending
	need  []int
}

func (g group) key(b []byte) []byte {
	for k, i := range g.items {
		b = binary.AppendUvarint(b, uint64(i))
		b = binary.AppendUvarint(b, uint64(g.need[k]))
	}
	return b
}

// top is a number of sheets on which one copy of each item is enough.
func (g group) top() int { return slices.Max(g.need) }

// run finds the cheapest run of a group: of equal costs the one with fewer sheets, then on the size listed first.
func (s *Sheets) run(a ask) run {
	s.buf = binary.AppendUvarint(s.buf[:0], uint64(a.limit))
	s.buf = a.key(append(s.buf, byte(min(len(a.fewest), 1)))) // what is known of its parts follows from the group
	if r, ok := s.runs[string(s.buf)]; ok {
		return r
	}
	key := string(s.buf)
	r := s.findRun(a)
	if len(s.runs) >= memory {
		clear(s.runs)
	}
	s.runs[key] = r
	return r
}

func (s *Sheets) findRun(a ask) run {
	inks, designs := s.inks.union(a.items)
	setup, ok := s.setup(inks, designs)
	if !ok || s.card.MaxInks > 0 && inks > s.card.MaxInks {
		return run{}
	}
	best := run{fewest: make([]int, len(s.card.Sizes))}
	copy(best.fewest, a.fewest)
	for _, h := range s.hopes(a, inks) {
		best.fewest[h.size] = h.from
		low, fine := plus(h.buying.cost, setup)
		if !fine {
			continue
		}
		if low > a.limit || best.ok && !h.better(best) {
			best.lower(low)
			continue
		}
		h.limit = a.limit - setup
		found := s.search(a.group, &h)
		best.fewest[h.size] = never
		if h.open {
			best.fewest[h.size] = h.from
			best.lower(s.lowest(h, setup))
		}
		if found && (!best.ok || h.better(best)) {
			best.ok, best.size, best.row, best.buying = true, h.size, h.row, h.buying
		}
	}
	best.inks, best.setup, best.cost = inks, setup, best.buying.cost+setup
	return best
}

// setup is what one run costs beside its sheets.
func (s *Sheets) setup(inks, designs int) (Price, bool) {
	perDesign, ok1 := times(designs, s.card.SetupPerDesign)
	perInk, ok2 := times(inks, s.card.SetupPerInk)
	setup, ok3 := plus(perDesign, perInk)
	return setup, ok1 && ok2 && ok3
}

// lower notes that some run may cost as little as low.
func (r *run) lower(low Price) {
	if !r.possible || low < r.low {
		r.possible, r.low = true, low
	}
}

// hope is a size on which a group may be printed, with what is known of the sheets it takes.
type hope struct {
	size, row int
	from      int    // fewer sheets are ruled out
	buying    buying // at first the least that is not ruled out, after the search the best that fits
	limit     Price  // more for the sheets is of no use
	open      bool   // from sheets or more are not ruled out
}

// better says whether buying this would be better than a run that was found.
func (h hope) better(r run) bool {
	switch {
	case h.buying.cost != r.buying.cost:
		return h.buying.cost < r.buying.cost
	case h.buying.sheets != r.buying.sheets:
		return h.buying.sheets < r.buying.sheets
	}
	return h.size < r.size
}

// hopes are the sizes that have a price for so many inks, those that could be cheapest first.
func (s *Sheets) hopes(a ask, inks int) []hope {
	hs := make([]hope, 0, len(s.card.Sizes))
	for size := range s.card.Sizes {
		row := rowFor(&s.card.Sizes[size], inks)
		if row < 0 {
			continue
		}
		from := s.byArea(a.group, size)
		if a.fewest != nil {
			from = max(from, a.fewest[size])
		}
		if b, ok := buy(&s.card.Sizes[size], row, from); ok && from < never {
			hs = append(hs, hope{size: size, row: row, from: from, buying: b})
		}
	}
	slices.SortStableFunc(hs, func(a, b hope) int {
		switch {
		case a.buying.cost < b.buying.cost:
			return -1
		case a.buying.cost > b.buying.cost:
			return 1
		}
		return a.buying.sheets - b.buying.sheets
	})
	return hs
}

// lowest is the least that a searched size may still cost.
func (s *Sheets) lowest(h hope, setup Price) Price {
	b, _ := buy(&s.card.Sizes[h.size], h.row, h.from)
	low, ok := plus(b.cost, setup)
	if !ok {
		return most
	}
	return low
}

// byArea is the smallest number of sheets whose area could hold the group.
func (s *Sheets) byArea(g group, size int) int {
	sz := s.card.Sizes[size]
	whole := product(sz.W-2*sz.Edge+sz.Gap, sz.H-2*sz.Edge+sz.Gap)
	low, top := 1, g.top()
	for low < top {
		mid := low + (top-low)/2
		var used area
		for k, i := range g.items {
			it := s.items[i]
			used = used.plus(product(it.W+sz.Gap, it.H+sz.Gap).times(parts(g.need[k], mid)))
		}
		if whole.less(used) {
			low = mid + 1
		} else {
			top = mid
		}
	}
	return low
}
