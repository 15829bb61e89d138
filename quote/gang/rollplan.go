package gang

import (
	"cmp"
	"slices"

	"pressworth/quote/nest"
)

// runs are the cuts as runs, like ones together, longer lengths first.
func (h *hunt) runs() []Run {
	slices.SortStableFunc(h.cuts, func(a, b cut) int { return cmp.Compare(a.length, b.length) })
	var out []Run
	for i := 0; i < len(h.cuts); i++ {
		c := h.cuts[i]
		for i+1 < len(h.cuts) && h.cuts[i+1].length == c.length && slices.Equal(h.cuts[i+1].counts, c.counts) {
			i++
			c.times += h.cuts[i].times
		}
		out = append(out, h.runOf(c))
	}
	return out
}

func (h *hunt) runOf(c cut) Run {
	l := h.stock.lengths[c.length]
	run := Run{Size: l.index, Sheets: c.times, Each: l.each}
	for k, n := range c.counts {
		if n > 0 {
			run.Items, run.Copies = append(run.Items, h.ids[k]), append(run.Copies, n)
		}
	}
	for _, p := range h.layout(c) {
		run.Placed = append(run.Placed, Placed{Item: h.ids[p.Piece], X: p.X, Y: p.Y, Turned: p.Turned})
	}
	return run
}

// layout is in straight rows where that can be.
func (h *hunt) layout(c cut) []nest.Placed {
	if placed, ok := nest.Straight(h.stock.sheet(c.length), h.some(c.counts)); ok {
		return placed
	}
	if c.rows == nil {
		return c.placed
	}
	var out []nest.Placed
	edge := h.stock.card.Edge
	y := edge
	for _, r := range c.rows {
		for range r.times {
			x := edge
			for _, s := range r.segs {
				w, _ := h.blanks[s.item].size(s.turned)
				for range s.n {
					out = append(out, nest.Placed{Piece: s.item, X: x, Y: y, Turned: s.turned})
					x += w
				}
			}
			y += r.high
		}
	}
	return out
}
