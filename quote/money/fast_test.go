package money

import (
	"regexp"
	"testing"

	"github.com/shopspring/decimal"
	"pgregory.net/rapid"
)

// The short ways of writing and scaling agree with the decimal library's.
func TestAmount_shortWaysAgreeWithTheLibrary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := FromMinor(rapid.Int64().Draw(t, "units"), rapid.IntRange(0, 19).Draw(t, "places"))
		if got, want := a.String(), a.d.StringFixed(-a.d.Exponent()); got != want {
			t.Fatalf("%v: written %q, want %q", a.d, got, want)
		}
		places := rapid.IntRange(0, 20).Draw(t, "to places")
		d := a.d.Shift(int32(places))
		whole := d.IsInteger() && d.BigInt().IsInt64()
		if got, ok := a.Minor(places); ok != whole || ok && got != d.BigInt().Int64() {
			t.Fatalf("%v in units of %d places: got %d, %v; want %v, %v", a.d, places, got, ok, d, whole)
		}
	})
}

func TestParse_takesWhatTheFormSays(t *testing.T) {
	form := regexp.MustCompile(`^-?[0-9]{1,12}(\.[0-9]{1,8})?$`)
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.StringMatching(`[-+]{0,2}[0-9x]{0,14}[.,]{0,2}[0-9e]{0,10}`).Draw(t, "text")
		d, err := parse(s)
		if (err == nil) != form.MatchString(s) {
			t.Fatalf("%q: %v", s, err)
		}
		if want, _ := decimal.NewFromString(s); err == nil && !d.Equal(want) {
			t.Fatalf("%q: got %v", s, d)
		}
	})
}
