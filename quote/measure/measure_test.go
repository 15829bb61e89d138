package measure_test

import (
	"testing"

	"pressworth/quote/measure"
	"pressworth/quote/money"
)

func number(t *testing.T, s string) money.Number {
	t.Helper()
	n, err := money.ParseNumber(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

type row struct {
	name   string
	f      func(money.Number, int) money.Number
	in     string
	places int
	want   string
}

func check(t *testing.T, rows []row) {
	t.Helper()
	for _, r := range rows {
		if got := r.f(number(t, r.in), r.places); got.String() != r.want {
			t.Errorf("%s of %s: got %s, want %s", r.name, r.in, got, r.want)
		}
	}
}

// NIST SP 811, appendix B.8 (second hand): 1 in = 25.4 mm exactly.
func TestInches_nist811(t *testing.T) {
	check(t, []row{
		{"millimetres", measure.Millimetres, "1", 8, "25.4"},
		{"inches", measure.Inches, "25.4", 8, "1"},
		{"inches", measure.Inches, "279.4", 2, "11"},
	})
}

// NIST SP 811, appendix B.8 (second hand): 1 oz/yd² = 33.90575 g/m²; the three weights computed from it.
func TestFabricWeight_nist811(t *testing.T) {
	check(t, []row{
		{"g/m²", measure.GramsPerSquareMetre, "1", 5, "33.90575"},
		{"g/m²", measure.GramsPerSquareMetre, "4.2", 3, "142.404"},
		{"g/m²", measure.GramsPerSquareMetre, "5.3", 3, "179.7"},
		{"g/m²", measure.GramsPerSquareMetre, "6.1", 3, "206.825"},
		{"oz/yd²", measure.OuncesPerSquareYard, "33.90575", 3, "1"},
	})
}

// C = (F − 32) / 1.8, the definition of the scale.
func TestTemperature_definition(t *testing.T) {
	check(t, []row{
		{"°C", measure.Celsius, "320", 1, "160"},
		{"°C", measure.Celsius, "212", 1, "100"},
		{"°C", measure.Celsius, "32", 1, "0"},
		{"°C", measure.Celsius, "300", 1, "148.9"},
		{"°C", measure.Celsius, "350", 1, "176.7"},
		{"°F", measure.Fahrenheit, "160", 0, "320"},
		{"°F", measure.Fahrenheit, "148.9", 0, "300"},
	})
}

// NIST SP 811, appendix B.8: 1 psi = 6.894757 kPa; 40 psi computed from it.
func TestPressure_nist811(t *testing.T) {
	check(t, []row{
		{"bar", measure.Bar, "1", 8, "0.06894757"},
		{"bar", measure.Bar, "40", 4, "2.7579"},
		{"psi", measure.PSI, "2.7579", 0, "40"},
	})
}

func TestMeasure_tooLargeIsNothing(t *testing.T) {
	check(t, []row{{"mm", measure.Millimetres, "999999999999", 2, "0"}})
}
