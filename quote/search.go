package quote

import (
	"math"
	"slices"
)

// mostCombinations is up to how many combinations of methods all are tried.
const mostCombinations = 4096

// combination is a card for each placement (-1 where it takes no part) with the job's cost.
type combination struct {
	choice []int
	cost   int64
	figure int64 // cost and mixing, in units of 1/mixingScale minor units: what methods are chosen by
	ok     bool
}

// better tells whether a beats b: a lower figure, ties to the card listed first for the earliest placement.
func (a combination) better(b combination) bool {
	if !b.ok || a.figure != b.figure {
		return !b.ok || a.figure < b.figure
	}
	return slices.Compare(a.choice, b.choice) < 0
}

// search looks for the best combination at one quantity.
type search struct {
	s       *state
	allowed [][]int
	low     [][]int64 // by placement, allowed card: no less cost than this comes with it
	rest    []int64   // the least that placements from here on cost
	best    combination
	choice  []int
	scratch scratch
	cheap   *setting // nothing costs more in it than in any other that the allowed cards lead to
	fixed   int64    // of its blanks and spoilage, what no setting goes below
}

// scratch is room that the evaluation of a combination uses again.
type scratch struct {
	pressed []bool
	used    []bool
	on      [][]int // placements by gang card
	value   []int64
	orders  []bool
	key     []byte
}

func (m *model) newScratch() scratch {
	return scratch{
		pressed: make([]bool, len(m.groups)), used: make([]bool, len(m.cards)), on: make([][]int, len(m.cards)),
		value: make([]int64, len(m.job.Suppliers)), orders: make([]bool, len(m.job.Suppliers)),
	}
}

// best finds the best combination out of the allowed cards; it is not ok where no combination serves. The hint is
// tried first and changes nothing but speed. The second result tells that not every combination was weighed.
func (s *state) best(allowed [][]int, hint []int) (combination, bool) {
	return s.search(allowed, hint, 2)
}

// search is best; where not all combinations are weighed, it changes so many placements at a time.
func (s *state) search(allowed [][]int, hint []int, together int) (combination, bool) {
	x := &search{s: s, allowed: allowed, choice: make([]int, len(allowed)), scratch: s.m.newScratch()}
	count := 1
	for p, cards := range allowed {
		if x.choice[p] = -1; s.active[p] {
			count = min(count*len(cards), mostCombinations+1)
		}
	}
	if count == 0 {
		return combination{}, false
	}
	x.bounds()
	x.seed(hint)
	if count > mostCombinations {
		x.climb(together)
		return x.best, true
	}
	x.descend(0, x.base())
	return x.best, false
}

// lowSetting is a setting in which nothing costs more than in any other that the allowed cards lead to.
func (x *search) lowSetting() (t *setting, fixed int64) {
	pressed := make([]bool, len(x.s.m.groups))
	for p, cards := range x.allowed {
		for _, c := range cards {
			if x.s.m.cards[c].Press == nil {
				return x.s.with(make([]bool, len(pressed))), 0
			}
		}
		x.s.m.press(pressed, x.s, p)
	}
	t = x.s.with(pressed)
	return t, t.fixed
}

// press marks the groups on which a placement is pressed.
func (m *model) press(pressed []bool, s *state, p int) {
	if !s.active[p] {
		return
	}
	for _, l := range m.placements[p].on {
		if s.lineQty[l] > 0 {
			pressed[m.lines[l].group] = true
		}
	}
}

func (x *search) bounds() {
	x.cheap, x.fixed = x.lowSetting()
	x.low, x.rest = make([][]int64, len(x.allowed)), make([]int64, len(x.allowed)+1)
	for p := len(x.allowed) - 1; p >= 0; p-- {
		least := int64(-1)
		for _, c := range x.allowed[p] {
			low := x.cheap.lowest(c, p)
			x.low[p] = append(x.low[p], low)
			if least < 0 || low < least {
				least = low
			}
		}
		x.rest[p] = add(x.rest[p+1], max(least, 0))
	}
}

