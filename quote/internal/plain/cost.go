package plain

import (
	"math/big"

	"pressworth/quote"
)

// sums are the costs of a state.
type sums struct {
	lines   map[Key]*big.Rat
	split   []map[Key]*big.Rat // by garment line
	seconds *big.Rat           // S
}

// total is C.
func (s *state) total() *big.Rat {
	c := zero()
	for _, x := range s.lines {
		c = add(c, x)
	}
	return c
}

// line is L of a garment line.
func (s *state) line(g int) *big.Rat {
	l := zero()
	for _, x := range s.split[g] {
		l = add(l, x)
	}
	return l
}

// put adds to a cost line and gives the amount to the garment lines by weight.
func (s *state) put(kind, ref string, amount *big.Rat, weight func(g int) *big.Rat) {
	k := Key{kind, ref}
	s.lines[k] = add(orZero(s.lines[k]), amount)
	for g, x := range s.parts(amount, weight) {
		s.split[g][k] = add(orZero(s.split[g][k]), x)
	}
}

func orZero(x *big.Rat) *big.Rat {
	if x == nil {
		return zero()
	}
	return x
}

// parts shares an amount among the lines with pieces.
func (s *state) parts(amount *big.Rat, weight func(g int) *big.Rat) map[int]*big.Rat {
	var weights []*big.Rat
	for _, g := range s.active() {
		weights = append(weights, weight(g))
	}
	parts := map[int]*big.Rat{}
	for i, x := range share(amount, weights, s.places()) {
		parts[s.active()[i]] = x
	}
	return parts
}

// cost works out every cost line; false where a card does not serve.
func (s *state) cost() bool {
	s.buySpares()
	s.sums = sums{lines: map[Key]*big.Rat{}}
	for range s.Garments {
		s.split = append(s.split, map[Key]*big.Rat{})
	}
	transfers, ok := s.transfers()
	if !ok {
		return false
	}
	s.blanks()
	s.transferLines(transfers)
	for e := range s.Extras {
		s.extra(e)
	}
	for _, x := range s.Suppliers {
		s.freight(x)
	}
	s.time()
	s.put(quote.KindArt, "", s.cents(div(mul(s.Art.Minutes.Rat(), s.Art.PerHour.Rat()), whole(60))), s.byDecorated)
	s.put(quote.KindDelivery, "", s.Pricing.DeliveryCost.Rat(), s.byPieces)
	return true
}

func (s *state) byPieces(g int) *big.Rat { return whole(s.pieces(g)) }

// byDecorated weighs lines that have a placement by their pieces, and all lines where none has.
func (s *state) byDecorated(g int) *big.Rat {
	any := len(s.placements()) > 0
	if any && !s.decorated(g) {
		return zero()
	}
	return s.byPieces(g)
}

func (s *state) decorated(g int) bool {
	for _, p := range s.placements() {
		if s.on(s.Placements[p].On, g) {
			return true
		}
	}
	return false
}

// itself weighs one line only.
func itself(line int) func(g int) *big.Rat {
	return func(g int) *big.Rat {
		if g == line {
			return whole(1)
		}
		return zero()
	}
}

// each is what a size's blank costs at the break in force; a customer's garment costs nothing.
func (s *state) each(g, z int) *big.Rat {
	line := s.Garments[g]
	if line.FromCustomer {
		return zero()
	}
	n := 0
	for _, other := range s.active() {
		o := s.Garments[other]
		if !o.FromCustomer && o.Supplier == line.Supplier && o.Style == line.Style {
			n += s.pieces(other) + s.spare(other)
		}
	}
	b, _ := inForce(line.Sizes[z].Each, n)
	return b.Each.Rat()
}

// blanks and what is spoilt of them.
func (s *state) blanks() {
	for _, lines := range s.groups() {
		bought := 0
		for _, g := range lines {
			bought += s.spare(g)
		}
		for _, g := range lines {
			value := zero()
			for z := range s.Garments[g].Sizes {
				value = add(value, mul(whole(s.qty[g][z]+s.spares[g][z]), s.each(g, z)))
			}
			value = s.cents(value)
			id := s.Garments[g].ID
			s.put(quote.KindBlanks, id, value, itself(g))
			if s.Garments[g].FromCustomer {
				value = mul(whole(s.pieces(g)), s.Garments[g].ValueEach.Rat())
			}
			if s.groupPressed(lines) && bought == 0 {
				s.put(quote.KindSpoilage, id, s.cents(mul(hundredth(s.Shop.Spares.GarmentPercent.Rat()), value)), itself(g))
			}
		}
	}
}

func (s *state) transferLines(costs map[int][]*big.Rat) {
	for _, p := range s.placements() {
		for i, it := range s.items(p) {
			s.put(quote.KindTransfers, s.Placements[p].ID, costs[p][i], func(g int) *big.Rat { return whole(s.count(s.qty, it, g)) })
		}
	}
}

// onPieces are the pieces an extra goes on, of one line.
func (s *state) onPieces(e quote.Extra, g int) *big.Rat {
	if !s.on(e.On, g) {
		return zero()
	}
	return s.byPieces(g)
}

// times is how often an extra is paid and charged.
func (s *state) times(e quote.Extra) *big.Rat {
	if e.PerOrder {
		return whole(1)
	}
	n := zero()
	for _, g := range s.active() {
		n = add(n, s.onPieces(e, g))
	}
	return n
}

func (s *state) extra(i int) {
	e := s.Extras[i]
	s.put(quote.KindExtra, e.ID, s.cents(mul(s.times(e), e.Cost.Rat())), s.byExtra(e))
}

// byExtra weighs the lines of an extra by their pieces; one for the order whose garments have none goes over all lines.
func (s *state) byExtra(e quote.Extra) func(g int) *big.Rat {
	return s.orByPieces(func(g int) *big.Rat { return s.onPieces(e, g) })
}

