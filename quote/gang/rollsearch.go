package gang

import (
	"pressworth/quote/nest"
)

// hunt is the search for the cheapest basket that holds one job.
type hunt struct {
	*Roll
	ids    []int // items that have need
	need   []int
	blanks []blank
	pieces []nest.Piece
	ways   [][]bool // of laying the blanks in rows

	found bool
	cost  Price
	cuts  []cut
	bound Price
}

// tries is how many baskets the packer is asked about, straight rows having failed.
const tries = 8

func (h *hunt) run() {
	if len(h.ids) == 0 {
		h.found = true
		return
	}
	for _, i := range h.ids {
		if !h.stock.takes(h.items[i]) {
			return
		}
	}
	h.straight()
	if !h.found {
		return
	}
	c := newCover(h.stock, h.measures(), h.blanks, h.need)
	h.bound = min(c.least(), h.cost)
	if h.bound == h.cost {
		return
	}
	list, complete := c.baskets(h.cost)
	h.bound = h.cost
	if !complete {
		h.bound = min(c.least(), h.cost)
	}
	asked, proven := 0, true
	for _, b := range list {
		cost, _ := h.stock.price(b)
		if cuts, ok := h.rowsOn(b); ok {
			h.take(cuts)
		} else if asked < tries {
			asked++
			cuts, v := h.packed(b)
			if v == nest.CannotFit {
				continue
			}
			if v == nest.Fits {
				h.take(cuts)
			}
		}
		if proven {
			proven = false
			h.bound = min(h.bound, cost)
		}
		if h.cost == cost {
			break
		}
	}
}

// take keeps cuts that are cheaper, or as cheap on fewer lengths.
func (h *hunt) take(cuts []cut) {
	b := h.stock.basketOf(cuts)
	cost, ok := h.stock.price(b)
	if !ok {
		return
	}
	if !h.found || cost < h.cost || cost == h.cost && b.count() < h.stock.basketOf(h.cuts).count() {
		h.found, h.cost, h.cuts = true, cost, cuts
	}
}

// straight tries straight rows on each length by itself, each way of laying the blanks.
func (h *hunt) straight() {
	h.ways = h.lay()
	for _, turned := range h.ways {
		rows := rowsOf(h.stock.width, h.blanks, h.need, turned)
		for on := range h.stock.lengths {
			if cuts, ok := h.stock.cutAll(rows, len(h.blanks), on); ok {
				h.take(cuts)
			}
		}
	}
}

// rowsOn tries straight rows on a basket.
func (h *hunt) rowsOn(b basket) ([]cut, bool) {
	for _, turned := range h.ways {
		rows := rowsOf(h.stock.width, h.blanks, h.need, turned)
		if cuts, ok := h.stock.cutRows(rows, len(h.blanks), b); ok {
			return cuts, true
		}
	}
	return nil, false
}

// lay lists ways to lay new rows: all ways for a few blanks; for more, the way that takes less of the roll, and then
// each of them the other way.
func (h *hunt) lay() [][]bool {
	base := make([]bool, len(h.blanks))
	var free []int // blanks that may lie either way
	for k, b := range h.blanks {
		up, over := b.w <= h.stock.width, b.turn && b.w != b.h && b.h <= h.stock.width
		switch {
		case up && over:
			free = append(free, k)
			base[k] = product(b.w, h.stock.width/b.h).less(product(b.h, h.stock.width/b.w))
		case over:
			base[k] = true
		}
	}
	out := [][]bool{base}
	if len(free) <= 3 {
		for set := 1; set < 1<<len(free); set++ {
			out = append(out, flipped(base, free, set))
		}
		return out
	}
	for i := range free {
		if i < 16 {
			out = append(out, flipped(base, free, 1<<i))
		}
	}
	return out
}

// flipped is a copy with those of a set changed.
func flipped(base []bool, free []int, set int) []bool {
	out := append([]bool(nil), base...)
	for i, k := range free {
		if i < 16 && set>>i&1 == 1 {
			out[k] = !out[k]
		}
	}
	return out
}
