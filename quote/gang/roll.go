package gang

import (
	"encoding/binary"
	"fmt"

	"pressworth/quote/nest"
)

// Roll plans the items of one job on one roll card. Like Sheets it keeps what it has found out, which never changes an
// answer, and is not safe for use by several goroutines at once.
type Roll struct {
	stock    stock
	items    []Item
	costs    map[string]rollCost
	measured map[string]measure // by items
	answers  map[string]found
	kept     int // size of the answers
	buf      []byte
}

// rollCost is what is known of a job's cost; where it was not worked out, it is at least low.
type rollCost struct {
	done, ok  bool
	cost, low Price
}

// NewRoll prepares planning of items on a card.
func NewRoll(card RollCard, items []Item) *Roll {
	return &Roll{
		stock: newStock(card), items: items,
		costs: map[string]rollCost{}, measured: map[string]measure{}, answers: map[string]found{},
	}
}

// Serves says whether one copy of an item fits on some length.
func (r *Roll) Serves(item int) bool {
	return item >= 0 && item < len(r.items) && r.stock.takes(r.items[item])
}

// Alone is what an item costs on a roll of its own.
func (r *Roll) Alone(item, need int) (Price, bool) {
	return r.Cost([]int{item}, []int{need})
}

// Cost is the cost of the plan for need[k] copies of items[k], items ascending; items without need take no part. It is
// false where there is no plan. It equals the cost of Plan.
func (r *Roll) Cost(items, need []int) (Price, bool) {
	cost, ok, _ := r.CostUnder(items, need, most)
	return cost, ok
}

// CostUnder is Cost, unless that is proven to be more than a limit: then it is false and out is true.
func (r *Roll) CostUnder(items, need []int, limit Price) (cost Price, ok, out bool) {
	g, err := wanted(r.items, items, need)
	if err != nil {
		return 0, false, false
	}
	r.buf = g.key(r.buf[:0])
	c, known := r.costs[string(r.buf)]
	switch {
	case known && c.done:
		return c.cost, c.ok, false
	case known && c.low > limit:
		return 0, false, true
	}
	key := string(r.buf)
	h := r.hunt(g)
	if low, proven := h.beyond(limit); proven {
		r.know(key, rollCost{low: low})
		return 0, false, true
	}
	h.run()
	r.know(key, rollCost{done: true, ok: h.found, cost: h.cost})
	return h.cost, h.found, false
}

func (r *Roll) know(key string, c rollCost) {
	if len(r.costs) >= memory {
		clear(r.costs)
	}
	r.costs[key] = c
}

// Plan is the cheapest set of lengths found for need[k] copies of items[k], with layouts and bound. A run is one
// layout; its Size is the index of its length.
func (r *Roll) Plan(items, need []int) (Plan, error) {
	g, err := wanted(r.items, items, need)
	if err != nil {
		return Plan{}, err
	}
	for _, i := range g.items {
		if !r.Serves(i) {
			return Plan{}, fmt.Errorf("item %d: no length of this roll takes it", i)
		}
	}
	h := r.hunt(g)
	h.run()
	if !h.found {
		return Plan{}, fmt.Errorf("the cost is larger than can be reckoned with")
	}
	return Plan{Cost: h.cost, Bound: h.bound, Runs: h.runs()}, nil
}

// hunt sets up the search for a group.
func (r *Roll) hunt(g group) *hunt {
	h := &hunt{Roll: r, ids: g.items, need: g.need, blanks: r.measures(g.items).blanks}
	h.pieces = make([]nest.Piece, len(g.items))
	for k, i := range g.items {
		it := r.items[i]
		h.pieces[k] = nest.Piece{W: it.W, H: it.H, Turn: it.Turn, Count: g.need[k]}
	}
	return h
}

// measures are those of some items, with their blanks.
func (r *Roll) measures(items []int) measure {
	r.buf = r.buf[:0]
	for _, i := range items {
		r.buf = binary.AppendUvarint(r.buf, uint64(i))
	}
	m, ok := r.measured[string(r.buf)]
	if !ok {
		blanks := make([]blank, len(items))
		for k, i := range items {
			blanks[k] = r.stock.blank(r.items[i])
		}
		m = r.stock.measure(blanks)
		r.measured[string(r.buf)] = m
	}
	return m
}

// wanted is the items that have need.
func wanted(all []Item, items, need []int) (group, error) {
	if len(items) != len(need) {
		return group{}, fmt.Errorf("%d items and %d needs", len(items), len(need))
	}
	both := make([]int, 2*len(items))
	g := group{both[:0:len(items)], both[len(items):len(items)]}
	for k, i := range items {
		switch {
		case i < 0 || i >= len(all):
			return g, fmt.Errorf("no item %d", i)
		case k > 0 && i <= items[k-1]:
			return g, fmt.Errorf("item %d is out of order", i)
		case min(all[i].W, all[i].H) < 1 || max(all[i].W, all[i].H) > nest.MaxLength:
			return g, fmt.Errorf("item %d: size %d x %d", i, all[i].W, all[i].H)
		case need[k] > nest.MaxPieces:
			return g, fmt.Errorf("item %d: more than %d copies", i, nest.MaxPieces)
		case need[k] > 0:
			g.items, g.need = append(g.items, i), append(g.need, need[k])
		}
	}
	return g, nil
}
