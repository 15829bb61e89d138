package gang

import (
	"cmp"
	"slices"
)

// straight tries straight rows on each length by itself.
func (h *hunt) straight() {
	h.layRows()
	for n, rows := range h.rows {
		for on := range h.stock.lengths {
			for _, how := range h.chooses(n) {
				if cuts, ok := h.stock.cutAll(rows, len(h.blanks), on, how); ok {
					h.take(cuts)
				}
			}
		}
	}
}

// rowsOn tries straight rows on a basket.
func (h *hunt) rowsOn(b basket) ([]cut, bool) {
	for n, rows := range h.rows {
		for _, how := range h.chooses(n) {
			if cuts, ok := h.stock.cutRows(rows, len(h.blanks), b, how); ok {
				return cuts, true
			}
		}
	}
	return nil, false
}

// chooses are the ways of choosing rows for a length; the slow one is for the shortest two layouts only, of various pieces
// for the shortest.
func (h *hunt) chooses(layout int) []choose {
	if layout < 2 && (layout == 0 || !h.various()) {
		return []choose{highest, h.sums.fullest}
	}
	return []choose{highest}
}

// layRows lays the blanks in rows each way, the shortest layout first.
func (h *hunt) layRows() {
	type layout struct {
		rows []row
		high int64
	}
	var all []layout
	for _, turned := range h.lay() {
		l := layout{rows: rowsOf(h.stock.width, h.blanks, h.need, turned)}
		for _, r := range l.rows {
			l.high += r.high * int64(r.times)
		}
		all = append(all, l)
	}
	slices.SortStableFunc(all, func(a, b layout) int { return cmp.Compare(a.high, b.high) })
	for _, l := range all {
		h.rows = append(h.rows, l.rows)
	}
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
	most := 16
	if len(free) > most {
		most = 4 // of many each tells little
	}
	for i := range min(len(free), most) {
		out = append(out, flipped(base, free, 1<<i))
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
