// Package money holds the exact numbers of the trade: amounts of money, and numbers that are no money (lengths,
// seconds, percentages, rates). Both are decimals of at most 12 digits before and 8 after the point when they come
// from a file; neither is ever a binary float.
//
// Not in this package: currencies' names and symbols, the formatting of amounts for people, and any rule of pricing.
package money

import (
	"fmt"
	"math/big"
	"regexp"
	"strings"

	"github.com/shopspring/decimal"
)

// form is what a number in a job file looks like: no exponent, plus sign, space or separator.
var form = regexp.MustCompile(`^-?[0-9]{1,12}(\.[0-9]{1,8})?$`)

func parse(s string) (decimal.Decimal, error) {
	if !form.MatchString(s) {
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

func fixed(d decimal.Decimal) string {
	if e := d.Exponent(); e < 0 {
		return d.StringFixed(-e)
	}
	return d.StringFixed(0)
}
