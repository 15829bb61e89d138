package plain

import (
	"math/big"
	"slices"
)

func (p *priced) totals() Totals {
	rule := p.Pricing
	t := Totals{Goods: p.goods(), Art: p.Art.Charge.Rat(), Delivery: rule.DeliveryCharge.Rat(), Extras: zero()}
	t.Rush = p.cents(mul(t.Goods, hundredth(rule.RushPercent.Rat())))
	before := add(t.Goods, t.Rush)
	t.Discount = least(before, add(p.cents(mul(before, hundredth(rule.DiscountPercent.Rat()))), rule.Discount.Rat()))
	t.MinimumOrder = most(zero(), sub(rule.MinimumOrder.Rat(), sub(before, t.Discount)))
	for _, e := range p.Extras {
		t.Extras = add(t.Extras, p.revenue(e))
	}
	for pl := range p.Placements {
		t.Extras = add(t.Extras, p.personalRevenue(pl))
	}
	t.Subtotal = add(sub(before, t.Discount), t.MinimumOrder, t.Extras, t.Art, t.Delivery)
	t.Tax = p.tax(t)
	p.passedOn(&t)
	t.Total = add(t.Subtotal, t.Tax, t.CardFee)
	p.absorbed(&t)
	t.Deposit = p.cents(mul(t.Total, hundredth(rule.DepositPercent.Rat())))
	t.Balance = sub(t.Total, t.Deposit)
	return t
}

// tax is carried to one place more than the currency has, the rest cut off, and rounded up where that place is over 4.
func (p *priced) tax(t Totals) *big.Rat {
	rule := p.Pricing.Tax
	if rule.Exempt {
		return zero()
	}
	off := share(t.Discount, []*big.Rat{t.Goods, t.Rush}, p.places())
	taxed := func(name string) bool { return slices.Contains(rule.On, name) }
	sum := zero()
	if taxed("goods") {
		sum = add(p.taxableGoods(t.Goods, off[0]), t.MinimumOrder)
	}
	if taxed("rush") {
		sum = add(sum, sub(t.Rush, off[1]))
	}
	if taxed("art") {
		sum = add(sum, t.Art)
	}
	if taxed("delivery") {
		sum = add(sum, t.Delivery)
	}
	for _, e := range p.Extras {
		if taxed("extras") && e.Taxable {
			sum = add(sum, p.revenue(e))
		}
	}
	for pl := range p.Placements {
		if taxed("extras") && !p.Placements[pl].Untaxed {
			sum = add(sum, p.personalRevenue(pl))
		}
	}
	carried := div(mul(sum, hundredth(rule.Percent.Rat())), minor(p.places()+1))
	tenths := floor(carried)
	cents := floor(div(tenths, whole(10)))
	if sub(tenths, mul(cents, whole(10))).Cmp(whole(4)) > 0 {
		cents = add(cents, whole(1))
	}
	return mul(cents, minor(p.places()))
}

// taxableGoods go by the price of each piece where there is a rule for clothing.
func (p *priced) taxableGoods(goods, off *big.Rat) *big.Rat {
	rule := p.Pricing.Tax.Clothing
	if rule == nil {
		return sub(goods, off)
	}
	sum := zero()
	if goods.Sign() == 0 {
		return sum
	}
	for _, g := range p.active() {
		for z, q := range p.qty[g] {
			u := div(mul(p.sells(g, z), sub(goods, off)), goods)
			if !p.Garments[g].NotClothing {
				u = clothing(u, rule.Rule, rule.Amount.Rat())
			}
			sum = add(sum, mul(whole(q), u))
		}
	}
	return sum
}

func clothing(u *big.Rat, rule string, amount *big.Rat) *big.Rat {
	if rule == "tax_excess" {
		return most(zero(), sub(u, amount))
	}
	if u.Cmp(amount) < 0 {
		return zero()
	}
	return u
}

// passedOn is the fee for a card where the customer bears it.
func (p *priced) passedOn(t *Totals) {
	rule := p.Pricing.Card
	t.CardFee = zero()
	if !rule.PassOn || p.noFee() {
		return
	}
	net := add(t.Subtotal, t.Tax)
	t.CardFee = p.cents(sub(div(add(net, rule.Fixed.Rat()), less(rule.Percent.Rat())), net))
	if positive(rule.CapPercent.Rat()) {
		t.CardFee = least(t.CardFee, p.cents(mul(net, hundredth(rule.CapPercent.Rat()))))
	}
}

func (p *priced) noFee() bool {
	return p.Pricing.Card.Percent.Sign() == 0 && p.Pricing.Card.Fixed.Sign() == 0
}

// absorbed is what the shop bears of it.
func (p *priced) absorbed(t *Totals) {
	rule := p.Pricing.Card
	t.AbsorbedFee = zero()
	if p.noFee() || rule.PassOn && !positive(rule.CapPercent.Rat()) {
		return
	}
	fee := p.cents(add(mul(t.Total, hundredth(rule.Percent.Rat())), rule.Fixed.Rat()))
	t.AbsorbedFee = most(zero(), sub(fee, t.CardFee))
}
