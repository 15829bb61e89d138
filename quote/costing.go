package quote

import (
	"pressworth/quote/money"
)

// costing is one combination worked out in full: its cost lines, each split over garment lines.
type costing struct {
	*setting
	choice    []int
	heuristic bool
	seconds   int64
	hits      int64
	cards     int // different pressed ones
	plans     []planned
	lines     []costEntry
	total     int64
	lineCost  []int64
	transfers []int64 // by placement
	work      []int64 // by line: time in hand and at the press
	presses   []int64 // by line: hits
	failed    bool
}

// costEntry is one cost line: ref is the index of what it belongs to, by its kind.
type costEntry struct {
	kind   string
	ref    int
	amount int64
	split  []int64 // by garment line
}

// costs works a combination out in full.
func (s *state) costs(choice []int) *costing {
	r := s.m.newScratch()
	t := s.settingFor(choice, &r)
	c := &costing{setting: t, choice: choice, transfers: make([]int64, len(s.m.placements))}
	c.lineCost, c.work, c.presses = make([]int64, len(s.m.lines)), make([]int64, len(s.m.lines)), make([]int64, len(s.m.lines))
	c.time()
	c.blankLines()
	c.transferLines()
	c.extraLines()
	c.freightLines()
	c.shopLines()
	for _, l := range c.lines {
		c.total = add(c.total, l.amount)
		for g, part := range l.split {
			c.lineCost[g] = add(c.lineCost[g], part)
		}
	}
	return c
}

func (c *costing) add(kind string, ref int, amount int64, split []int64) {
	c.lines = append(c.lines, costEntry{kind, ref, amount, split})
}

// own puts an amount on one garment line alone.
func (c *costing) own(line int, amount int64) []int64 {
	split := make([]int64, len(c.m.lines))
	split[line] = amount
	return split
}

// share splits an amount over garment lines with pieces, by weight.
func (c *costing) share(amount int64, weights []int64) []int64 {
	return c.shareOver(amount, weights, func(line int) bool { return c.lineQty[line] > 0 })
}

// shareOver splits an amount over the garment lines that take part, by weight; all zero: equally.
func (c *costing) shareOver(amount int64, weights []int64, takesPart func(line int) bool) []int64 {
	var index []int
	var of []int64
	for l, w := range weights {
		if takesPart(l) {
			index, of = append(index, l), append(of, w)
		}
	}
	split := make([]int64, len(c.m.lines))
	for k, part := range money.Share(amount, of) {
		split[index[k]] = part
	}
	return split
}

// byPieces are the pieces of each garment line, of those that take part.
func (c *costing) byPieces(takesPart func(line int) bool) []int64 {
	w := make([]int64, len(c.m.lines))
	for l, n := range c.lineQty {
		if takesPart(l) {
			w[l] = int64(n)
		}
	}
	return w
}

func every(int) bool { return true }

// orPieces are weights, or the pieces where all of them are zero.
func (c *costing) orPieces(weights []int64) []int64 {
	for _, w := range weights {
		if w != 0 {
			return weights
		}
	}
	return c.byPieces(every)
}

// time adds up the seconds and hits of the job and of each garment line.
func (c *costing) time() {
	m := c.m
	c.seconds = c.handlingTime()
	for l, g := range m.lines {
		c.work[l] = mul(int64(c.bought[l]), add(g.handling, g.extras))
	}
	used := make([]bool, len(m.cards))
	for p, k := range c.choice {
		if k < 0 || m.cards[k].Press == nil {
			continue
		}
		cd := &m.cards[k]
		if !used[k] {
			used[k] = true
			c.cards++
		}
		c.seconds = add(c.seconds, cd.setup)
		for _, l := range m.placements[p].on {
			n := int64(c.closings(p, l))
			c.work[l] = add(c.work[l], mul(n, cd.seconds))
			c.presses[l] += n
			c.seconds = add(c.seconds, mul(n, cd.seconds))
			c.hits += n
		}
	}
	c.seconds = add(c.seconds, mul(m.changeover, int64(max(c.cards-1, 0))))
}

func (c *costing) blankLines() {
	for l := range c.m.lines {
		if c.lineQty[l] > 0 {
			c.add(KindBlanks, l, c.blanks[l], c.own(l, c.blanks[l]))
		}
	}
	for l := range c.m.lines {
		if c.lineQty[l] > 0 {
			c.add(KindSpoilage, l, c.spoilage[l], c.own(l, c.spoilage[l]))
		}
	}
}

