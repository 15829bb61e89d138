package gang

import "pressworth/quote/nest"

// hunt is the search for the cheapest basket that holds one job.
type hunt struct {
	*Roll
	ids    []int // items that have need
	need   []int
	blanks []blank
	pieces []nest.Piece
	rows   [][]row // of the whole job, the shortest layout first
	sums   sums

	found bool
	cost  Price
	cuts  []cut
	bound Price
}

// The effort of the search over baskets, chosen by measuring 100 sets like a shop's (2 to 5 designs, 12 to 80 copies).
const (
	// slack is the part (one in so many) of an open strip's length that lengths may be shorter and still be tried where
	// pieces are various; else, shorter ones were found to take the place of those that hold the job.
	slack = 50
	// mostBaskets is how many baskets are considered, and inTurn how many of them one after another.
	mostBaskets, inTurn = 16, 2
	// shuffle is the packer's effort over a whole basket.
	shuffle = 800
)

func (h *hunt) run() {
	if len(h.ids) == 0 {
		h.found = true
		return
	}
	if !h.served() {
		return
	}
	h.straight()
	if !h.found {
		return
	}
	c := newCover(h.stock, h.measures(h.ids), h.need)
	if h.prove(c); h.bound == h.cost {
		return
	}
	h.apart()
	open := h.stock.sheet(0)
	open.H = 0
	s, err := nest.Strip(open, h.pieces, nest.Effort{})
	if err != nil {
		return
	}
	border := open.Gap - 2*open.Edge
	c.strip(s.Bound + border)
	if h.prove(c); h.bound == h.cost {
		return
	}
	high := s.Length + border
	if h.various() {
		high -= high / slack
	}
	c.strip(high)
	h.improve(c)
}

// beyond says whether the job is proven to cost more than a limit, and how much at least.
func (h *hunt) beyond(limit Price) (low Price, proven bool) {
	if limit >= most-1 || len(h.ids) == 0 || !h.served() {
		return 0, false
	}
	defer func() { h.cost, h.bound = 0, 0 }()
	h.cost = limit + 1 // as if that were found
	c := newCover(h.stock, h.measures(h.ids), h.need)
	if h.prove(c); h.bound > limit {
		return h.bound, true
	}
	open := h.stock.sheet(0)
	open.H = 0
	bound, err := nest.StripBound(open, h.pieces)
	if err != nil {
		return 0, false
	}
	c.strip(bound + open.Gap - 2*open.Edge)
	h.prove(c)
	return h.bound, h.bound > limit
}

// served says whether the roll takes every item.
func (h *hunt) served() bool {
	for _, i := range h.ids {
		if !h.stock.takes(h.items[i]) {
			return false
		}
	}
	return true
}

// prove raises the bound to the cheapest basket that satisfies the rules and is not known to be too small.
func (h *hunt) prove(c cover) {
	h.bound = 0
	bs := c.baskets()
	for h.bound < h.cost {
		b, cost, ok := bs.next()
		if !ok {
			h.bound = max(h.bound, min(bs.least(), h.cost))
			return
		}
		h.bound = min(cost, h.cost)
		if b.count() > 1 || !h.tooSmall(b) {
			return
		}
	}
}

// tooSmall says whether a basket of one length is proven not to hold the job.
func (h *hunt) tooSmall(b basket) bool {
	for j, n := range b {
		if n > 0 {
			return h.ask(j, h.need).verdict == nest.CannotFit
		}
	}
	return true
}

// improve tries baskets that could hold the job: the cheapest one after another, and of the rest the middle one, then
// the middle of the cheaper or the dearer half.
func (h *hunt) improve(c cover) {
	list := h.below(c)
	for _, b := range list[:min(inTurn, len(list))] {
		if h.holds(b) {
			return
		}
	}
	low, high := inTurn, len(list)
	for low < high {
		mid := min(low+16, low+(high-low)/2)
		if h.holds(list[mid]) {
			high = mid
		} else {
			low = mid + 1
		}
	}
}

// below lists the cheapest baskets that cost less than what was found.
func (h *hunt) below(c cover) (list []basket) {
	for bs := c.baskets(); len(list) < mostBaskets; {
		b, cost, ok := bs.next()
		if !ok || cost >= h.cost {
			break
		}
		list = append(list, b)
	}
	return list
}

// holds tries to put the job on a basket, by rows, length by length, and on all lengths at once.
func (h *hunt) holds(b basket) bool {
	cost, _ := h.stock.price(b)
	for _, try := range []func(basket) ([]cut, bool){h.rowsOn, h.packed, h.shuffled} {
		if cuts, ok := try(b); ok {
			h.take(cuts)
			if h.cost <= cost {
				return true
			}
		}
	}
	return false
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
