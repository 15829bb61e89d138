package cards

import (
	"fmt"
	"slices"

	"pressworth/quote"
	"pressworth/quote/money"
)

// warnings are what is odd about a card's prices though it can be used: prices that rise with quantity, prices that
// fall with more inks, and prices that are missing from the first piece on.
func warnings(c quote.RateCard) []string {
	var out []string
	say := func(format string, args ...any) { out = append(out, fmt.Sprintf(format, args...)) }
	column := func(where string, each []quote.Break, least int) {
		if len(each) > 0 && each[0].From > max(least, 1) {
			say("%s: no price below %d", where, each[0].From)
		}
		for i := 1; i < len(each); i++ {
			if each[i].Each.Cmp(each[i-1].Each) > 0 {
				say("%s: from %d it costs more than from %d", where, each[i].From, each[i-1].From)
			}
		}
	}
	column("by area", c.Rates, 1)
	out = append(out, gaps(c)...)
	column(fullColor, c.FullColorEach, c.Minimum)
	for _, s := range c.Sizes {
		for j, row := range s.Prices {
			column(fmt.Sprintf("%s, %d inks", s.Name, row.Inks), row.Each, s.Minimum)
			if j > 0 && cheaper(row.Each, s.Prices[j-1].Each) {
				say("%s: %d inks cost less than %d", s.Name, row.Inks, s.Prices[j-1].Inks)
			}
		}
	}
	for j, row := range c.Prices {
		column("up to "+row.Upto.String(), row.Each, c.Minimum)
		if j > 0 && cheaper(row.Each, c.Prices[j-1].Each) {
			say("up to %s costs less than up to %s", row.Upto, c.Prices[j-1].Upto)
		}
	}
	return append(out, lengthWarnings(c.Lengths)...)
}

// cheaper tells whether some price is below the one at the same quantity in another column.
func cheaper(each, than []quote.Break) bool {
	for _, a := range each {
		for _, b := range than {
			if a.From == b.From && a.Each.Cmp(b.Each) < 0 {
				return true
			}
		}
	}
	return false
}

func lengthWarnings(lengths []quote.RollLength) (out []string) {
	last := money.Amount{}
	for i, l := range lengths {
		if i > 0 && l.Each.Cmp(last) < 0 {
			out = append(out, fmt.Sprintf("a length of %s costs less than the shorter one before it", l.Length))
		}
		last = l.Each
	}
	return out
}

// gaps are quantities that some columns of a table have a price from and a column between them has not.
func gaps(c quote.RateCard) (out []string) {
	for _, s := range c.Sizes {
		names, columns := make([]string, len(s.Prices)), make([][]quote.Break, len(s.Prices))
		for i, row := range s.Prices {
			names[i], columns[i] = fmt.Sprintf("%s, %d inks", s.Name, row.Inks), row.Each
		}
		out = append(out, gapsOf(names, columns)...)
	}
	names, columns := make([]string, len(c.Prices)), make([][]quote.Break, len(c.Prices))
	for i, row := range c.Prices {
		names[i], columns[i] = "up to "+row.Upto.String(), row.Each
	}
	return append(out, gapsOf(names, columns)...)
}

func gapsOf(names []string, columns [][]quote.Break) (out []string) {
	var froms []int
	for _, each := range columns {
		for _, b := range each {
			if !slices.Contains(froms, b.From) {
				froms = append(froms, b.From)
			}
		}
	}
	slices.Sort(froms)
	for i, each := range columns {
		if len(each) == 0 {
			continue
		}
		for _, from := range froms {
			inside := from > each[0].From && from < each[len(each)-1].From
			if inside && !slices.ContainsFunc(each, func(b quote.Break) bool { return b.From == from }) {
				out = append(out, fmt.Sprintf("%s: no price from %d, where others have one", names[i], from))
			}
		}
	}
	return out
}
