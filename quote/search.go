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
	press   [][]int64 // of that, what is not paid for the card's sheets or lengths
	least   [][]int64 // by placement, allowed card: no less do the card's sheets or lengths cost that hold it
	rest    []int64   // the least that placements from here on cost
	worked  []int64   // the same without sheets and lengths
	best    combination
	choice  []int
	scratch scratch
	cheap   *setting // nothing costs more in it than in any other that the allowed cards lead to
	fixed   int64    // of its blanks and spoilage, what no setting goes below
	node    node
	effort  int // steps that may still be taken; where all combinations are weighed it is not looked at
	bounded bool
}

// scratch is room that the evaluation of a combination uses again.
type scratch struct {
	pressed []bool
	used    []bool
	on      [][]int // placements by gang card
	value   []int64
	orders  []bool
	key     []byte
	planned int // the effort of the plans for the last combination weighed
	last    *setting
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
	return s.search(allowed, hint, bestEffort)
}

// Steps of a search that does not weigh every combination: for the job's methods, and for a runner-up. A combination
// that is weighed counts 1, a plan for it by the square of its placements.
const (
	bestEffort   = 8_000
	secondEffort = 1_500
)

// search is best with so many steps where not all combinations are weighed.
func (s *state) search(allowed [][]int, hint []int, effort int) (combination, bool) {
	x := &search{s: s, allowed: allowed, choice: make([]int, len(allowed)), scratch: s.m.newScratch(), effort: effort}
	count := 1
	for p, cards := range allowed {
		if x.choice[p] = -1; s.active[p] {
			count = min(count*len(cards), mostDescended+1)
		}
	}
	if count == 0 {
		return combination{}, false
	}
	x.bounds()
	if count <= mostCombinations {
		x.seed(hint)
		x.descend(0)
		return x.best, false
	}
	x.roam(hint, count)
	return x.best, true
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
		for _, g := range x.s.groupsOf(p) {
			pressed[g] = true
		}
	}
	t = x.s.with(pressed)
	return t, t.fixed
}

// groupsOf are the groups on which a placement is pressed, if it is pressed.
func (s *state) groupsOf(p int) []int {
	if s.groupsOn == nil {
		s.groupsOn = make([][]int, len(s.m.placements))
		for p := range s.m.placements {
			if s.active[p] {
				s.groupsOn[p] = s.m.groupsUnder(p, s)
			}
		}
	}
	return s.groupsOn[p]
}

func (m *model) groupsUnder(p int, s *state) (groups []int) {
	seen := make([]bool, len(m.groups))
	for _, l := range m.placements[p].on {
		if g := m.lines[l].group; s.lineQty[l] > 0 && !seen[g] {
			seen[g] = true
			groups = append(groups, g)
		}
	}
	return groups
}

func (x *search) bounds() {
	x.cheap, x.fixed = x.lowSetting()
	n := len(x.allowed)
	x.low, x.press, x.least = make([][]int64, n), make([][]int64, n), make([][]int64, n)
	x.rest, x.worked = make([]int64, n+1), make([]int64, n+1)
	for p := n - 1; p >= 0; p-- {
		for _, c := range x.allowed[p] {
			press, bought, least := x.cheap.lowest(c, p)
			x.low[p] = append(x.low[p], add(press, bought))
			x.press[p] = append(x.press[p], press)
			x.least[p] = append(x.least[p], least)
		}
		x.rest[p], x.worked[p] = x.rest[p+1], x.worked[p+1]
		if len(x.allowed[p]) > 0 {
			x.rest[p] = add(x.rest[p], max(0, slices.Min(x.low[p])))
			x.worked[p] = add(x.worked[p], max(0, slices.Min(x.press[p])))
		}
	}
	x.node.reset(len(x.s.m.cards), x.base())
}

// lowest is less than or equal to what a placement adds to the cost on a card: at the press, or for an area or piece
// card in all; and by its area to what is bought of sheets or lengths, which are never less than least.
func (t *setting) lowest(c, p int) (press, bought, least int64) {
	m, cd := t.m, &t.m.cards[c]
	if cd.sheets != nil || cd.roll != nil {
		bought = t.gangLow(c, p)
		least = max(bought, t.gangLeast(c, p))
		if cd.roll != nil {
			press = m.rollSetup(cd, []int{p})
		}
	} else {
		press, _ = t.placementOn(c, p)
	}
	if cd.Press == nil {
		return press, bought, least
	}
	hits := t.hitsOn[p]
	time := m.timeCost(add(cd.setup, mul(cd.seconds, hits)), hits)
	return add(press, max(0, time-2)), bought, least
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

// seed evaluates some likely combinations, so that the search has something to beat: the likeliest first, so that the
// others need not be planned.
func (x *search) seed(hint []int) {
	g := newGuesses(x)
	if hint != nil {
		x.pick(func(p int) int { return max(0, slices.Index(x.allowed[p], hint[p])) })
		g.note()
	}
	for _, pick := range x.seeds() {
		x.pick(pick)
		g.note()
	}
	for _, c := range g.best {
		copy(x.choice, c.choice)
		x.evaluate()
	}
}

// seeds are likely combinations, as indices into each placement's allowed cards: what is cheapest by itself, and as
// much as possible on one card.
func (x *search) seeds() []func(p int) int {
	cheapest := func(p int) int { return slices.Index(x.low[p], slices.Min(x.low[p])) }
	all := []func(p int) int{cheapest}
	for c := range x.s.m.cards {
		all = append(all, func(p int) int {
			if k := slices.Index(x.allowed[p], c); k >= 0 {
				return k
			}
			return cheapest(p)
		})
	}
	return all
}

// pick is the combination with an index into each placement's allowed cards.
func (x *search) pick(pick func(p int) int) {
	for p, cards := range x.allowed {
		if len(cards) > 0 {
			x.choice[p] = cards[pick(p)]
		}
	}
}

// evaluate works out the present choice and keeps it where it is the best so far.
func (x *search) evaluate() bool {
	c := x.s.weigh(x.choice, &x.scratch, x.best)
	x.effort -= 1 + x.scratch.planned
	if !c.ok || !c.better(x.best) {
		return false
	}
	c.choice = slices.Clone(c.choice)
	x.best = c
	return true
}

// descend tries every combination of the placements from p on that may still be the best. It is false where the search
// is bounded and its steps ran out.
func (x *search) descend(p int) bool {
	if p == len(x.allowed) {
		x.evaluate()
		return !x.bounded || x.effort > 0
	}
	if len(x.allowed[p]) == 0 {
		x.choice[p] = -1
		return x.descend(p + 1)
	}
	for k, c := range x.allowed[p] {
		n := x.node.with(x, p, k)
		if x.best.ok && x.node.figure(x, p+1) > x.best.figure {
			x.node.back(n)
			continue
		}
		x.choice[p] = c
		done := x.descend(p + 1)
		x.node.back(n)
		if !done {
			return false
		}
	}
	return true
}