// lowest is less than or equal to what a placement adds to the cost on a card.
func (t *setting) lowest(c, p int) int64 {
	m, cd := t.m, &t.m.cards[c]
	var low int64
	if cd.sheets != nil || cd.roll != nil {
		low = t.gangLow(c, p)
	} else {
		low, _ = t.placementOn(c, p)
	}
	if cd.Press == nil {
		return low
	}
	return add(low, max(0, m.timeCost(add(cd.setup, mul(cd.seconds, t.hitsOn[p])), t.hitsOn[p])-2))
}

// perArea is less than or equal to what a unit of area costs on a sheet or roll card, in minor units. It only prunes
// the search, so that it need not be exact, but must not be too much.
func (c *card) perArea() float64 {
	if c.areaPrice == 0 {
		least := math.Inf(1)
		for _, s := range c.sheetOf.Sizes {
			for _, row := range s.Prices {
				for _, b := range row.Each {
					least = min(least, float64(b.Each)/float64(c.priceScale)/(float64(s.W)*float64(s.H)))
				}
			}
		}
		for _, l := range c.rollOf.Lengths {
			least = min(least, float64(l.Each)/float64(c.priceScale)/(float64(c.rollOf.W)*float64(l.Length)))
		}
		c.areaPrice = least * (1 - 1e-9)
	}
	return c.areaPrice
}

// timeCost is labour, overhead and wear of a time at the press with its hits.
func (m *model) timeCost(seconds, hits int64) int64 {
	return add(add(m.labour.round(seconds, 0), m.overhead.round(seconds, 0)), m.wear.round(hits, seconds))
}

// base is less than or equal to what the job costs before any placement.
func (x *search) base() int64 {
	t := x.cheap
	return add(add(x.fixed, t.constantCost()), t.m.timeCost(t.handlingTime(), 0)) - 4
}

// seed evaluates some likely combinations, so that the search has something to beat.
func (x *search) seed(hint []int) {
	if hint != nil {
		x.try(func(p int) int { return max(0, slices.Index(x.allowed[p], hint[p])) })
	}
	x.try(func(p int) int { return slices.Index(x.low[p], slices.Min(x.low[p])) })
	for c := range x.s.m.cards {
		x.try(func(p int) int {
			if k := slices.Index(x.allowed[p], c); k >= 0 {
				return k
			}
			return slices.Index(x.low[p], slices.Min(x.low[p]))
		})
	}
}

// try evaluates the combination that picks an index into each placement's allowed cards.
func (x *search) try(pick func(p int) int) {
	for p, cards := range x.allowed {
		if len(cards) > 0 {
			x.choice[p] = cards[pick(p)]
		}
	}
	x.evaluate()
}

// evaluate works out the present choice and keeps it where it is the best so far.
func (x *search) evaluate() bool {
	c := x.s.weigh(x.choice, &x.scratch, x.best)
	if !c.ok || !c.better(x.best) {
		return false
	}
	c.choice = slices.Clone(c.choice)
	x.best = c
	return true
}

// descend tries every combination of the placements from p on that may still be the best.
func (x *search) descend(p int, low int64) {
	if p == len(x.allowed) {
		x.evaluate()
		return
	}
	if len(x.allowed[p]) == 0 {
		x.choice[p] = -1
		x.descend(p+1, low)
		return
	}
	for k, c := range x.allowed[p] {
		least := add(low, x.low[p][k])
		if x.best.ok && mul(add(least, x.rest[p+1]), x.s.m.mixingScale) > x.best.figure {
			continue
		}
		x.choice[p] = c
		x.descend(p+1, least)
	}
}

// climb changes up to so many placements at a time, for as long as that helps.
func (x *search) climb(together int) {
	for improved := x.best.ok; improved; {
		improved = x.change(0, together)
	}
}

// change tries to better the best combination by up to n changes in the placements from p on.
func (x *search) change(from, n int) (improved bool) {
	for p := from; p < len(x.allowed); p++ {
		for _, c := range x.allowed[p] {
			if c == x.best.choice[p] {
				continue
			}
			before := slices.Clone(x.choice)
			copy(x.choice, x.best.choice)
			if n == 1 {
				copy(x.choice, before)
			}
			x.choice[p] = c
			if x.evaluate() || n > 1 && x.change(p+1, n-1) {
				return true
			}
			copy(x.choice, before)
		}
	}
	return false
}
