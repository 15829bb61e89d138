package gang

// buying is how many sheets are bought, and for how much.
type buying struct {
	sheets int
	each   Price
	cost   Price // of the sheets, without setup
}

// buy is the cheapest way to have at least x sheets of a size by one ink row: the size's minimum and the row's first
// break are kept, and a later break is moved up to where that costs less. Of equal costs the fewest sheets are bought.
// It is false where nothing can be bought. A larger x never gives a lower cost.
func buy(size *SheetSize, row int, x int) (best buying, ok bool) {
	breaks := size.Prices[row].Each
	if len(breaks) == 0 {
		return buying{}, false
	}
	x = max(x, size.Minimum, breaks[0].From)
	for k, b := range breaks {
		if k+1 < len(breaks) && breaks[k+1].From <= x {
			continue
		}
		n := max(x, b.From)
		cost, fine := times(n, b.Each)
		if fine && (!ok || cost < best.cost) {
			best, ok = buying{n, b.Each, cost}, true
		}
	}
	return best, ok
}

// rowFor is the first ink row for so many inks, or -1.
func rowFor(size *SheetSize, inks int) int {
	for r, row := range size.Prices {
		if row.Inks >= inks {
			return r
		}
	}
	return -1
}
