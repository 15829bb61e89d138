package gang

import "pressworth/quote/nest"

// search finds the fewest sheets that hold the group, for no more than the limit. The cost of buying never falls with
// more sheets, so the fewest are the cheapest; and what fits on few sheets fits on more, so they are found by halving,
// from the least that is not ruled out upwards, where the answer mostly is.
func (s *Sheets) search(g group, h *hope) bool {
	size := &s.card.Sizes[h.size]
	h.open = true
	at := h.buying // probed next
	v := s.verdict(g, h.size, at.sheets)
	if v == nest.Fits {
		return true
	}
	if s.verdict(g, h.size, g.top()) == nest.CannotFit {
		h.open = false
		return false
	}
	found := false
	var low int  // what is below does not fit
	var high int // is out of reach, or fits
	for step := 1; ; step = sum(step, step) {
		if v == nest.CannotFit {
			h.from = at.sheets + 1
		}
		low = at.sheets + 1
		next := min(sum(at.sheets, step), g.top())
		b, ok := buy(size, h.row, max(next, low))
		if !ok || b.cost > h.limit || low > g.top() {
			high = max(next, low)
			break
		}
		at = b
		if v = s.verdict(g, h.size, at.sheets); v == nest.Fits {
			found, h.buying, high = true, at, at.sheets
			break
		}
	}
	return s.halve(g, h, low, high) || found
}

// halve looks for the fewest sheets from low up to, and without, high.
func (s *Sheets) halve(g group, h *hope, low, high int) (found bool) {
	for low < high {
		mid := low + (high-low)/2
		b, ok := buy(&s.card.Sizes[h.size], h.row, mid)
		if !ok || b.cost > h.limit {
			high = mid
			continue
		}
		if b.sheets >= high { // buying up leads to where was looked before
			high = mid
			continue
		}
		switch s.verdict(g, h.size, b.sheets) {
		case nest.Fits:
			found, h.buying, high = true, b, min(mid, b.sheets)
		case nest.CannotFit:
			h.from = max(h.from, b.sheets+1)
			low = b.sheets + 1
		default:
			low = b.sheets + 1
		}
	}
	return found
}
