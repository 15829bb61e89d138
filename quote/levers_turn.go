package quote

import (
	"math/big"
	"slices"
	"strings"

	"pressworth/quote/money"
)

// tenths is n tenths of a number, to at most 8 places.
func tenths(x money.Number, n int64) money.Number {
	y, err := money.ParseNumber(tenthsText(x.Rat(), x.Places()+1, n))
	if err != nil {
		return x
	}
	return y
}

// tenthsOf is n tenths of an amount, to at most 8 places.
func tenthsOf(a money.Amount, n int64) money.Amount {
	return tenthsTo(a, n, placesOf(a)+1)
}

// tenthsTo is n tenths of an amount, rounded half away from zero to some places.
func tenthsTo(a money.Amount, n int64, places int) money.Amount {
	b, err := money.ParseAmount(tenthsText(a.Rat(), places, n))
	if err != nil {
		return a
	}
	return b
}

func tenthsText(x *big.Rat, places int, n int64) string {
	text := new(big.Rat).Mul(x, big.NewRat(n, 10)).FloatString(min(places, 8))
	return strings.TrimPrefix(text, "+")
}

func tenthsEach(breaks []Break, n int64) []Break {
	breaks = slices.Clone(breaks)
	for i := range breaks {
		breaks[i].Each = tenthsOf(breaks[i].Each, n)
	}
	return breaks
}

func turnBlanks(j Job, n int64) Job {
	for i := range j.Garments {
		g := &j.Garments[i]
		g.Sizes = slices.Clone(g.Sizes)
		for k := range g.Sizes {
			g.Sizes[k].Each = tenthsEach(g.Sizes[k].Each, n)
		}
	}
	return j
}

func turnTransfers(j Job, n int64) Job {
	for i := range j.RateCards {
		turnCard(&j.RateCards[i], n)
	}
	return j
}

// turnCard turns every price of a card. Setups and minimums stay whole minor units.
func turnCard(c *RateCard, n int64) {
	for _, a := range []*money.Amount{&c.SetupPerDesign, &c.SetupPerInk, &c.MinimumEach} {
		*a = tenthsTo(*a, n, placesOf(*a))
	}
	c.Rates, c.FullColorEach = tenthsEach(c.Rates, n), tenthsEach(c.FullColorEach, n)
	c.Lengths = slices.Clone(c.Lengths)
	for i := range c.Lengths {
		c.Lengths[i].Each = tenthsOf(c.Lengths[i].Each, n)
	}
	c.Prices = slices.Clone(c.Prices)
	for i := range c.Prices {
		c.Prices[i].Each = tenthsEach(c.Prices[i].Each, n)
	}
	c.Sizes = slices.Clone(c.Sizes)
	for i := range c.Sizes {
		rows := slices.Clone(c.Sizes[i].Prices)
		for k := range rows {
			rows[k].Each = tenthsEach(rows[k].Each, n)
		}
		c.Sizes[i].Prices = rows
	}
}

// turnMinutes turns all the time at the press: setting up, handling, pressing.
func turnMinutes(j Job, n int64) Job {
	s := &j.Shop
	for _, x := range []*money.Number{&s.JobSetupMin, &s.DesignSetupMin, &s.ChangeoverMin, &s.Handling} {
		*x = tenths(*x, n)
	}
	for i := range j.Garments {
		if h := j.Garments[i].Handling; h != nil {
			t := tenths(*h, n)
			j.Garments[i].Handling = &t
		}
	}
	for i := range j.RateCards {
		if j.RateCards[i].Press == nil {
			continue
		}
		p := *j.RateCards[i].Press
		for _, x := range []*money.Number{&p.Prep, &p.Place, &p.Dwell, &p.Peel, &p.Second, &p.PrepMin} {
			*x = tenths(*x, n)
		}
		j.RateCards[i].Press = &p
	}
	return j
}
