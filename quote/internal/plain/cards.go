package plain

import (
	"math/big"
	"slices"

	"pressworth/quote"
)

// allows tells whether a card takes a placement, whatever the quantity. The cards of s need not be set.
func (s *state) allows(c, p int) bool {
	card, pl := s.RateCards[c], s.Placements[p]
	switch {
	case len(card.Only) > 0 && !slices.Contains(card.Only, pl.ID):
		return false
	case pl.Personal && card.Kind == quote.SheetCard:
		return false
	case pl.FullColor && (!card.FullColor || card.Kind == quote.SheetCard):
		return false
	case card.MaxInks > 0 && s.inks(p) > card.MaxInks:
		return false
	}
	for _, g := range s.active() {
		line := s.Garments[g]
		if !s.on(pl.On, g) {
			continue
		}
		if len(card.Shades) > 0 && !slices.Contains(card.Shades, line.Shade) {
			return false
		}
		if slices.ContainsFunc(line.Tags, func(t string) bool { return slices.Contains(card.NotOn, t) }) {
			return false
		}
	}
	return true
}

// transfers are the costs of a job's items, item by item; false where a card does not serve.
func (s *state) transfers() (map[int][]*big.Rat, bool) {
	costs := map[int][]*big.Rat{}
	for c, card := range s.RateCards {
		var onCard []item
		for _, p := range s.placements() {
			if s.cards[p] == c {
				onCard = append(onCard, s.items(p)...)
			}
		}
		if len(onCard) == 0 {
			continue
		}
		var each []*big.Rat
		var ok bool
		if card.Kind == quote.SheetCard || card.Kind == quote.RollCard {
			each, ok = s.planned(card, onCard)
		} else {
			each, ok = s.oneByOne(card, onCard)
		}
		if !ok {
			return nil, false
		}
		for i, it := range onCard {
			costs[it.Placement] = append(costs[it.Placement], each[i])
		}
	}
	return costs, true
}

// oneByOne prices items on an area or piece card, the setup on a placement's first item.
func (s *state) oneByOne(card quote.RateCard, items []item) ([]*big.Rat, bool) {
	var costs []*big.Rat
	for i := 0; i < len(items); i++ {
		it := items[i]
		if !s.fits(card, it) {
			return nil, false
		}
		if it.letters != nil {
			mine := ofOnePlacement(items[i:])
			each, ok := s.textCosts(card, mine)
			if !ok || slices.ContainsFunc(mine, func(it item) bool { return !s.fits(card, it) }) {
				return nil, false
			}
			costs, i = append(costs, each...), i+len(mine)-1
			continue
		}
		cost, ok := s.areaItem(card, it)
		if card.Kind == quote.PieceCard {
			cost, ok = s.pieceItem(card, it)
		}
		if !ok {
			return nil, false
		}
		if i == 0 || items[i-1].Placement != it.Placement {
			cost = add(cost, s.setup(card, it.Placement))
		}
		costs = append(costs, s.cents(cost))
	}
	return costs, true
}

// ofOnePlacement are the items at the front that belong to the first one's placement.
func ofOnePlacement(items []item) []item {
	n := 0
	for n < len(items) && items[n].Placement == items[0].Placement {
		n++
	}
	return items[:n]
}

// fits tells whether an item is within the card's largest size, either way round.
func (s *state) fits(card quote.RateCard, it item) bool {
	within := func(x, limit *big.Rat) bool { return limit.Sign() == 0 || x.Cmp(limit) <= 0 }
	w, h := card.MaxWidth.Rat(), card.MaxHeight.Rat()
	return within(it.W, w) && within(it.H, h) || within(it.H, w) && within(it.W, h)
}

