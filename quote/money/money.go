// Package money holds the exact numbers of the trade: amounts of money, and numbers that are no money (lengths,
// seconds, percentages, rates). Both are decimals of at most 12 digits before and 8 after the point when they come
// from a file; neither is ever a binary float.
//
// Not in this package: currencies' names and symbols, the formatting of amounts for people, and any rule of pricing.
package money

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// wellFormed says whether s is what a number in a job file looks like, -?[0-9]{1,12}(\.[0-9]{1,8})?: no exponent, plus
// sign, space or separator.
func wellFormed(s string) bool {
	whole, part, point := strings.Cut(strings.TrimPrefix(s, "-"), ".")
	return digits(whole, 12) && (!point || digits(part, 8))
}

func digits(s string, most int) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return len(s) > 0 && len(s) <= most
}

func parse(s string) (decimal.Decimal, error) {
	if !wellFormed(s) {
		return decimal.Decimal{}, fmt.Errorf("%q is not a number: write digits with at most 8 after a point, like 12.50", clip(s))
	}
	return decimal.NewFromString(s)
}

func clip(s string) string {
	if r := []rune(s); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return s
}

// Amount is an amount of money in major units (dollars, not cents), exact. It remembers with how many places it was
// written. The zero value is 0.
type Amount struct{ d decimal.Decimal }

// ParseAmount reads an amount of the form -?[0-9]{1,12}(\.[0-9]{1,8})?.
func ParseAmount(s string) (Amount, error) {
	d, err := parse(s)
	return Amount{d}, err
}

// FromMinor makes an amount from whole minor units (cents) of a currency with the given places.
func FromMinor(units int64, places int) Amount {
	return Amount{decimal.New(units, -int32(places))}
}

// Minor returns the amount in whole minor units of a currency with the given places; false if it is not whole or does
// not fit.
func (a Amount) Minor(places int) (int64, bool) {
	if units, e, ok := small(a.d); ok && e+places <= 0 && -e-places < len(tens) {
		unit := tens[-e-places]
		return units / unit, units%unit == 0
	}
	d := a.d.Shift(int32(places))
	if !d.IsInteger() || !d.BigInt().IsInt64() {
		return 0, false
	}
	return d.BigInt().Int64(), true
}

// String writes the amount with the places it was made with: FromMinor(2750, 2) gives "27.50".
func (a Amount) String() string { return fixed(a.d) }

// Rat returns the amount as an exact fraction.
func (a Amount) Rat() *big.Rat { return a.d.Rat() }

// Sign is -1, 0 or 1.
func (a Amount) Sign() int { return a.d.Sign() }

// Cmp compares two amounts of the same currency: -1, 0 or 1.
func (a Amount) Cmp(b Amount) int { return a.d.Cmp(b.d) }

// MarshalText writes the amount as String does.
func (a Amount) MarshalText() ([]byte, error) { return []byte(a.String()), nil }

// UnmarshalText reads the amount as ParseAmount does.
func (a *Amount) UnmarshalText(b []byte) (err error) {
	*a, err = ParseAmount(string(b))
	return err
}

// Number is an exact decimal that is no money: a length, seconds, a percentage, a rate. The zero value is 0.
type Number struct{ d decimal.Decimal }

// ParseNumber reads a number of the form -?[0-9]{1,12}(\.[0-9]{1,8})?.
func ParseNumber(s string) (Number, error) {
	d, err := parse(s)
	return Number{d}, err
}

// Int makes a whole number.
func Int(n int64) Number { return Number{decimal.NewFromInt(n)} }

// String writes the number without trailing zeros.
func (n Number) String() string {
	s := fixed(n.d)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// Rat returns the number as an exact fraction.
func (n Number) Rat() *big.Rat { return n.d.Rat() }

// Sign is -1, 0 or 1.
func (n Number) Sign() int { return n.d.Sign() }

// Cmp compares two numbers: -1, 0 or 1.
func (n Number) Cmp(m Number) int { return n.d.Cmp(m.d) }

// Scaled returns the number in units of 10^-places; false if it is not whole in them or does not fit.
func (n Number) Scaled(places int) (int64, bool) { return Amount(n).Minor(places) }

// Places is how many digits after the point the number needs.
func (n Number) Places() int {
	s := n.String()
	if i := strings.IndexByte(s, '.'); i >= 0 {
		return len(s) - i - 1
	}
	return 0
}

// MarshalText writes the number as String does.
func (n Number) MarshalText() ([]byte, error) { return []byte(n.String()), nil }

// UnmarshalText reads the number as ParseNumber does.
func (n *Number) UnmarshalText(b []byte) (err error) {
	*n, err = ParseNumber(string(b))
	return err
}

// tens are the powers of ten that an int64 holds.
var tens = func() (t [19]int64) {
	t[0] = 1
	for i := 1; i < len(t); i++ {
		t[i] = 10 * t[i-1]
	}
	return t
}()

// small is a decimal as units × 10^e, where the units are few enough to be reckoned with in an int64.
func small(d decimal.Decimal) (units int64, e int, ok bool) {
	if d.NumDigits() > 18 {
		return 0, 0, false
	}
	return d.CoefficientInt64(), int(d.Exponent()), true
}

func fixed(d decimal.Decimal) string {
	if units, e, ok := small(d); ok && e <= 0 && -e < len(tens) {
		return plain(units, -e)
	}
	if e := d.Exponent(); e < 0 {
		return d.StringFixed(-e)
	}
	return d.StringFixed(0)
}

// plain writes units of 10^-places.
func plain(units int64, places int) string {
	b := make([]byte, 0, 24)
	if units < 0 {
		b, units = append(b, '-'), -units
	}
	b = strconv.AppendInt(b, units/tens[places], 10)
	if places == 0 {
		return string(b)
	}
	b = append(b, '.')
	part := units % tens[places]
	for p := places - 1; p > 0 && part < tens[p]; p-- {
		b = append(b, '0')
	}
	return string(strconv.AppendInt(b, part, 10))
}
