package gang

// cheapest looks for the cost of the cheapest basket that satisfies a cover alone, of the longest lengths as many as
// may be first. It needs no more memory than the demands themselves.
type cheapest struct {
	cover
	rest []int64 // by rule: demand left
	best Price
	left int // steps that may still be taken
}

// cheapest is the cost of the first of the cover's baskets, or a cost that none goes below.
func (c cover) cheapest() Price {
	x := &cheapest{cover: c, rest: c.demands(), best: most, left: nodes}
	if x.from(0, 0) {
		return x.best
	}
	bs := c.baskets()
	if _, cost, ok := bs.next(); ok {
		return cost
	}
	return bs.least()
}

// from tries the lengths from j on beside what is chosen; false where the steps ran out.
func (x *cheapest) from(j int, cost Price) bool {
	more := x.more(x.rest, j)
	least, ok := plus(cost, more)
	switch {
	case !ok || more == most || least >= x.best:
		return true
	case more == 0:
		x.best = cost
		return true
	case x.left == 0:
		return false
	}
	x.left--
	return x.with(j, cost) && x.from(j+1, cost)
}

// with tries one more of length j.
func (x *cheapest) with(j int, cost Price) bool {
	cost, ok := plus(cost, x.st.lengths[j].each)
	if !ok {
		return true
	}
	for i := range x.rules {
		x.rest[i] -= x.rules[i].holds[j]
	}
	done := x.from(j, cost)
	for i := range x.rules {
		x.rest[i] += x.rules[i].holds[j]
	}
	return done
}
