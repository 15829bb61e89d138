package quote

import (
	"math/big"
	"slices"

	"pressworth/quote/money"
)

// totals are what the customer pays for a costing at given prices each. Money is in minor units.
type totals struct {
	each                                   []int64 // by group
	goods, minimum, rush, discount         int64
	extras, art, delivery, subtotal        int64
	goodsDiscount                          int64
	taxable                                *big.Rat
	tax, cardFee, absorbed, total, deposit int64
}

// totals works out what the customer pays at the prices each.
func (c *costing) totals(us []*unit, each []int64) totals {
	p := c.m.job.Pricing
	t := totals{each: each, art: c.m.minor(c.m.job.Art.Charge), delivery: c.m.minor(p.DeliveryCharge)}
	for g, u := range us {
		if u != nil {
			t.goods = add(t.goods, add(mul(int64(u.pieces), each[g]), c.added(g, u.additions)))
		}
	}
	for e := range c.m.job.Extras {
		t.extras = add(t.extras, c.extraRevenue(e))
	}
	for q := range c.m.placements {
		t.extras = add(t.extras, c.personalRevenue(q))
	}
	t.rush = cents(times(rat(t.goods), percent(p.RushPercent)))
	before := add(t.goods, t.rush)
	t.discount = min(before, add(cents(times(rat(before), percent(p.DiscountPercent))), c.m.minor(p.Discount)))
	t.minimum = max(0, c.m.minor(p.MinimumOrder)-(before-t.discount))
	t.subtotal = add(add(before-t.discount, t.minimum), add(add(t.extras, t.art), t.delivery))
	c.addTax(&t, us)
	c.addCardFee(&t)
	t.total = add(add(t.subtotal, t.tax), t.cardFee)
	c.absorbFee(&t)
	t.deposit = cents(times(rat(t.total), percent(p.DepositPercent)))
	return t
}

func (c *costing) addTax(t *totals, us []*unit) {
	x := c.m.job.Pricing.Tax
	parts := money.Share(t.discount, []int64{t.goods, t.rush})
	t.goodsDiscount, t.taxable = parts[0], new(big.Rat)
	add := func(name string, amount *big.Rat) {
		if slices.Contains(x.On, name) {
			t.taxable.Add(t.taxable, amount)
		}
	}
	add("goods", plus(c.taxableGoods(t, us), rat(t.minimum)))
	add("rush", rat(t.rush-parts[1]))
	add("art", rat(t.art))
	add("delivery", rat(t.delivery))
	add("extras", rat(c.taxableExtras()))
	if !x.Exempt {
		// Carried to the third decimal and rounded up when that is more than 4 (Streamlined Sales and Use Tax Agreement,
		// section 324): the same as rounding half up.
		t.tax = cents(times(t.taxable, percent(x.Percent)))
	}
}

func (c *costing) taxableExtras() (total int64) {
	for e, x := range c.m.job.Extras {
		if x.Taxable {
			total = add(total, c.extraRevenue(e))
		}
	}
	for p := range c.m.placements {
		if !c.m.placements[p].Untaxed {
			total = add(total, c.personalRevenue(p))
		}
	}
	return total
}

// taxableGoods is the taxable part of the goods, after their discount and a clothing rule.
func (c *costing) taxableGoods(t *totals, us []*unit) *big.Rat {
	rule := c.m.job.Pricing.Tax.Clothing
	if rule == nil || t.goods == 0 {
		return rat(t.goods - t.goodsDiscount)
	}
	limit, left, total := c.m.inMinor(rule.Amount), frac(t.goods-t.goodsDiscount, t.goods), new(big.Rat)
	for g, u := range us {
		if u == nil {
			continue
		}
		for k, l := range c.m.groups[g].lines {
			for j, n := range c.qty[l] {
				price := times(rat(add(t.each[g], u.additions[k][j])), left)
				if !c.m.lines[l].NotClothing {
					price = clothing(rule.Rule, price, limit)
				}
				total.Add(total, times(price, rat(int64(n))))
			}
		}
	}
	return total
}

// clothing is the taxable part of one garment's price under a rule for clothing.
func clothing(rule string, price, limit *big.Rat) *big.Rat {
	switch {
	case rule == taxExcess && price.Cmp(limit) > 0:
		return minus(price, limit)
	case rule == exemptBelow && price.Cmp(limit) >= 0:
		return price
	}
	return new(big.Rat)
}

// addCardFee adds the fee that is passed on.
func (c *costing) addCardFee(t *totals) {
	f := c.m.job.Pricing.Card
	if !f.PassOn || f.Percent.Sign() == 0 && f.Fixed.Sign() == 0 {
		return
	}
	due := rat(add(t.subtotal, t.tax))
	gross := over(plus(due, c.m.inMinor(f.Fixed)), lessPercent(f.Percent))
	t.cardFee = cents(minus(gross, due))
	if f.CapPercent.Sign() > 0 {
		t.cardFee = min(t.cardFee, cents(times(due, percent(f.CapPercent))))
	}
}

// absorbFee finds the fee that the shop pays itself: all of it where none is passed on, or what a cap leaves.
func (c *costing) absorbFee(t *totals) {
	f := c.m.job.Pricing.Card
	if f.Percent.Sign() == 0 && f.Fixed.Sign() == 0 || f.PassOn && f.CapPercent.Sign() == 0 {
		return
	}
	fee := cents(plus(times(rat(t.total), percent(f.Percent)), c.m.inMinor(f.Fixed)))
	t.absorbed = max(0, fee-t.cardFee)
}

// margin is the share of the subtotal that is left, nil where there is no subtotal.
func (c *costing) margin(t *totals) *big.Rat {
	if t.subtotal == 0 {
		return nil
	}
	return frac(t.subtotal-c.total-t.absorbed, t.subtotal)
}

// leftPerHour is what is left for time and overhead an hour, nil under a quarter of an hour.
func (c *costing) leftPerHour(t *totals) *int64 {
	hours := plus(c.hours(), times(c.m.job.Art.Minutes.Rat(), frac(1, 60)))
	if hours.Cmp(frac(1, 4)) < 0 {
		return nil
	}
	left := t.subtotal - c.total - t.absorbed
	for _, e := range c.lines {
		if e.kind == KindLabour || e.kind == KindOverhead {
			left = add(left, e.amount)
		}
	}
	x := cents(over(rat(left), hours))
	return &x
}
