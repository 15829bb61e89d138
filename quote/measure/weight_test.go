package measure_test

import (
	"testing"

	"pressworth/quote/measure"
	"pressworth/quote/money"
)

// NIST Special Publication 811, appendix B.8 (second hand): 1 oz/yd² is 33.90575 g/m²; 4.2, 5.3 and 6.1 oz/yd² are 142.404, 179.700 and
// 206.825 g/m². Rounded here to one place.
func TestGramsFromOunces_nistFactor(t *testing.T) {
	for oz, want := range map[string]string{"1": "33.9", "4.2": "142.4", "5.3": "179.7", "6.1": "206.8", "0": "0"} {
		n, err := money.ParseNumber(oz)
		if err != nil {
			t.Fatal(err)
		}
		grams := measure.GramsPerSquareMetre(n, 1)
		if grams.String() != want {
			t.Errorf("%s oz/yd²: got %s g/m², want %s", oz, grams, want)
		}
		if back := measure.OuncesPerSquareYard(grams, 1); back.Cmp(n) != 0 {
			t.Errorf("%s g/m² back: got %s oz/yd², want %s", grams, back, oz)
		}
	}
}
