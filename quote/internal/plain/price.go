package plain

import (
	"math/big"

	"pressworth/quote"
)

// priced is a state with its cards chosen and its prices set.
type priced struct {
	*state
	runnerUp map[string]RunnerUp
	unit     map[int]*big.Rat    // u by garment line with pieces
	addition map[[2]int]*big.Rat // by line and size
	typed    map[int]bool        // lines whose group has a typed price in force
}

// percent is the target at the job's pieces.
func (s *state) percent() *big.Rat {
	p := s.Pricing.Percent.Rat()
	for _, b := range s.Pricing.Percents {
		if b.From <= s.all() {
			p = b.Percent.Rat()
		}
	}
	return p
}

// recovered is what a group's lines get of costs that have a charge of their own.
func (s *state) recovered(lines []int) *big.Rat {
	sum := zero()
	take := func(cost, charge *big.Rat, weight func(g int) *big.Rat) {
		parts := s.parts(least(cost, charge), weight)
		for _, g := range lines {
			sum = add(sum, parts[g])
		}
	}
	cost := func(kind, ref string) *big.Rat { return orZero(s.lines[Key{kind, ref}]) }
	take(cost(quote.KindArt, ""), s.Art.Charge.Rat(), s.byDecorated)
	take(cost(quote.KindDelivery, ""), s.Pricing.DeliveryCharge.Rat(), s.byPieces)
	for _, e := range s.Extras {
		take(cost(quote.KindExtra, e.ID), s.revenue(e), s.byExtra(e))
	}
	for p, pl := range s.Placements {
		if pl.Personal {
			// like the cost: a line's texts may be longer, and cost more, than another's
			key := Key{quote.KindTransfers, pl.ID}
			take(cost(key.Kind, key.Ref), s.personalRevenue(p), func(g int) *big.Rat { return orZero(s.split[g][key]) })
		}
	}
	return sum
}

func (s *state) revenue(e quote.Extra) *big.Rat { return s.cents(mul(s.times(e), e.Charge.Rat())) }

// group is what a target price is made of.
type group struct {
	n                                int
	toRecover, goods, timed, ofHours *big.Rat // B; K; its labour and overhead; its hours
}

func (s *state) group(lines []int) group {
	x := group{toRecover: zero(), goods: zero(), timed: zero(), ofHours: zero()}
	weight, all := s.orByPieces(s.worked), zero()
	for _, g := range s.active() {
		all = add(all, weight(g))
	}
	for _, g := range lines {
		id := s.Garments[g].ID
		x.n += s.pieces(g)
		x.toRecover = add(x.toRecover, s.line(g))
		x.goods = add(x.goods, orZero(s.split[g][Key{quote.KindBlanks, id}]), orZero(s.split[g][Key{quote.KindSpoilage, id}]))
		x.timed = add(x.timed, orZero(s.split[g][Key{quote.KindLabour, ""}]), orZero(s.split[g][Key{quote.KindOverhead, ""}]))
		x.ofHours = add(x.ofHours, mul(s.hours(), div(weight(g), all)))
	}
	x.toRecover = sub(x.toRecover, s.recovered(lines))
	return x
}

// target is f(B), not below 0; less is taken off B, and off K with it.
func (s *state) target(x group, off *big.Rat) *big.Rat {
	b, k, p := sub(x.toRecover, off), sub(x.goods, off), s.percent()
	t := zero()
	switch s.Pricing.Basis {
	case "margin":
		t = div(b, less(p))
	case "markup":
		t = mul(b, more(p))
	case "split":
		t = add(mul(k, more(s.Pricing.BlankPercent.Rat())), div(sub(b, k), less(p)))
	case "hourly":
		t = add(sub(b, x.timed), mul(x.ofHours, s.Pricing.PerHour.Rat()))
	}
	return t
}

// marked is a size's extra cost as it is charged.
func (s *state) marked(extra *big.Rat) *big.Rat {
	switch s.Pricing.Basis {
	case "margin":
		return div(extra, less(s.percent()))
	case "markup":
		return mul(extra, more(s.percent()))
	case "split":
		return mul(extra, more(s.Pricing.BlankPercent.Rat()))
	}
	return extra
}

// base is what most pieces of a group cost as blanks, the lower where two are as many.
func (s *state) base(lines []int) *big.Rat {
	var best *big.Rat
	most := 0
	for _, g := range lines {
		for z := range s.Garments[g].Sizes {
			n, each := 0, s.each(g, z)
			for _, h := range lines {
				for y := range s.Garments[h].Sizes {
					if s.each(h, y).Cmp(each) == 0 {
						n += s.qty[h][y]
					}
				}
			}
			if n > most || n == most && n > 0 && each.Cmp(best) < 0 {
				best, most = each, n
			}
		}
	}
	return best
}

// prices sets u of every group and the additions of its sizes.
func (p *priced) prices(typed bool) {
	p.unit, p.addition, p.typed = map[int]*big.Rat{}, map[[2]int]*big.Rat{}, map[int]bool{}
	for _, lines := range p.groups() {
		u := p.groupPrice(lines)
		for _, g := range lines {
			if own := p.Garments[g].Price; own != nil && typed {
				u = own.Rat()
				for _, h := range lines {
					p.typed[h] = true
				}
				break
			}
		}
		for _, g := range lines {
			p.unit[g] = u
		}
	}
}

func (p *priced) groupPrice(lines []int) *big.Rat {
	x, step := p.group(lines), p.Pricing.Step.Rat()
	weighed := zero() // Σ quantity × what the size adds, in cost or in price
	for _, g := range lines {
		for z, size := range p.Garments[g].Sizes {
			added, charged := zero(), zero()
			switch p.Pricing.Sizes {
			case "spread":
			case "table":
				a := p.Pricing.Upcharges[size.Size]
				added, charged = a.Rat(), a.Rat()
			default:
				added = most(zero(), sub(p.each(g, z), p.base(lines)))
				charged = up(p.marked(added), step, p.places())
			}
			p.addition[[2]int{g, z}] = charged
			weighed = add(weighed, mul(whole(p.qty[g][z]), added))
		}
	}
	var t *big.Rat
	if p.Pricing.Sizes == "table" {
		t = sub(p.target(x, zero()), weighed)
	} else {
		t = p.target(x, weighed)
	}
	return up(div(most(zero(), t), whole(x.n)), step, p.places())
}

// goods are all pieces at their prices.
func (p *priced) goods() *big.Rat {
	sum := zero()
	for _, g := range p.active() {
		for z, q := range p.qty[g] {
			sum = add(sum, mul(whole(q), p.sells(g, z)))
		}
	}
	return sum
}

func (p *priced) sells(g, z int) *big.Rat { return add(p.unit[g], p.addition[[2]int{g, z}]) }
