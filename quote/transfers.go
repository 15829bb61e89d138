package quote

import (
	"math/big"
)

// pieceCost is what an item costs on an area or piece card.
type pieceCost struct {
	ok     bool
	cost   int64 // setup not counted
	bought int
	each   exact // in minor units
	price  *Break
}

// exact is a fraction of minor units, num / den.
type exact struct{ num, den int64 }

func newExact(x *big.Rat) exact {
	if !x.Num().IsInt64() || !x.Denom().IsInt64() {
		panic(tooLarge{})
	}
	return exact{x.Num().Int64(), x.Denom().Int64()}
}

// of is n times the fraction, rounded half away from zero; neither is negative.
func (e exact) of(n int) int64 { return e.times(int64(n)) }

// ceil is n times the fraction, rounded up.
func (e exact) ceil(n int) int {
	x := mul(int64(n), e.num)
	return int((x + e.den - 1) / e.den)
}

func (e exact) times(n int64) int64 {
	x := mul(n, e.num)
	q, r := x/e.den, x%e.den
	if r >= e.den-r {
		q++
	}
	return q
}

func (e exact) rat() *big.Rat { return frac(e.num, e.den) }

// needOn is the transfers of an item on a card: without spares where the shop does not press it.
func (t *setting) needOn(c *card, i int) int {
	if c.Press == nil {
		return t.need[i]
	}
	return t.copies[i]
}

// onPiece prices an item on an area or piece card. The quantity bought moves up to a later break where that costs less.
func (t *setting) onPiece(c, i int) pieceCost {
	key := [2]int{c, i}
	if p, ok := t.pieceOf[key]; ok {
		return p
	}
	p := t.findPiece(c, i)
	t.pieceOf[key] = p
	return p
}

func (t *setting) findPiece(c, i int) (best pieceCost) {
	m, cd := t.m, &t.m.cards[c]
	prices := m.prices(c, i)
	if m.placements[m.items[i].placement].Personal {
		return t.personal(i, prices)
	}
	start := max(t.needOn(cd, i), cd.Minimum)
	for k, p := range prices {
		quantity := start
		switch {
		case p.from > start && !best.ok:
			return best // nothing holds at the quantity needed
		case p.from > start:
			quantity = p.from
		case k+1 < len(prices) && prices[k+1].from <= start:
			continue
		}
		if cost := p.each.of(quantity); !best.ok || cost < best.cost {
			best = pieceCost{ok: true, cost: cost, bought: quantity, each: p.each, price: p.price}
		}
	}
	return best
}

// itemPrice is the price of one transfer of an item from a quantity on.
type itemPrice struct {
	from  int
	each  exact
	price *Break
}

// prices are the breaks of an item on an area or piece card, worked out once for all quantities.
func (m *model) prices(c, i int) []itemPrice {
	key := [2]int{c, i}
	ps, ok := m.itemPrices[key]
	if !ok {
		bs := m.cards[c].row(m, i)
		for k := range bs {
			ps = append(ps, itemPrice{bs[k].From, newExact(m.eachOn(&m.cards[c], i, &bs[k])), &bs[k]})
		}
		m.itemPrices[key] = ps
	}
	return ps
}

// row is the break list that prices an item; nil where the card has none for it.
func (c *card) row(m *model, i int) []Break {
	if c.Kind == AreaCard {
		return c.Rates
	}
	p := &m.placements[m.items[i].placement]
	if p.FullColor && (c.By == "" || c.By == byInks) {
		return c.FullColorEach
	}
	figure := m.figure(c, i)
	for _, row := range c.Prices {
		if row.Upto.Rat().Cmp(figure) >= 0 {
			return row.Each
		}
	}
	return nil
}

// figure is what a piece card counts of an item.
func (m *model) figure(c *card, i int) *big.Rat {
	it := m.items[i]
	p := &m.placements[it.placement]
	switch c.By {
	case byStitches:
		return p.Stitches.Rat()
	case byArea:
		return m.squareInches(it)
	case byCharacter:
		return rat(int64(it.characters))
	}
	return rat(int64(p.inks))
}

// squareInches is the area of an item.
func (m *model) squareInches(it item) *big.Rat {
	scale := rat(power10(m.lengthPlaces))
	if m.job.Unit == "mm" {
		scale = times(scale, frac(254, 10)) // 1 in = 25.4 mm exactly, NIST SP 811 B.8
	}
	return times(over(rat(it.w), scale), over(rat(it.h), scale))
}

// eachOn is the price of one transfer of an item, in minor units.
func (m *model) eachOn(c *card, i int, b *Break) *big.Rat {
	each := m.inMinor(b.Each)
	switch {
	case c.Kind == AreaCard:
		each = rat(cents(times(m.squareInches(m.items[i]), each)))
	case c.By == byCharacter:
		each = times(each, rat(int64(m.items[i].characters)))
	}
	if least := m.inMinor(c.MinimumEach); each.Cmp(least) < 0 {
		return least
	}
	return each
}

// setupOn is a card's setup for a placement, in minor units.
func (m *model) setupOn(c *card, p int) *big.Rat {
	if c.free {
		return new(big.Rat)
	}
	inks := rat(int64(m.placements[p].inks))
	return plus(m.inMinor(c.SetupPerDesign), times(inks, m.inMinor(c.SetupPerInk)))
}

// itemCost is what an item costs on an area or piece card, its placement's setup on the first item with pieces.
func (t *setting) itemCost(c, i int) (int64, bool) {
	placement := t.m.items[i].placement
	if t.m.placements[placement].Personal {
		return t.textCost(c, i)
	}
	p := t.onPiece(c, i)
	if !p.ok {
		return 0, false
	}
	if i != t.firstItem(placement) {
		return p.cost, true
	}
	setup := t.m.setupOn(&t.m.cards[c], placement)
	if setup.Sign() == 0 {
		return p.cost, true
	}
	return cents(plus(times(rat(int64(p.bought)), p.each.rat()), setup)), true
}

func (t *setting) firstItem(p int) int {
	for _, i := range t.m.placements[p].items {
		if t.need[i] > 0 {
			return i
		}
	}
	return -1
}

// placementCost is what a placement costs on an area or piece card; false where a quantity is not served.
func (t *setting) placementCost(c, p int) (total int64, ok bool) {
	for _, i := range t.m.placements[p].items {
		if t.need[i] == 0 {
			continue
		}
		cost, ok := t.itemCost(c, i)
		if !ok {
			return 0, false
		}
		total = add(total, cost)
	}
	return total, true
}

// gangItems are the items of placements on a sheet or roll card, with their needs.
func (t *setting) gangItems(c *card, placements []int) (items, need []int) {
	for _, p := range placements {
		for _, i := range t.m.placements[p].items {
			if t.need[i] > 0 {
				items, need = append(items, i), append(need, t.needOn(c, i))
			}
		}
	}
	return items, need
}

// roundPrice is an amount of the planner's in minor units.
func (m *model) roundPrice(p int64) int64 {
	return cents(frac(p, power10(m.pricePlaces-m.places)))
}
