package quote

import (
	"cmp"
	"iter"
	"maps"
	"math/big"
	"slices"

	"pressworth/quote/money"
)

// sortedAmounts goes through amounts by their keys' order.
func sortedAmounts(as map[string]money.Amount) iter.Seq2[string, money.Amount] {
	return func(yield func(string, money.Amount) bool) {
		for _, k := range slices.Sorted(maps.Keys(as)) {
			if !yield(k, as[k]) {
				return
			}
		}
	}
}

// unit is what a price group must earn, and the price each that follows. Money is in minor units.
type unit struct {
	pieces    int
	cost      int64
	recover   int64    // cost less what is charged for separately
	blanks    int64    // blanks and spoilage
	baseCost  *big.Rat // of a blank, where sizes are priced by upcharge
	extra     *big.Rat // what dearer sizes cost more, over all pieces
	target    *big.Rat // what the group's pieces earn at the price each alone
	each      int64    // the price each by the rules, before it is kept from rising
	additions [][]int64
}

// units prices every group that has pieces; others are nil.
func (c *costing) units() []*unit {
	recovered := c.recovered()
	us := make([]*unit, len(c.m.groups))
	for g := range c.m.groups {
		if c.groupQty[g] > 0 {
			us[g] = c.unit(g, recovered)
		}
	}
	return us
}

func (c *costing) unit(g int, recovered []int64) *unit {
	u := &unit{pieces: c.groupQty[g], baseCost: new(big.Rat), extra: new(big.Rat)}
	for _, l := range c.m.groups[g].lines {
		u.cost = add(u.cost, c.lineCost[l])
		u.recover = add(u.recover, c.lineCost[l]-recovered[l])
		u.blanks = add(u.blanks, add(c.blanks[l], c.spoilage[l]))
	}
	n := rat(int64(u.pieces))
	switch c.m.job.Pricing.Sizes {
	case sizesSpread:
		u.target = c.earn(g, u)
		u.additions = c.tableAdditions(g, nil)
	case sizesTable:
		u.additions = c.tableAdditions(g, c.m.job.Pricing.Upcharges)
		u.target = minus(c.earn(g, u), rat(c.added(g, u.additions)))
	default:
		c.upcharges(g, u)
		u.target = c.earn(g, u)
	}
	if u.target.Sign() < 0 {
		u.target = new(big.Rat)
	}
	u.each = up(over(u.target, n), c.m.minor(c.m.job.Pricing.Step))
	return u
}

// earn is what the group must earn by the basis, its dearer sizes' extra cost left out.
func (c *costing) earn(g int, u *unit) *big.Rat {
	p := c.m.job.Pricing
	b, k := minus(rat(u.recover), u.extra), minus(rat(u.blanks), u.extra)
	target := c.m.percentAt(c.pieces)
	switch p.Basis {
	case basisMarkup:
		return times(b, plusPercent(target))
	case basisSplit:
		return plus(times(k, plusPercent(p.BlankPercent)), over(minus(b, k), lessPercent(target)))
	case basisHourly:
		labour, overhead, hours := c.timeOf(g)
		return plus(minus(b, rat(add(labour, overhead))), times(hours, c.m.inMinor(p.PerHour)))
	}
	return over(b, lessPercent(target))
}

// onExtra is what a dearer size's extra cost is sold for by the basis.
func (c *costing) onExtra(x *big.Rat) *big.Rat {
	p := c.m.job.Pricing
	switch p.Basis {
	case basisMarkup:
		return times(x, plusPercent(c.m.percentAt(c.pieces)))
	case basisSplit:
		return times(x, plusPercent(p.BlankPercent))
	case basisHourly:
		return x
	}
	return over(x, lessPercent(c.m.percentAt(c.pieces)))
}

// percentAt is the target percentage at a total quantity.
func (m *model) percentAt(pieces int) money.Number {
	p := m.job.Pricing.Percent
	for _, b := range m.job.Pricing.Percents {
		if b.From <= pieces {
			p = b.Percent
		}
	}
	return p
}

// timeOf is a group's labour and overhead, and its exact hours.
func (c *costing) timeOf(g int) (labour, overhead int64, hours *big.Rat) {
	for _, e := range c.lines {
		for _, l := range c.m.groups[g].lines {
			switch e.kind {
			case KindLabour:
				labour = add(labour, e.split[l])
			case KindOverhead:
				overhead = add(overhead, e.split[l])
			}
		}
	}
	weights := c.orPieces(c.work)
	mine := int64(0)
	for _, l := range c.m.groups[g].lines {
		mine = add(mine, weights[l])
	}
	return labour, overhead, times(c.hours(), frac(mine, max(sum(weights), 1)))
}

