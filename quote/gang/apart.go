package gang

import (
	"slices"

	"pressworth/quote/nest"
)

// apart takes every item on lengths of its own where that is cheapest so far: together nothing may cost more than apart,
// or somebody would pay for sharing.
func (h *hunt) apart() {
	if len(h.ids) < 2 {
		return
	}
	if h.floors() >= h.cost {
		return
	}
	var sum Price
	for k, i := range h.ids {
		alone, found := h.Cost([]int{i}, h.need[k:k+1])
		total, ok := plus(sum, alone)
		if sum = total; !found || !ok || sum >= h.cost {
			return
		}
	}
	var cuts []cut
	for k, i := range h.ids {
		own := h.hunt(group{items: []int{i}, need: h.need[k : k+1]})
		own.run()
		for _, c := range own.cuts {
			cuts = append(cuts, c.as(k, len(h.ids)))
		}
	}
	h.take(cuts)
}

// floors is less than or equal to what the items cost apart, or the most where that is no less than what was found.
func (h *hunt) floors() (sum Price) {
	for k, i := range h.ids {
		low, ok := h.Floor([]int{i}, h.need[k:k+1])
		if sum, ok = plusIf(ok, sum, low); !ok || sum >= h.cost {
			return most
		}
	}
	return sum
}

// as is a cut of a single item as a cut of one among kinds.
func (c cut) as(item, kinds int) cut {
	counts := make([]int, kinds)
	counts[item] = c.counts[0]
	c.counts = counts
	c.rows = slices.Clone(c.rows)
	for i := range c.rows {
		c.rows[i].segs = slices.Clone(c.rows[i].segs)
		for j := range c.rows[i].segs {
			c.rows[i].segs[j].item = item
		}
	}
	placed := make([]nest.Placed, 0, len(c.placed))
	for _, p := range c.placed {
		p.Piece = item
		placed = append(placed, p)
	}
	c.placed = placed
	return c
}
