package book

import (
	"cmp"
	"slices"
	"strconv"

	"pressworth/catalog"
)

// orders are how rows are sorted by each column of the table; nil: the column sorts nothing.
var orders = []func(a, b catalog.QuoteRow) int{
	func(a, b catalog.QuoteRow) int { return cmp.Compare(place(a.State), place(b.State)) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(a.Number, b.Number) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(a.Customer, b.Customer) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(a.Title, b.Title) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(a.Pieces, b.Pieces) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(size(a.Total), size(b.Total)) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(size(a.Margin), size(b.Margin)) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(later(a.NeededBy), later(b.NeededBy)) },
	func(a, b catalog.QuoteRow) int { return cmp.Compare(a.NextStep, b.NextStep) },
}

// place is a state's place in the life of a quote.
func place(state string) int { return slices.Index(stateWords, state) }

// size is a figure for comparing only; what has none comes first.
func size(figure string) float64 {
	f, err := strconv.ParseFloat(figure, 64)
	if err != nil {
		return -1e18
	}
	return f
}

// later puts quotes without a day after those with one.
func later(day string) string {
	if day == "" {
		return "9999"
	}
	return day
}

// sortBy sorts by a column; the same column again turns the order round, a third time it goes back to the last changed.
func (p *Place) sortBy(column int) {
	switch {
	case p.column != column:
		p.column, p.down = column, false
	case !p.down:
		p.down = true
	default:
		p.column, p.down = -1, false
	}
	p.table.SetSorted(p.column, p.down)
	p.find()
}

func (p *Place) sorted(rows []catalog.QuoteRow) []catalog.QuoteRow {
	if p.column < 0 || p.column >= len(orders) {
		return rows
	}
	order := orders[p.column]
	slices.SortStableFunc(rows, func(a, b catalog.QuoteRow) int {
		if p.down {
			return order(b, a)
		}
		return order(a, b)
	})
	return rows
}
