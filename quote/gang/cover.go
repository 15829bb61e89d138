package gang

import "math/bits"

// cover is what every basket of lengths that holds a job must satisfy: by each rule the lengths' capacities add up to
// the demand. The rules are the area, lengths and width cut down to what sides can add up to; the shortest open strip;
// and for each item by itself the copies that a length can hold.
type cover struct {
	st    stock
	rules []rule
}

type rule struct {
	demand int64
	capacity
}

// capacity is what lengths hold of something.
type capacity struct {
	holds []int64 // by length of the stock
	best  []int   // by length: of it and those after it the one that holds most for its price, -1: none holds anything
}

func (st stock) capacity(holds []int64) capacity {
	c := capacity{holds, make([]int, len(holds))}
	best := -1
	for j := len(holds) - 1; j >= 0; j-- {
		if holds[j] > 0 && (best < 0 || product(st.lengths[j].each, holds[best]).less(product(st.lengths[best].each, holds[j]))) {
			best = j
		}
		c.best[j] = best
	}
	return c
}

// measure is what the rules of a set of items have in common for all quantities.
type measure struct {
	blanks []blank
	width  int64    // that sides can add up to across the roll
	high   capacity // what they can add up to along it
	alone  []capacity
}

// measure finds out what lengths hold of the blanks.
func (st stock) measure(blanks []blank) measure {
	across, along := sides(blanks...)
	m := measure{blanks: blanks, width: reach(st.width, across)}
	high := make([]int64, len(st.lengths))
	for j, l := range st.lengths {
		high[j] = reach(l.high, along)
	}
	m.high = st.capacity(high)
	for _, b := range blanks {
		m.alone = append(m.alone, st.capacity(st.alone(b, len(blanks) >= various)))
	}
	return m
}

// sides lists the sides that may lie across the roll and along it.
func sides(blanks ...blank) (across, along []int64) {
	for _, b := range blanks {
		across, along = append(across, b.w), append(along, b.h)
		if b.turn {
			across, along = append(across, b.h), append(along, b.w)
		}
	}
	return across, along
}

// alone is, by length, how many copies of one blank no length holds more of: by area, or by rows if they lie all one way. One
// of very many blanks is measured roughly.
func (st stock) alone(b blank, roughly bool) (holds []int64) {
	across, along := sides(b)
	width := reach(st.width, across)
	for _, l := range st.lengths {
		switch {
		case b.turn && roughly:
			holds = append(holds, product(st.width, l.high).overArea(product(b.w, b.h)))
		case b.turn:
			holds = append(holds, product(width, reach(l.high, along)).overArea(product(b.w, b.h)))
		default:
			holds = append(holds, (st.width/b.w)*(l.high/b.h))
		}
	}
	return holds
}

// newCover makes the rules for need[k] copies of each blank.
func newCover(st stock, m measure, need []int) cover {
	c := cover{st: st, rules: make([]rule, 0, len(need)+3)}
	var total area
	for k, b := range m.blanks {
		total = total.plus(product(b.w, b.h).times(need[k]))
		c.rules = append(c.rules, rule{int64(need[k]), m.alone[k]})
	}
	if m.width > 0 {
		c.rules = append(c.rules, rule{total.over(m.width), m.high})
	}
	return c
}

// strip adds the rule that no open strip is shorter than high, gap to the border counted.
func (c *cover) strip(high int64) {
	holds := make([]int64, len(c.st.lengths))
	for j, l := range c.st.lengths {
		holds[j] = l.high
	}
	c.rules = append(c.rules, rule{high, c.st.capacity(holds)})
}

// demands are those of the rules.
func (c cover) demands() []int64 {
	out := make([]int64, len(c.rules))
	for i, r := range c.rules {
		out[i] = r.demand
	}
	return out
}

// more is the least that what is left of the demands costs, however the lengths from j on could be divided.
func (c cover) more(rest []int64, j int) (more Price) {
	for i := range c.rules {
		more = max(more, c.share(&c.rules[i], rest[i], j))
	}
	return more
}

// share is the least that a rest of a rule's demand costs, however the lengths from j on could be divided.
func (c cover) share(r *rule, rest int64, j int) Price {
	if rest <= 0 {
		return 0
	}
	if j == len(r.best) || r.best[j] < 0 {
		return most
	}
	best := r.best[j]
	return scaled(rest, c.st.lengths[best].each, r.holds[best])
}

// scaled is ceil(a × b / c), at the most an amount can hold.
func scaled(a, b, c int64) int64 {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return most
	}
	q, r := bits.Div64(hi, lo, uint64(c))
	if r > 0 {
		q++
	}
	return int64(min(q, most))
}
