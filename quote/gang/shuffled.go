package gang

import (
	"cmp"
	"slices"

	"pressworth/quote/nest"
)

// mostShuffled is the largest number of pieces with which shuffling is worth its time, mostVarious the one where the
// pieces are of various sizes: so many blanks, at least.
const (
	mostShuffled = 250
	mostVarious  = 1000
	various      = 30
)

// various says whether the pieces are of many sizes: then straight rows are poor, and a search takes more steps.
func (h *hunt) various() bool { return len(h.blanks) >= various && h.total() <= mostVarious }

// effort of the packer over a basket, and over one question: where pieces are various, as many as lay them some times.
func (h *hunt) effort(usual int) nest.Effort {
	if h.various() {
		return nest.Effort{Steps: max(usual, layings*h.total()*len(h.blanks)/16)}
	}
	return nest.Effort{Steps: usual}
}

// layings is how many times various pieces are laid in one search.
const layings = 30

// shuffled asks the packer to put the job on all lengths of a basket at once. It knows sheets of one size only: shorter
// lengths are the longest with a piece across the roll that stands for what they lack.
func (h *hunt) shuffled(b basket) (cuts []cut, ok bool) {
	if b.count() < 2 || b.count() > mostLengths || h.total() > mostShuffled && !h.various() {
		return nil, false
	}
	on := slices.IndexFunc(b, func(n int) bool { return n > 0 })
	ps := slices.Clone(h.pieces)
	card := h.stock.card
	for j, n := range b {
		lacks := h.stock.lengths[on].high - h.stock.lengths[j].high - card.Gap
		if n > 0 && lacks > 0 {
			ps = append(ps, nest.Piece{W: card.W - 2*card.Edge, H: lacks, Count: n})
		}
	}
	res, err := nest.Bins(h.stock.sheet(on), ps, h.effort(shuffle))
	if err != nil || res.Sheets > b.count() {
		return nil, false
	}
	sheets := make([][]nest.Placed, res.Sheets)
	for _, p := range res.Placed {
		sheets[p.Sheet] = append(sheets[p.Sheet], p)
	}
	for _, placed := range sheets {
		if c := h.shortened(placed, ps); c.high > 0 {
			cuts = append(cuts, c)
		}
	}
	return cuts, true
}

// shortened is a sheet without the pieces that stand for missing length, on the cheapest length for it: what lies
// beyond them moves up.
func (h *hunt) shortened(placed []nest.Placed, ps []nest.Piece) cut {
	c := cut{times: 1, counts: make([]int, len(h.pieces))}
	slices.SortStableFunc(placed, func(a, b nest.Placed) int { return cmp.Compare(a.Y, b.Y) })
	card := h.stock.card
	var gone int64
	for _, p := range placed {
		if p.Piece >= len(h.pieces) {
			gone += ps[p.Piece].H + card.Gap
			continue
		}
		p.Sheet = 0
		p.Y -= gone
		_, high := h.blanks[p.Piece].size(p.Turned)
		c.high = max(c.high, p.Y-card.Edge+high)
		c.counts[p.Piece]++
		c.placed = append(c.placed, p)
	}
	c.length = h.stock.cheapest(c.high)
	return c
}

// total is the number of pieces.
func (h *hunt) total() (n int) {
	for _, d := range h.need {
		n = sum(n, d)
	}
	return n
}