// boughtFrom is the value of a line's blanks and transfers from a supplier.
func (s *state) boughtFrom(supplier string, g int) *big.Rat {
	value := zero()
	if line := s.Garments[g]; line.Supplier == supplier && !line.FromCustomer {
		value = orZero(s.split[g][Key{quote.KindBlanks, line.ID}])
	}
	for _, p := range s.placements() {
		if s.card(p).Supplier == supplier {
			value = add(value, orZero(s.split[g][Key{quote.KindTransfers, s.Placements[p].ID}]))
		}
	}
	return value
}

// buysFrom tells whether anything is bought from a supplier, even for nothing.
func (s *state) buysFrom(supplier string) bool {
	for _, g := range s.active() {
		if line := s.Garments[g]; line.Supplier == supplier && !line.FromCustomer {
			return true
		}
	}
	for _, p := range s.placements() {
		if s.card(p).Supplier == supplier {
			return true
		}
	}
	return false
}

func (s *state) freight(x quote.Supplier) {
	value := zero()
	for _, g := range s.active() {
		value = add(value, s.boughtFrom(x.ID, g))
	}
	free := positive(x.FreeFrom.Rat()) && value.Cmp(x.FreeFrom.Rat()) >= 0
	if free || !s.buysFrom(x.ID) {
		return
	}
	percent := whole(100)
	if x.SharePercent != nil {
		percent = x.SharePercent.Rat()
	}
	s.put(quote.KindFreight, x.ID, s.cents(mul(x.Freight.Rat(), hundredth(percent))), func(g int) *big.Rat { return s.boughtFrom(x.ID, g) })
}

// worked is (n + s) × w of a line.
func (s *state) worked(g int) *big.Rat {
	w := s.Shop.Handling.Rat()
	if own := s.Garments[g].Handling; own != nil {
		w = own.Rat()
	}
	once := zero() // for names and numbers, a text at a time
	for _, p := range s.pressedOn(g) {
		x := s.card(p).Press
		press := add(x.Prep.Rat(), x.Place.Rat(), x.Dwell.Rat(), x.Peel.Rat(), x.Second.Rat())
		if s.Placements[p].Personal {
			once = add(once, mul(press, whole(s.texts(p, g))))
			continue
		}
		w = add(w, press)
	}
	for _, e := range s.Extras {
		if !e.PerOrder && s.on(e.On, g) {
			w = add(w, e.Seconds.Rat())
		}
	}
	return add(once, mul(whole(s.pieces(g)+s.spare(g)), w))
}

func (s *state) hits(g int) *big.Rat {
	n := 0
	for _, p := range s.pressedOn(g) {
		if s.Placements[p].Personal {
			n += s.texts(p, g)
			continue
		}
		n += s.pieces(g) + s.spare(g)
	}
	return whole(n)
}

// allSeconds is S.
func (s *state) allSeconds() *big.Rat {
	minutes := s.Shop.JobSetupMin.Rat()
	cards := map[int]bool{}
	for _, p := range s.placements() {
		if s.pressed(p) {
			minutes = add(minutes, s.Shop.DesignSetupMin.Rat(), s.card(p).Press.PrepMin.Rat())
			cards[s.cards[p]] = true
		}
	}
	minutes = add(minutes, mul(s.Shop.ChangeoverMin.Rat(), whole(max(0, len(cards)-1))))
	seconds := mul(whole(60), minutes)
	for _, e := range s.Extras {
		if e.PerOrder {
			seconds = add(seconds, e.Seconds.Rat())
		}
	}
	for _, g := range s.active() {
		seconds = add(seconds, s.worked(g))
	}
	return seconds
}

// hours are S with the allowance.
func (s *state) hours() *big.Rat {
	return div(mul(s.seconds, more(s.Shop.AllowancePercent.Rat())), whole(3600))
}

// orByPieces weighs by pieces where all the other weights are zero.
func (s *state) orByPieces(weight func(g int) *big.Rat) func(g int) *big.Rat {
	for _, g := range s.active() {
		if positive(weight(g)) {
			return weight
		}
	}
	return s.byPieces
}

// time puts labour, overhead and the wear of the press.
func (s *state) time() {
	s.seconds = s.allSeconds()
	shop := s.Shop
	labour := mul(s.hours(), shop.WagePerHour.Rat(), more(shop.BurdenPercent.Rat()))
	s.put(quote.KindLabour, "", s.cents(labour), s.orByPieces(s.worked))

	monthly, perHit := shop.OverheadPerMonth.Rat(), shop.HitCost.Rat()
	for _, m := range shop.Equipment {
		loss := sub(m.Cost.Rat(), m.Salvage.Rat())
		if m.LifeMonths > 0 {
			monthly = add(monthly, div(loss, whole(m.LifeMonths)))
		}
		if m.LifeHits > 0 {
			perHit = add(perHit, div(loss, whole(m.LifeHits)))
		}
	}
	overhead := zero()
	if monthly.Sign() != 0 {
		overhead = mul(s.hours(), div(monthly, shop.ProductiveHoursPerMonth.Rat()))
	}
	s.put(quote.KindOverhead, "", s.cents(overhead), s.orByPieces(s.worked))

	hits := zero()
	for _, g := range s.active() {
		hits = add(hits, s.hits(g))
	}
	kWh := mul(div(shop.Power.Watts.Rat(), whole(1000)), hundredth(shop.Power.DutyPercent.Rat()), s.hours())
	wear := add(mul(hits, perHit), mul(kWh, shop.Power.PerKWh.Rat()))
	s.put(quote.KindPressWear, "", s.cents(wear), s.orByPieces(s.hits))
}
