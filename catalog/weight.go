package catalog

import (
	"math/big"

	"pressworth/quote/money"
)

// gramsPerOunce is one ounce per square yard in grams per square metre, exact: an ounce is 28.349523125 g and a yard
// 0.9144 m.
var gramsPerOunce = new(big.Rat).Quo(rational("28.349523125"), rational("0.83612736"))

func rational(s string) *big.Rat {
	r, _ := new(big.Rat).SetString(s)
	return r
}

// GramsFromOunces turns ounces per square yard into grams per square metre, rounded to one place.
func GramsFromOunces(oz money.Number) money.Number {
	return onePlace(new(big.Rat).Mul(oz.Rat(), gramsPerOunce))
}

// OuncesFromGrams turns grams per square metre into ounces per square yard, rounded to one place.
func OuncesFromGrams(grams money.Number) money.Number {
	return onePlace(new(big.Rat).Quo(grams.Rat(), gramsPerOunce))
}

func onePlace(r *big.Rat) money.Number {
	n, err := money.ParseNumber(r.FloatString(1))
	if err != nil {
		return money.Number{} // beyond twelve digits: no fabric
	}
	return n
}
