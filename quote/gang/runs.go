package gang

import (
	"encoding/binary"

	"pressworth/quote/nest"
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

	// No run of the group costs less than low; possible is false where none exists.
	possible bool
	low      Price
}

// effort is how long the packer looks at one question.
const effort = 2000

func (g group) key(b []byte) []byte {
	for k, i := range g.items {
		b = binary.AppendUvarint(b, uint64(i))
		b = binary.AppendUvarint(b, uint64(g.need[k]))
	}
	return b
}

// run finds the cheapest run of a group: cost, then fewer sheets, then the size listed first.
func (s *Sheets) run(g group) run {
	s.buf = g.key(s.buf[:0])
	if r, ok := s.runs[string(s.buf)]; ok {
		return r
	}
	key := string(s.buf)
	r := s.findRun(g)
	if len(s.runs) >= memory {
		clear(s.runs)
	}
	s.runs[key] = r
	return r
}

func (s *Sheets) findRun(g group) (best run) {
	inks, designs := s.inks.union(g.items)
	if s.card.MaxInks > 0 && inks > s.card.MaxInks {
		return run{}
	}
	perDesign, ok1 := times(designs, s.card.SetupPerDesign)
	perInk, ok2 := times(inks, s.card.SetupPerInk)
	setup, ok3 := plus(perDesign, perInk)
	if !ok1 || !ok2 || !ok3 {
		return run{}
	}
	for size := range s.card.Sizes {
		row := rowFor(&s.card.Sizes[size], inks)
		if row < 0 {
			continue
		}
		r := s.onSize(g, size, row)
		r.inks, r.setup = inks, setup
		best.take(r)
	}
	return best
}

// take keeps the better of two runs, and the lower bound of both.
func (best *run) take(r run) {
	if r.possible {
		if low, ok := plus(r.low, r.setup); ok && (!best.possible || low < best.low) {
			best.possible, best.low = true, low
		}
	}
	if !r.ok {
		return
	}
	cost, ok := plus(r.buying.cost, r.setup)
	if !ok {
		return
	}
	if !best.ok || cost < best.cost || cost == best.cost && r.buying.sheets < best.buying.sheets {
		low, possible := best.low, best.possible
		*best = r
		best.cost, best.low, best.possible = cost, low, possible
	}
}

// onSize finds the fewest sheets of one size that hold the group, with how few are not ruled out. The cost of buying
// never falls with more sheets, so the fewest are the cheapest.
func (s *Sheets) onSize(g group, size, row int) (r run) {
	r.size, r.row = size, row
	top := 0 // on so many sheets one copy of each is enough
	for _, d := range g.need {
		top = max(top, d)
	}
	one := s.verdict(g, size, top)
	if one == nest.CannotFit {
		return r
	}
	size0 := &s.card.Sizes[size]
	from := s.fewest(g, size) // fewer are ruled out
	r.setLow(size0, row, from)
	if one != nest.Fits {
		return r
	}
	high, ok := buy(size0, row, top) // fits
	if !ok {
		return r
	}
	for low, step := from, 1; ; step *= 2 {
		b, ok := buy(size0, row, low)
		if !ok || b.sheets >= high.sheets {
			break
		}
		v := s.verdict(g, size, b.sheets)
		if v == nest.Fits {
			high = b
			break
		}
		if v == nest.CannotFit {
			r.setLow(size0, row, b.sheets+1)
		}
		from = b.sheets + 1
		low = b.sheets + step
	}
	for from < high.sheets {
		b, ok := buy(size0, row, from+(high.sheets-from)/2)
		if !ok || b.sheets >= high.sheets {
			b, ok = buy(size0, row, from)
			if !ok || b.sheets >= high.sheets {
				break
			}
		}
		switch s.verdict(g, size, b.sheets) {
		case nest.Fits:
			high = b
		case nest.CannotFit:
			r.setLow(size0, row, b.sheets+1)
			fallthrough
		default:
			from = b.sheets + 1
		}
	}
	r.ok, r.buying = true, high
	return r
}

// setLow says that fewer than x sheets are ruled out.
func (r *run) setLow(size *SheetSize, row, x int) {
	if b, ok := buy(size, row, x); ok && (!r.possible || b.cost > r.low) {
		r.possible, r.low = true, b.cost
	}
}

// fewest is the smallest number of sheets whose area could hold the group.
func (s *Sheets) fewest(g group, size int) int {
	sz := s.card.Sizes[size]
	whole := product(sz.W-2*sz.Edge+sz.Gap, sz.H-2*sz.Edge+sz.Gap)
	top := 1
	for _, d := range g.need {
		top = max(top, d)
	}
	low := 1
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

// verdict says whether x sheets of a size hold the group: ceil(need / x) copies of each on every sheet.
func (s *Sheets) verdict(g group, size, x int) nest.Verdict {
	sz := s.card.Sizes[size]
	s.buf = binary.AppendUvarint(s.buf[:0], uint64(size))
	for k, i := range g.items {
		s.buf = binary.AppendUvarint(s.buf, uint64(s.shapes[i]))
		s.buf = binary.AppendUvarint(s.buf, uint64(parts(g.need[k], x)))
	}
	if v, ok := s.fits[string(s.buf)]; ok {
		return v
	}
	key := string(s.buf)
	_, v := nest.Fit(sheetOf(sz), s.pieces(g, x), nest.Effort{Steps: effort})
	if len(s.fits) >= memory {
		clear(s.fits)
	}
	s.fits[key] = v
	return v
}

func sheetOf(sz SheetSize) nest.Sheet {
	return nest.Sheet{W: sz.W, H: sz.H, Edge: sz.Edge, Gap: sz.Gap}
}

// pieces are the copies on each of x sheets.
func (s *Sheets) pieces(g group, x int) []nest.Piece {
	ps := make([]nest.Piece, len(g.items))
	for k, i := range g.items {
		it := s.items[i]
		ps[k] = nest.Piece{W: it.W, H: it.H, Turn: it.Turn, Count: parts(g.need[k], x)}
	}
	return ps
}
