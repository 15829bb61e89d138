package catalog

import (
	"errors"
	"math/big"

	"pressworth/quote"
	"pressworth/quote/money"
)

// BulkChange changes many prices alike: by a percentage, then by an amount; either may be below zero.
type BulkChange struct {
	Percent money.Number
	Amount  money.Amount
}

var errNothingLeft = errors.New("the change would leave a price of nothing")

// Of changes the prices of one size, each rounded to the cent, halves up.
func (c BulkChange) Of(each []quote.Break) ([]quote.Break, error) {
	factor := new(big.Rat).Add(big.NewRat(1, 1), new(big.Rat).Quo(c.Percent.Rat(), big.NewRat(100, 1)))
	out := make([]quote.Break, len(each))
	for i, b := range each {
		sum := new(big.Rat).Add(new(big.Rat).Mul(b.Each.Rat(), factor), c.Amount.Rat())
		price, err := money.ParseAmount(sum.FloatString(2))
		if err != nil || price.Sign() <= 0 {
			return nil, errNothingLeft
		}
		out[i] = quote.Break{From: b.From, Each: price}
	}
	return out, nil
}
