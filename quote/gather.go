package quote

import (
	"strings"

	"pressworth/quote/money"
)

// Gathered is one kind of cost: its lines, and their sum.
type Gathered struct {
	Kind   string
	Amount money.Amount
	Lines  []CostLine
}

// Gather adds the cost lines up by kind, in the order of the kinds' first lines; kinds that cost nothing are left out.
func (c Cost) Gather() []Gathered {
	var out []Gathered
	at := map[string]int{}
	for _, l := range c.Lines {
		i, ok := at[l.Kind]
		if !ok {
			i = len(out)
			at[l.Kind] = i
			out = append(out, Gathered{Kind: l.Kind})
		}
		out[i].Amount = Sum(out[i].Amount, l.Amount)
		if l.Amount.Sign() != 0 {
			out[i].Lines = append(out[i].Lines, l)
		}
	}
	kept := out[:0]
	for _, g := range out {
		if g.Amount.Sign() != 0 {
			kept = append(kept, g)
		}
	}
	return kept
}

// Sum adds amounts of one currency, with the places of the finest of them.
func Sum(amounts ...money.Amount) money.Amount {
	places := 0
	for _, a := range amounts {
		places = max(places, placesOf(a))
	}
	total := int64(0)
	for _, a := range amounts {
		units, _ := a.Minor(places)
		total += units
	}
	return money.FromMinor(total, places)
}

// Less is how much lower to is than from; negative where it is higher.
func Less(from, to money.Amount) money.Amount {
	places := max(placesOf(from), placesOf(to))
	a, _ := from.Minor(places)
	b, _ := to.Minor(places)
	return money.FromMinor(a-b, places)
}

// PerPiece is an amount for each of n pieces, rounded half away from zero to the amount's own places; 0 where n is 0.
func PerPiece(a money.Amount, n int) money.Amount {
	places := placesOf(a)
	units, _ := a.Minor(places)
	if n <= 0 {
		return money.FromMinor(0, places)
	}
	half := int64(n) / 2
	if units < 0 {
		half = -half
	}
	return money.FromMinor((units+half)/int64(n), places)
}

func placesOf(a money.Amount) int {
	s := a.String()
	if i := strings.IndexByte(s, '.'); i >= 0 {
		return len(s) - i - 1
	}
	return 0
}
