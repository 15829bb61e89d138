package catalog

import (
	"fmt"
	"math/big"
	"slices"

	"pressworth/quote"
	"pressworth/quote/money"
)

// rushed is a card with the surcharge of a tier on all that its supplier charges: each price is rounded half away from
// zero to the currency's places, a rate by area to 8 places. The name says so.
func rushed(c quote.RateCard, tier Rush, currency string) quote.RateCard {
	places, ok := money.Places(currency)
	if !ok {
		places = 2
	}
	more := func(a money.Amount) money.Amount { return surcharged(a, tier.Percent, places) }
	dearer := func(breaks []quote.Break, places int) []quote.Break {
		out := slices.Clone(breaks)
		for i := range out {
			out[i].Each = surcharged(out[i].Each, tier.Percent, places)
		}
		return out
	}
	c.Name += tier.words()
	c.SetupPerDesign, c.SetupPerInk, c.MinimumEach = more(c.SetupPerDesign), more(c.SetupPerInk), more(c.MinimumEach)
	c.Rates, c.FullColorEach = dearer(c.Rates, 8), dearer(c.FullColorEach, places)
	c.Sizes = slices.Clone(c.Sizes)
	for i := range c.Sizes {
		c.Sizes[i].Prices = slices.Clone(c.Sizes[i].Prices)
		for j, row := range c.Sizes[i].Prices {
			c.Sizes[i].Prices[j].Each = dearer(row.Each, places)
		}
	}
	c.Prices = slices.Clone(c.Prices)
	for i := range c.Prices {
		c.Prices[i].Each = dearer(c.Prices[i].Each, places)
	}
	c.Lengths = slices.Clone(c.Lengths)
	for i := range c.Lengths {
		c.Lengths[i].Each = more(c.Lengths[i].Each)
	}
	return c
}

// words are what a card's name says of the rush that is in its prices.
func (r Rush) words() string { return fmt.Sprintf(", rush %s +%s %%", days(r.Days), r.Percent) }

func days(n int) string {
	if n == 1 {
		return "1 day"
	}
	return fmt.Sprintf("%d days", n)
}

// surcharged is an amount with so many percent more, rounded half away from zero.
func surcharged(a money.Amount, percent money.Number, places int) money.Amount {
	scale := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil))
	more := new(big.Rat).Add(big.NewRat(1, 1), new(big.Rat).Mul(percent.Rat(), big.NewRat(1, 100)))
	units, ok := money.Cents(more.Mul(more, a.Rat()).Mul(more, scale))
	if !ok {
		return a
	}
	out := money.FromMinor(units, places)
	if short, err := money.ParseNumber(out.String()); err == nil && places > 4 {
		out, _ = money.ParseAmount(short.String()) // a rate without the zeros behind it
	}
	return out
}
