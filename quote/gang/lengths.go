package gang

import (
	"cmp"
	"math"
	"slices"

	"pressworth/quote/nest"
)

// cut is one length with its layout, bought a number of times.
type cut struct {
	length int // in the stock
	times  int
	high   int64         // used
	counts []int         // copies of each blank on it
	rows   []row         // its layout in straight rows
	placed []nest.Placed // or any other
}

// choose says how many of each kind of rows, the highest first, go on a length.
type choose func(rest []row, length int64) (taken []int)

// cutRows puts rows on the lengths of a basket, the longest first. It is false where rows are left over.
func (st stock) cutRows(rows []row, kinds int, b basket, how choose) (out []cut, ok bool) {
	rest := slices.Clone(rows)
	slices.SortStableFunc(rest, func(a, b row) int { return cmp.Compare(b.high, a.high) })
	for j, left := range b {
		for left > 0 {
			c := fill(rest, how(rest, st.lengths[j].high), kinds, left)
			if c.times == 0 {
				break
			}
			c.length = j
			left -= c.times
			out = append(out, c)
		}
	}
	return out, !slices.ContainsFunc(rest, func(r row) bool { return r.times > 0 })
}

// cutAll puts rows on as many of one length as it takes, and changes each for the cheapest that holds its rows.
func (st stock) cutAll(rows []row, kinds, on int, how choose) ([]cut, bool) {
	b := make(basket, len(st.lengths))
	b[on] = math.MaxInt
	out, ok := st.cutRows(rows, kinds, b, how)
	for i := range out {
		out[i].length = st.cheapest(out[i].high)
	}
	return out, ok
}

// highest takes the highest rows that go on, one after another.
func highest(rest []row, length int64) []int {
	taken := make([]int, len(rest))
	for i, r := range rest {
		taken[i] = int(min(length/r.high, int64(r.times)))
		length -= int64(taken[i]) * r.high
	}
	return taken
}

// sums is room for the sums that rows make possible, used again and again.
type sums struct{ last, used []int32 }

func (s *sums) reset(n int64) {
	if int64(cap(s.last)) < n {
		s.last, s.used = make([]int32, n), make([]int32, n)
	}
	s.last, s.used = s.last[:n], s.used[:n]
	clear(s.last)
}

// fullest takes the highest row and what leaves the least of the length beside it (minimum bin slack, Gupta & Ho 1999).
func (s *sums) fullest(rest []row, length int64) []int {
	taken := make([]int, len(rest))
	first := slices.IndexFunc(rest, func(r row) bool { return r.times > 0 && r.high <= length })
	if first < 0 {
		return taken
	}
	var unit int64
	for _, r := range rest {
		unit = divisor(unit, r.high)
	}
	n := (length - rest[first].high) / unit
	if n > longest {
		return highest(rest, length)
	}
	s.reset(n + 1)
	last := s.last // by sum: 1 + the kind of row that was added last; the higher rows are added first
	last[0] = -1
	best := int64(0)
	for i, r := range rest {
		times := r.times
		if i == first {
			times--
		}
		best = max(best, s.addKind(i, int(r.high/unit), times))
		if best == n {
			break
		}
	}
	for x := best; x > 0; {
		i := last[x] - 1
		taken[i]++
		x -= rest[i].high / unit
	}
	taken[first]++
	return taken
}

// addKind notes the sums that up to so many rows of one kind make possible, and returns the largest of them.
func (s *sums) addKind(kind, high, times int) (best int64) {
	if times <= 0 {
		return 0
	}
	last, used := s.last, s.used
	clear(used)
	for x := high; x < len(last); x++ {
		if last[x] == 0 && last[x-high] != 0 && int(used[x-high]) < times {
			last[x], used[x] = int32(kind)+1, used[x-high]+1
			best = int64(x)
		}
	}
	return best
}

// fill takes rows off the rest, as chosen, and repeats that while there are enough of them, at most so many times.
func fill(rest []row, taken []int, kinds, times int) (c cut) {
	c.counts = make([]int, kinds)
	for i, n := range taken {
		if n > 0 && (c.times == 0 || rest[i].times/n < c.times) {
			c.times = rest[i].times / n
		}
	}
	c.times = min(c.times, times)
	for i, n := range taken {
		if n == 0 {
			continue
		}
		rest[i].times -= n * c.times
		r := rest[i]
		r.times = n
		c.high += int64(n) * r.high
		c.rows = append(c.rows, r)
		for _, s := range r.segs {
			c.counts[s.item] += n * s.n
		}
	}
	return c
}

// basketOf is what cuts buy.
func (st stock) basketOf(cuts []cut) basket {
	b := make(basket, len(st.lengths))
	for _, c := range cuts {
		b[c.length] = sum(b[c.length], c.times)
	}
	return b
}
