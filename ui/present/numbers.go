package present

import (
	"math/big"
	"strconv"
	"strings"

	"pressworth/quote/money"
)

// Grouped writes a plain decimal with commas between thousands: "1261.38" becomes "1,261.38". Anything else is
// returned as it is.
func Grouped(s string) string {
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "−", s[1:]
	}
	whole, rest, _ := strings.Cut(s, ".")
	for _, r := range whole {
		if r < '0' || r > '9' {
			return sign + s
		}
	}
	var b strings.Builder
	b.WriteString(sign)
	for i, r := range whole {
		if i > 0 && (len(whole)-i)%3 == 0 {
			b.WriteByte(',')
		}
		b.WriteRune(r)
	}
	if rest != "" {
		b.WriteString("." + rest)
	}
	return b.String()
}

// Amount writes an amount of money for reading.
func Amount(a money.Amount) string { return Grouped(a.String()) }

// whole writes an amount rounded to whole units, for key figures.
func whole(a money.Amount) string { return Grouped(a.Rat().FloatString(0)) }

// drawn is a number for the eye only: the position or the length of a drawn thing.
func drawn(s string) float64 {
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0
	}
	return f
}

// fraction is part of whole for drawing, 0 to 1.
func fraction(part, all money.Amount) float64 {
	if all.Sign() <= 0 {
		return 0
	}
	f, _ := new(big.Rat).Quo(part.Rat(), all.Rat()).Float64()
	return f
}

// inches writes a length from a job without needless zeros.
func inches(w, h string) string { return trim(w) + " × " + trim(h) }

func trim(s string) string {
	if strings.Contains(s, ".") {
		return strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}
