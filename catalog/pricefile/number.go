package pricefile

import (
	"errors"
	"strings"

	"pressworth/catalog"
)

// maxPrice is more than any blank costs; a larger one is a slip, or not a price.
const maxPrice = 1_000_000 * 10_000

var (
	errNumber   = errors.New("is not a price")
	errPlaces   = errors.New("has more than four decimals")
	errNegative = errors.New("is below zero")
	errLarge    = errors.New("is a million or more: is this a price?")
)

// price reads an amount as lists write it: 4.35, $4.35, 1,234.50, or with a decimal comma 1.234,50. An empty cell is 0.
func price(cell string, comma bool) (catalog.Myriad, error) {
	if m, ok := plainPrice(cell); ok {
		return m, nil
	}
	s := stripped(cell)
	if s == "" {
		return 0, nil
	}
	if s[0] == '-' || s[0] == '(' {
		return 0, errNegative
	}
	point, group := byte('.'), byte(',')
	if comma {
		point, group = ',', '.'
	}
	whole, rest, _ := strings.Cut(s, string(point))
	whole, ok := ungrouped(whole, group)
	if !ok || !digits(rest) || whole+rest == "" {
		return 0, errNumber
	}
	rest = strings.TrimRight(rest, "0")
	switch {
	case len(rest) > 4:
		return 0, errPlaces
	case len(whole) > 9:
		return 0, errLarge
	}
	m := catalog.Myriad(0)
	for _, c := range whole + (rest + "0000")[:4] {
		m = m*10 + catalog.Myriad(c-'0')
	}
	if m >= maxPrice {
		return 0, errLarge
	}
	return m, nil
}

// plainPrice is the short way for what most cells hold: digits, a point, two digits.
func plainPrice(s string) (catalog.Myriad, bool) {
	n := len(s)
	if n < 4 || n > 8 || s[n-3] != '.' {
		return 0, false
	}
	m := catalog.Myriad(0)
	for i := range n {
		if i == n-3 {
			continue
		}
		if s[i] < '0' || s[i] > '9' {
			return 0, false
		}
		m = m*10 + catalog.Myriad(s[i]-'0')
	}
	return m * 100, true
}

// stripped takes spaces, currency signs and codes off an amount.
func stripped(s string) string {
	s = strings.Map(func(r rune) rune {
		switch r {
		case ' ', '\t', '\u00a0', '\u202f', '$', '€', '£', '¥', '\'', '’':
			return -1
		}
		return r
	}, s)
	for _, code := range []string{"USD", "EUR", "GBP", "CAD", "AUD", "NZD", "CHF"} {
		s = strings.TrimSuffix(strings.TrimPrefix(s, code), code)
	}
	return s
}

// ungrouped takes marks between groups of three digits out of a whole number.
func ungrouped(s string, group byte) (string, bool) {
	if strings.IndexByte(s, group) < 0 {
		return s, digits(s)
	}
	groups := strings.Split(s, string(group))
	for i, g := range groups {
		if !digits(g) || i > 0 && len(g) != 3 || i == 0 && (g == "" || len(g) > 3) {
			return "", false
		}
	}
	return strings.Join(groups, ""), true
}

func digits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return true
}

// decimalComma says whether the amounts of a column are written with a decimal comma, by those that can be read one way
// only.
func decimalComma(cells []string) bool {
	comma, point := 0, 0
	for _, c := range cells {
		s := stripped(c)
		lastComma, lastPoint := strings.LastIndexByte(s, ','), strings.LastIndexByte(s, '.')
		switch {
		case lastComma > lastPoint && (len(s)-lastComma-1 != 3 || lastPoint >= 0):
			comma++
		case lastPoint > lastComma && (len(s)-lastPoint-1 != 3 || lastComma >= 0):
			point++
		}
	}
	return comma > point
}