func (c *costing) transferLines() {
	c.planAll()
	for p, k := range c.choice {
		if k < 0 {
			continue
		}
		split := make([]int64, len(c.m.lines))
		for _, i := range c.m.placements[p].items {
			if c.need[i] == 0 {
				continue
			}
			cost := c.costOfItem(k, i)
			c.transfers[p] = add(c.transfers[p], cost)
			weights := make([]int64, len(c.m.lines))
			for l, n := range c.uses[i] {
				weights[l] = int64(n)
			}
			for l, part := range c.share(cost, weights) {
				split[l] += part
			}
		}
		c.add(KindTransfers, p, c.transfers[p], split)
	}
}

// planAll plans every sheet and roll card in use.
func (c *costing) planAll() {
	for k := range c.m.cards {
		var on []int
		for p, chosen := range c.choice {
			if chosen == k {
				on = append(on, p)
			}
		}
		if len(on) == 0 || c.m.cards[k].sheets == nil && c.m.cards[k].roll == nil {
			continue
		}
		p, err := c.planOn(k, on)
		if err != nil {
			c.failed = true
			continue
		}
		c.plans = append(c.plans, p)
	}
}

// layOut replaces outlines by whole plans.
func (c *costing) layOut() {
	for i, p := range c.plans {
		if p.outline {
			whole, err := c.plan(p.card, p.placements)
			if err == nil {
				c.plans[i] = whole
			}
		}
	}
}

func (c *costing) costOfItem(card, item int) int64 {
	for i := range c.plans {
		if c.plans[i].card == card {
			return c.plans[i].itemCost[item]
		}
	}
	cost, _ := c.itemCost(card, item)
	return cost
}

func (c *costing) extraLines() {
	for e := range c.m.job.Extras {
		x := &c.m.job.Extras[e]
		takes := func(l int) bool { return c.lineQty[l] > 0 && isOn(x.On, c.m.lines[l].ID) }
		amount := c.extraCost(e)
		c.add(KindExtra, e, amount, c.shareExtra(amount, takes))
	}
}

// shareExtra splits an extra by the pieces of its garments; where none of them has pieces, over all.
func (c *costing) shareExtra(amount int64, takes func(line int) bool) []int64 {
	for l := range c.m.lines {
		if takes(l) {
			return c.shareOver(amount, c.byPieces(takes), takes)
		}
	}
	return c.share(amount, c.byPieces(every))
}

func (c *costing) freightLines() {
	m := c.m
	for s := range m.job.Suppliers {
		value, weights := c.value[s], make([]int64, len(m.lines))
		orders := c.orders[s]
		for _, l := range c.lines {
			if l.kind == KindBlanks && m.lines[l.ref].supplier == s || l.kind == KindTransfers && m.cards[c.choice[l.ref]].supplier == s {
				for g, part := range l.split {
					weights[g] = add(weights[g], part)
				}
			}
			if l.kind == KindTransfers && m.cards[c.choice[l.ref]].supplier == s {
				value, orders = add(value, l.amount), true
			}
		}
		amount := m.freight(s, value, orders)
		c.add(KindFreight, s, amount, c.share(amount, weights))
	}
}

func (c *costing) shopLines() {
	m := c.m
	labour, overhead, wear := m.labour.round(c.seconds, 0), m.overhead.round(c.seconds, 0), m.wear.round(c.hits, c.seconds)
	c.add(KindLabour, -1, labour, c.share(labour, c.orPieces(c.work)))
	c.add(KindOverhead, -1, overhead, c.share(overhead, c.orPieces(c.work)))
	c.add(KindPressWear, -1, wear, c.share(wear, c.orPieces(c.presses)))
	art := m.artCost()
	c.add(KindArt, -1, art, c.share(art, c.artWeights()))
	delivery := cents(m.inMinor(m.job.Pricing.DeliveryCost))
	c.add(KindDelivery, -1, delivery, c.share(delivery, c.byPieces(every)))
}

// artWeights are the pieces of lines that have a placement, of all lines where none has.
func (c *costing) artWeights() []int64 {
	return c.orPieces(c.byPieces(func(l int) bool { return len(c.m.lines[l].placements) > 0 }))
}
