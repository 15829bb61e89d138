package gang

import (
	"encoding/binary"

	"pressworth/quote/nest"
)

// found is what the packer said to one question about a length.
type found struct {
	placed  []nest.Placed
	verdict nest.Verdict
}

// mostLengths is the largest basket that the packer is asked about.
const mostLengths = 24

// packed asks the packer to put the job on a basket: the longest length is filled as well as it goes, then the next,
// and the last must hold the rest.
func (h *hunt) packed(b basket) (cuts []cut, ok bool) {
	left := b.count()
	if left > mostLengths {
		return nil, false
	}
	rest := append([]int(nil), h.need...)
	for j, n := range b {
		for ; n > 0; n-- {
			if left--; left == 0 {
				f := h.ask(j, rest)
				return append(cuts, cut{length: j, times: 1, counts: rest, placed: f.placed}), f.verdict == nest.Fits
			}
			c := h.fullest(j, rest)
			for k := range rest {
				rest[k] -= c.counts[k]
			}
			cuts = append(cuts, c)
			if empty(rest) {
				return cuts, true
			}
		}
	}
	return nil, false
}

func empty(counts []int) bool {
	for _, n := range counts {
		if n > 0 {
			return false
		}
	}
	return true
}

// ask says whether a length holds so many copies.
func (h *hunt) ask(j int, counts []int) found {
	key := h.question('a', j, counts)
	if f, ok := h.answers[key]; ok {
		return f
	}
	var f found
	f.placed, f.verdict = nest.Fit(h.stock.sheet(j), h.some(counts), h.effort(effort))
	h.remember(key, f)
	return f
}

// fullest lays copies on one length until it is as full as the packer's plain methods get it.
func (h *hunt) fullest(j int, counts []int) cut {
	some := h.enough(j, counts)
	key := h.question('f', j, some)
	f, ok := h.answers[key]
	if !ok {
		f.placed = h.fillOne(j, some)
		h.remember(key, f)
	}
	c := cut{length: j, times: 1, counts: make([]int, len(counts)), placed: f.placed}
	for _, p := range f.placed {
		c.counts[p.Piece]++
	}
	return c
}

// fillOne is the fullest of the sheets that the packer makes of the counts.
func (h *hunt) fillOne(j int, counts []int) []nest.Placed {
	placed, sheets, err := nest.Lay(h.stock.sheet(j), h.some(counts))
	if err != nil {
		return nil
	}
	used := make([]area, sheets)
	best := 0
	for _, p := range placed {
		b := h.blanks[p.Piece]
		used[p.Sheet] = used[p.Sheet].plus(product(b.w, b.h))
	}
	for i := range used {
		if used[best].less(used[i]) {
			best = i
		}
	}
	var out []nest.Placed
	for _, p := range placed {
		if p.Sheet == best {
			p.Sheet = 0
			out = append(out, p)
		}
	}
	return out
}

// enough cuts counts down, all in proportion, to about half as much again as a length can hold.
func (h *hunt) enough(j int, counts []int) []int {
	var all area
	for k, n := range counts {
		all = all.plus(product(h.blanks[k].w, h.blanks[k].h).times(n))
	}
	whole := product(h.stock.width, h.stock.lengths[j].high)
	ratio := 1 + all.overArea(whole) // so many lengths hold everything, by area
	out := append([]int(nil), counts...)
	if ratio <= 2 {
		return out
	}
	for k, n := range counts {
		out[k] = min(n, int(scaled(int64(n), 3, 2*(ratio-1)))+1)
	}
	return out
}

// some are pieces with counts.
func (h *hunt) some(counts []int) []nest.Piece {
	ps := append([]nest.Piece(nil), h.pieces...)
	for k := range ps {
		ps[k].Count = counts[k]
	}
	return ps
}

// question is the key of something asked of a length.
func (h *hunt) question(what byte, j int, counts []int) string {
	h.buf = binary.AppendUvarint(append(h.buf[:0], what), uint64(j))
	for k, i := range h.ids {
		h.buf = binary.AppendUvarint(h.buf, uint64(i))
		h.buf = binary.AppendUvarint(h.buf, uint64(counts[k]))
	}
	return string(h.buf)
}

// remember keeps an answer, and forgets all when they become too large.
func (r *Roll) remember(key string, f found) {
	if r.kept += 1 + len(f.placed); r.kept > 4*memory {
		clear(r.answers)
		r.kept = 1 + len(f.placed)
	}
	r.answers[key] = f
}