// hours is the time of the whole job, allowance included.
func (c *costing) hours() *big.Rat { return times(rat(c.seconds), c.m.allowed) }

// upcharges finds the base cost of the group's blanks and the additions of its dearer sizes.
func (c *costing) upcharges(g int, u *unit) {
	u.baseCost = c.baseCost(g)
	step := c.m.minor(c.m.job.Pricing.Step)
	for _, l := range c.m.groups[g].lines {
		add := make([]int64, len(c.breakOf[l]))
		for j := range c.breakOf[l] {
			each := c.blankEach(l, j)
			if each.Cmp(u.baseCost) <= 0 {
				continue
			}
			x := minus(each, u.baseCost)
			add[j] = up(c.onExtra(x), step)
			u.extra.Add(u.extra, times(x, rat(int64(c.qty[l][j]))))
		}
		u.additions = append(u.additions, add)
	}
}

// blankEach is the price of a blank at the break in force, 0 for a customer's garment or a size without a price. It is
// shared: nobody writes into it.
func (c *costing) blankEach(l, size int) *big.Rat {
	b := c.breakOf[l][size]
	if b == nil {
		return new(big.Rat)
	}
	each, ok := c.m.blankRats[b]
	if !ok {
		each = c.m.inMinor(b.Each)
		c.m.blankRats[b] = each
	}
	return each
}

// baseCost is the price of a blank that most pieces of the group have, ties to the lower.
func (c *costing) baseCost(g int) *big.Rat {
	type having struct {
		each *big.Rat
		n    int
	}
	var all []having
	for _, l := range c.m.groups[g].lines {
		for j, n := range c.qty[l] {
			each := c.blankEach(l, j)
			if k := slices.IndexFunc(all, func(h having) bool { return h.each.Cmp(each) == 0 }); k >= 0 {
				all[k].n += n
			} else if n > 0 {
				all = append(all, having{each, n})
			}
		}
	}
	return slices.MinFunc(all, func(a, b having) int { return cmp.Or(cmp.Compare(b.n, a.n), a.each.Cmp(b.each)) }).each
}

// tableAdditions are the additions by size of a table, for each line of the group.
func (c *costing) tableAdditions(g int, table map[string]money.Amount) (all [][]int64) {
	for _, l := range c.m.groups[g].lines {
		add := make([]int64, len(c.m.lines[l].Sizes))
		for j, z := range c.m.lines[l].Sizes {
			if a, ok := table[z.Size]; ok {
				add[j] = c.m.minor(a)
			}
		}
		all = append(all, add)
	}
	return all
}

// added is what the additions bring in over all pieces.
func (c *costing) added(g int, additions [][]int64) (total int64) {
	for k, l := range c.m.groups[g].lines {
		for j, n := range c.qty[l] {
			total = add(total, mul(int64(n), additions[k][j]))
		}
	}
	return total
}

// recovered is, by garment line, what is charged for separately and so need not be earned by the goods.
func (c *costing) recovered() []int64 {
	m, total := c.m, make([]int64, len(c.m.lines))
	for _, e := range c.lines {
		var charge int64
		switch e.kind {
		case KindArt:
			charge = m.minor(m.job.Art.Charge)
		case KindDelivery:
			charge = m.minor(m.job.Pricing.DeliveryCharge)
		case KindExtra:
			charge = c.extraRevenue(e.ref)
		case KindTransfers:
			charge = c.personalRevenue(e.ref)
		default:
			continue
		}
		for l, part := range c.shareLike(e, min(e.amount, charge)) {
			total[l] = add(total[l], part)
		}
	}
	return total
}

// shareLike splits a part of a cost line over garment lines by the weights that the cost line was split with.
func (c *costing) shareLike(e costEntry, amount int64) []int64 {
	switch {
	case amount == e.amount:
		return e.split
	case e.kind == KindArt:
		return c.share(amount, c.artWeights())
	case e.kind == KindDelivery:
		return c.share(amount, c.byPieces(every))
	case e.kind == KindExtra:
		x := &c.m.job.Extras[e.ref]
		return c.shareExtra(amount, func(l int) bool { return c.lineQty[l] > 0 && isOn(x.On, c.m.lines[l].ID) })
	}
	return c.share(amount, e.split)
}

func (s *state) extraRevenue(e int) int64 {
	return mul(int64(s.extraPieces(e)), s.m.minor(s.m.job.Extras[e].Charge))
}
