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

// cutRows puts rows on the lengths of a basket, the longest first: on each as many as go on it, the highest first. It is
// false where rows are left over.
func (st stock) cutRows(rows []row, kinds int, b basket) (out []cut, ok bool) {
	rest := slices.Clone(rows)
	slices.SortStableFunc(rest, func(a, b row) int { return cmp.Compare(b.high, a.high) })
	for j, left := range b {
		for left > 0 {
			c := fill(rest, st.lengths[j].high, kinds, left)
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
func (st stock) cutAll(rows []row, kinds, on int) ([]cut, bool) {
	b := make(basket, len(st.lengths))
	b[on] = math.MaxInt
	out, ok := st.cutRows(rows, kinds, b)
	for i := range out {
		out[i].length = st.cheapest(out[i].high)
	}
	return out, ok
}

// fill takes rows off the rest, highest first, until a length is full, and repeats that while there are enough of them,
// at most so many times.
func fill(rest []row, length int64, kinds, times int) (c cut) {
	taken := make([]int, len(rest))
	for i, r := range rest {
		n := int(min((length-c.high)/r.high, int64(r.times)))
		if n == 0 {
			continue
		}
		taken[i] = n
		c.high += int64(n) * r.high
		if c.times == 0 || r.times/n < c.times {
			c.times = r.times / n
		}
	}
	c.times = min(c.times, times)
	c.counts = make([]int, kinds)
	for i, n := range taken {
		if n == 0 {
			continue
		}
		rest[i].times -= n * c.times
		r := rest[i]
		r.times = n
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
