package quote

import (
	"math/big"
	"slices"

	"pressworth/quote/gang"
	"pressworth/quote/money"
)

func (m *model) addCards() {
	for i := range m.job.RateCards {
		r := &m.job.RateCards[i]
		c := card{
			RateCard: r, supplier: slices.Index(supplierIDs(m.job), r.Supplier),
			priceScale: power10(m.pricePlaces - m.places), free: r.SetupPerDesign.Sign() == 0 && r.SetupPerInk.Sign() == 0,
		}
		if p := r.Press; p != nil {
			for _, n := range []money.Number{p.Prep, p.Place, p.Dwell, p.Peel, p.Second} {
				c.seconds = add(c.seconds, m.seconds(n))
			}
			c.setup = add(m.minutes(m.job.Shop.DesignSetupMin), m.minutes(p.PrepMin))
		}
		switch r.Kind {
		case SheetCard:
			c.sheetOf = m.sheetCard(r)
			c.sheets = m.memory.sheetsOf(c.sheetOf, m.gangItems())
		case RollCard:
			c.rollOf = m.rollCard(r)
			c.roll = m.memory.rollOf(c.rollOf, m.gangItems())
		}
		m.cards = append(m.cards, c)
	}
}

func (m *model) gangItems() []gang.Item {
	items := make([]gang.Item, len(m.items))
	for i, it := range m.items {
		p := m.placements[it.placement]
		items[i] = gang.Item{Placement: it.placement, W: it.w, H: it.h, Turn: !p.NoTurn, Inks: inkSet(p.Inks)}
		if len(p.Inks) == 0 {
			items[i].InkCount = p.InkCount
		}
	}
	return items
}

func (m *model) sheetCard(r *RateCard) gang.SheetCard {
	c := gang.SheetCard{MaxInks: r.MaxInks, SetupPerDesign: m.price(r.SetupPerDesign), SetupPerInk: m.price(r.SetupPerInk)}
	for _, s := range r.Sizes {
		size := gang.SheetSize{
			W: m.length(s.Width), H: m.length(s.Height), Edge: m.length(s.Edge), Gap: m.length(s.Gap),
			Minimum: max(s.Minimum, 1),
		}
		for _, row := range s.Prices {
			g := gang.InkRow{Inks: row.Inks}
			for _, b := range row.Each {
				g.Each = append(g.Each, gang.Break{From: b.From, Each: m.price(b.Each)})
			}
			size.Prices = append(size.Prices, g)
		}
		c.Sizes = append(c.Sizes, size)
	}
	return c
}

func (m *model) rollCard(r *RateCard) gang.RollCard {
	c := gang.RollCard{W: m.length(r.Width), Edge: m.length(r.Edge), Gap: m.length(r.Gap)}
	for _, l := range r.Lengths {
		c.Lengths = append(c.Lengths, gang.RollLength{Length: m.length(l.Length), Each: m.price(l.Each)})
	}
	return c
}

// rates compiles what an hour and a hit cost: rationals that a count of seconds or hits is multiplied with.
func (m *model) rates() {
	s := m.job.Shop
	monthly, wear := m.inMinor(s.OverheadPerMonth), m.inMinor(s.HitCost)
	for _, e := range s.Equipment {
		loss := minus(m.inMinor(e.Cost), m.inMinor(e.Salvage))
		switch {
		case e.LifeMonths > 0:
			monthly = plus(monthly, over(loss, rat(int64(e.LifeMonths))))
		case e.LifeHits > 0:
			wear = plus(wear, over(loss, rat(int64(e.LifeHits))))
		}
	}
	m.garmentSpare, m.transferSpare = newExact(percent(s.Spares.GarmentPercent)), newExact(percent(s.Spares.TransferPercent))
	m.allowed = over(plusPercent(s.AllowancePercent), rat(mul(3600, power10(m.secondPlaces))))
	labour := times(m.allowed, m.inMinor(s.WagePerHour), plusPercent(s.BurdenPercent))
	overhead := new(big.Rat)
	if monthly.Sign() > 0 {
		overhead = over(times(m.allowed, monthly), s.ProductiveHoursPerMonth.Rat())
	}
	power := times(m.allowed, s.Power.Watts.Rat(), frac(1, 1000), percent(s.Power.DutyPercent), m.inMinor(s.Power.PerKWh))
	zero := new(big.Rat)
	m.labour, m.overhead, m.wear = newLinear(labour, zero), newLinear(overhead, zero), newLinear(wear, power)
	for _, x := range m.job.Suppliers {
		bears := rat(1)
		if x.SharePercent != nil {
			bears = percent(*x.SharePercent)
		}
		m.freights = append(m.freights, freight{cents(times(m.inMinor(x.Freight), bears)), up(m.inMinor(x.FreeFrom), 1)})
	}
	more := max(0, money.Number(s.MixingSavesAtLeast).Places()-m.places)
	m.mixing, m.mixingScale = fits(s.MixingSavesAtLeast.Minor(m.places+more)), power10(more)
}

// servingCards are the cards that may carry a placement at some quantity: artwork, inks and size fit.
func (m *model) servingCards(p int) (cards []int) {
	pl := &m.placements[p]
	for c := range m.cards {
		if pl.Method != "" && pl.Method != "auto" && pl.Method != m.cards[c].ID {
			continue
		}
		if m.carries(&m.cards[c], pl) && m.cards[c].isFor(pl.ID) {
			cards = append(cards, c)
		}
	}
	return cards
}

// isFor tells whether a card is for a placement, where it is not for all.
func (c *card) isFor(placement string) bool {
	return len(c.Only) == 0 || slices.Contains(c.Only, placement)
}

func (m *model) carries(c *card, p *placement) bool {
	if p.FullColor && (!c.FullColor || c.Kind == SheetCard) {
		return false
	}
	if !p.FullColor && c.MaxInks > 0 && p.inks > c.MaxInks {
		return false
	}
	if c.Kind == PieceCard && !c.counts(p) {
		return false
	}
	return !(p.Personal && c.Kind == SheetCard)
}

// counts tells whether a piece card has what it counts by.
func (c *card) counts(p *placement) bool {
	switch c.By {
	case byStitches:
		return p.Stitches.Sign() > 0
	case byCharacter:
		return p.Personal
	case byArea:
		return true
	}
	if p.FullColor {
		return len(c.FullColorEach) > 0
	}
	return true
}

// holds tells whether one item fits on a card, either way round.
func (m *model) holds(c *card, i int) bool {
	switch it := m.items[i]; {
	case c.sheets != nil:
		return c.sheets.Serves(i)
	case c.roll != nil:
		return c.roll.Serves(i)
	default:
		maxW, maxH := m.length(c.MaxWidth), m.length(c.MaxHeight)
		within := func(w, h int64) bool { return (maxW == 0 || w <= maxW) && (maxH == 0 || h <= maxH) }
		return within(it.w, it.h) || within(it.h, it.w)
	}
}

// goesOn tells whether a card allows a garment line's shade and tags.
func (c *card) goesOn(l *line) bool {
	if len(c.Shades) > 0 && !slices.Contains(c.Shades, l.Shade) {
		return false
	}
	return !slices.ContainsFunc(l.Tags, func(tag string) bool { return slices.Contains(c.NotOn, tag) })
}
