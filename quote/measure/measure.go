// Package measure turns the measures of the trade into one another: inches and millimetres, ounces a square yard and
// grams a square metre, degrees, pounds a square inch and bar. Factors are exact or as published; results are rounded
// once, half away from zero, to the places that are asked for.
//
// Not in this package: money, and which of two measures a shop likes to read.
package measure

import (
	"math/big"

	"pressworth/quote/money"
)

// Factors. The inch is exact, and so is the fabric weight: an ounce is 28.349523125 g, a yard 0.9144 m. The pound is that
// of NIST Special Publication 811, appendix B.8.
var (
	millimetresPerInch  = big.NewRat(254, 10)
	gramsPerOunce       = big.NewRat(28_349_523_125, 836_127_360) // g/m² for 1 oz/yd²
	kilopascalsPerPound = big.NewRat(6894757, 1000000)
	hundred             = big.NewRat(100, 1)
)

// Millimetres are inches × 25.4.
func Millimetres(inches money.Number, places int) money.Number {
	return rounded(new(big.Rat).Mul(inches.Rat(), millimetresPerInch), places)
}

// Inches are millimetres / 25.4.
func Inches(millimetres money.Number, places int) money.Number {
	return rounded(new(big.Rat).Quo(millimetres.Rat(), millimetresPerInch), places)
}

// GramsPerSquareMetre is a fabric's weight from ounces a square yard.
func GramsPerSquareMetre(ounces money.Number, places int) money.Number {
	return rounded(new(big.Rat).Mul(ounces.Rat(), gramsPerOunce), places)
}

// OuncesPerSquareYard is a fabric's weight from grams a square metre.
func OuncesPerSquareYard(grams money.Number, places int) money.Number {
	return rounded(new(big.Rat).Quo(grams.Rat(), gramsPerOunce), places)
}

// Celsius is (°F − 32) / 1.8.
func Celsius(fahrenheit money.Number, places int) money.Number {
	above := new(big.Rat).Sub(fahrenheit.Rat(), big.NewRat(32, 1))
	return rounded(above.Quo(above, big.NewRat(18, 10)), places)
}

// Fahrenheit is °C × 1.8 + 32.
func Fahrenheit(celsius money.Number, places int) money.Number {
	scaled := new(big.Rat).Mul(celsius.Rat(), big.NewRat(18, 10))
	return rounded(scaled.Add(scaled, big.NewRat(32, 1)), places)
}

// Bar is a pressure from pounds a square inch; 1 bar is 100 kPa.
func Bar(psi money.Number, places int) money.Number {
	kPa := new(big.Rat).Mul(psi.Rat(), kilopascalsPerPound)
	return rounded(kPa.Quo(kPa, hundred), places)
}

// PSI is a pressure in pounds a square inch from bar.
func PSI(bar money.Number, places int) money.Number {
	kPa := new(big.Rat).Mul(bar.Rat(), hundred)
	return rounded(kPa.Quo(kPa, kilopascalsPerPound), places)
}

// rounded gives x with at most 8 places; a number that is larger than a job file may hold becomes 0.
func rounded(x *big.Rat, places int) money.Number {
	n, err := money.ParseNumber(x.FloatString(max(0, min(places, 8))))
	if err != nil {
		return money.Number{}
	}
	return n
}