// bought is the cheapest quantity from need on at these prices, at least the card's minimum; the smaller at equal cost.
func bought(card quote.RateCard, need int, breaks []quote.Break, each func(quote.Break) *big.Rat) (cost *big.Rat, ok bool) {
	start := max(need, card.Minimum, 1)
	tries := []int{start}
	for _, b := range breaks {
		if b.From > start {
			tries = append(tries, b.From)
		}
	}
	for _, n := range tries {
		b, found := inForce(breaks, n)
		if !found {
			return nil, false
		}
		if c := mul(whole(n), each(b)); cost == nil || c.Cmp(cost) < 0 {
			cost = c
		}
	}
	return cost, true
}

// inForce is the last break with from ≤ n.
func inForce(breaks []quote.Break, n int) (quote.Break, bool) {
	var last quote.Break
	found := false
	for _, b := range breaks {
		if b.From <= n {
			last, found = b, true
		}
	}
	return last, found
}

func (s *state) squareInches(it item) *big.Rat {
	area := mul(it.W, it.H)
	if s.Unit == "mm" {
		inch := big.NewRat(254, 10)
		area = div(area, mul(inch, inch))
	}
	return area
}

func (s *state) areaItem(card quote.RateCard, it item) (*big.Rat, bool) {
	return bought(card, it.Need, card.Rates, func(b quote.Break) *big.Rat {
		return most(card.MinimumEach.Rat(), s.cents(mul(s.squareInches(it), b.Each.Rat())))
	})
}

func (s *state) pieceItem(card quote.RateCard, it item) (*big.Rat, bool) {
	breaks, ok := s.pieceRow(card, it)
	if !ok {
		return nil, false
	}
	return bought(card, it.Need, breaks, func(b quote.Break) *big.Rat { return most(card.MinimumEach.Rat(), b.Each.Rat()) })
}

func (s *state) pieceRow(card quote.RateCard, it item) ([]quote.Break, bool) {
	pl := s.Placements[it.Placement]
	figure := whole(s.inks(it.Placement))
	switch card.By {
	case "stitches":
		figure = pl.Stitches.Rat()
		if figure.Sign() == 0 {
			return nil, false
		}
	case "area":
		figure = s.squareInches(it)
	case "character":
		if it.letters == nil {
			return nil, false
		}
		figure = whole(it.Characters)
	default:
		if pl.FullColor {
			return card.FullColorEach, len(card.FullColorEach) > 0
		}
	}
	for _, row := range card.Prices {
		if row.Upto.Rat().Cmp(figure) >= 0 {
			return row.Each, true
		}
	}
	return nil, false
}

// planned prices items on a sheet or roll card: each run's cost is shared among its items.
func (s *state) planned(card quote.RateCard, items []item) ([]*big.Rat, bool) {
	bare := make([]Item, len(items))
	for i, it := range items {
		bare[i] = it.Item
	}
	runs, ok := s.planner.Plan(card, bare)
	if !ok {
		return nil, false
	}
	costs := make([]*big.Rat, len(items))
	for _, r := range runs {
		var on []Item
		for _, i := range r.Items {
			on = append(on, bare[i])
		}
		weights, ok := s.weights(card, on)
		if !ok {
			return nil, false
		}
		for k, part := range share(s.cents(r.Cost), weights, s.places()) {
			costs[r.Items[k]] = part
		}
	}
	return costs, true
}

// weights are by what the items of a run share its cost.
func (s *state) weights(card quote.RateCard, items []Item) ([]*big.Rat, bool) {
	var weights []*big.Rat
	largest := 0
	area := func(it Item) *big.Rat { return mul(it.W, it.H) }
	for i, it := range items {
		if area(it).Cmp(area(items[largest])) > 0 {
			largest = i
		}
	}
	for i, it := range items {
		switch s.Shop.SheetShare {
		case "area":
			weights = append(weights, mul(whole(it.Need), area(it)))
		case "count":
			weights = append(weights, whole(1))
		case "first":
			w := zero()
			if i == largest {
				w = whole(1)
			}
			weights = append(weights, w)
		default:
			alone, ok := s.planner.Plan(card, []Item{it})
			if !ok {
				return nil, false
			}
			weights = append(weights, alone[0].Cost)
		}
	}
	return weights, true
}
