package gang_test

import "pressworth/quote/gang"

// oracleRoll is the cost of the cheapest lengths that hold the items, found by trying all, or -1 where none below the
// limit do. It is not sure where that takes too long. It shares no code with the package.
func oracleRoll(card gang.RollCard, items []gang.Item, need []int, limit int64) (best int64, sure bool) {
	best = -1
	steps := 300_000
	count := make([]int, len(card.Lengths))
	var try func(j int, cost int64)
	try = func(j int, cost int64) {
		if cost > limit || best >= 0 && cost >= best {
			return
		}
		if j == len(count) {
			if oracleHolds(card, items, need, count, &steps) {
				best = cost
			}
			return
		}
		for n := 0; ; n++ {
			c := cost + int64(n)*card.Lengths[j].Each
			if c > limit {
				break
			}
			count[j] = n
			try(j+1, c)
		}
		count[j] = 0
	}
	try(0, 0)
	return best, steps >= 0
}

// oracleHolds packs all lengths as one grid, one below the other, with borders that no piece may cross.
func oracleHolds(card gang.RollCard, items []gang.Item, need, count []int, steps *int) bool {
	g := grid{steps: steps, w: int(card.W - 2*card.Edge + card.Gap)}
	for j, l := range card.Lengths {
		high := int(l.Length - 2*card.Edge + card.Gap)
		for range count[j] {
			if high <= int(card.Gap) {
				continue
			}
			g.h += high
			for range high {
				g.ends = append(g.ends, g.h)
			}
		}
	}
	waste := g.w * g.h
	for i, it := range items {
		k := kind{int(it.W + card.Gap), int(it.H + card.Gap), it.Turn, need[i]}
		g.kinds = append(g.kinds, k)
		waste -= k.w * k.h * k.count
	}
	g.taken = make([]bool, g.w*g.h)
	return waste >= 0 && g.fill(0, waste)
}
