package gang

import "slices"

// longest list of sums that reach makes.
const longest = 1 << 14

// reach is the largest sum of sides, each taken any number of times, that is not above limit. In a layout pushed into
// the corner every border is such a sum (Herz 1972; Christofides & Whitlock 1977), so what lies between it and the
// limit is lost. Where the sums are too many to list it is the limit itself.
func reach(limit int64, sides []int64) int64 {
	if limit <= 0 {
		return 0
	}
	var unit int64
	for _, a := range sides {
		unit = divisor(unit, a)
	}
	if unit <= 0 {
		return 0
	}
	n := limit / unit
	if n > longest {
		return limit
	}
	least := slices.Min(sides) / unit
	can := make([]bool, n+1)
	can[0] = true
	best, row := int64(0), int64(0)
	for x := range n + 1 {
		if !can[x] {
			row = 0
			continue
		}
		if row++; row == least {
			return n * unit // from here on one more of the least side leads everywhere
		}
		best = x
		for _, a := range sides {
			if a > 0 && a/unit <= n-x {
				can[x+a/unit] = true
			}
		}
	}
	return best * unit
}

// divisor is the greatest common divisor; of 0 and b it is b.
func divisor(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
