package gang_test

import (
	"pressworth/quote/gang"

	"pgregory.net/rapid"
)

// tinyCard draws a sheet card that the oracle can try out.
func tinyCard(t *rapid.T) gang.SheetCard {
	card := gang.SheetCard{
		MaxInks:        rapid.SampledFrom([]int{0, 0, 3, 2}).Draw(t, "max inks"),
		SetupPerDesign: int64(rapid.IntRange(0, 3).Draw(t, "setup a design")),
		SetupPerInk:    int64(rapid.IntRange(0, 5).Draw(t, "setup an ink")),
	}
	for range rapid.IntRange(1, 3).Draw(t, "sizes") {
		card.Sizes = append(card.Sizes, tinySize(t))
	}
	return card
}

func tinySize(t *rapid.T) gang.SheetSize {
	edge := int64(rapid.SampledFrom([]int{0, 0, 1}).Draw(t, "edge"))
	size := gang.SheetSize{
		W:       2*edge + int64(rapid.IntRange(2, 6).Draw(t, "width")),
		H:       2*edge + int64(rapid.IntRange(2, 6).Draw(t, "height")),
		Edge:    edge,
		Gap:     int64(rapid.SampledFrom([]int{0, 0, 1}).Draw(t, "gap")),
		Minimum: rapid.IntRange(0, 4).Draw(t, "minimum"),
	}
	inks := 0
	for range rapid.IntRange(1, 3).Draw(t, "rows") {
		inks += rapid.IntRange(1, 2).Draw(t, "inks")
		size.Prices = append(size.Prices, gang.InkRow{Inks: inks, Each: breaks(t)})
	}
	return size
}

func breaks(t *rapid.T) []gang.Break {
	var bs []gang.Break
	from := 0
	for range rapid.IntRange(1, 3).Draw(t, "breaks") {
		from += rapid.IntRange(1, 5).Draw(t, "step")
		bs = append(bs, gang.Break{From: from, Each: int64(rapid.IntRange(1, 20).Draw(t, "each"))})
	}
	return bs
}

// tinyItems draws up to so many items, some of them sizes of one placement.
func tinyItems(t *rapid.T, most int) []gang.Item {
	inks := [][]string{{"white"}, {"gold"}, {"white", "gold"}, {"red"}, nil}
	var items []gang.Item
	place := -1
	for i := range rapid.IntRange(1, most).Draw(t, "items") {
		it := gang.Item{
			W:    int64(rapid.IntRange(1, 4).Draw(t, "w")),
			H:    int64(rapid.IntRange(1, 4).Draw(t, "h")),
			Turn: rapid.Bool().Draw(t, "turn"),
		}
		if i > 0 && rapid.IntRange(0, 3).Draw(t, "variant") == 0 {
			it.Placement, it.Inks, it.InkCount = place, items[i-1].Inks, items[i-1].InkCount
		} else {
			place++
			it.Placement = place
			it.Inks = rapid.SampledFrom(inks).Draw(t, "ink names")
			if it.Inks == nil {
				it.InkCount = rapid.IntRange(1, 2).Draw(t, "ink count")
			}
		}
		items = append(items, it)
	}
	return items
}

func needs(t *rapid.T, items []gang.Item, most int) []int {
	need := make([]int, len(items))
	for i := range need {
		need[i] = rapid.IntRange(1, most).Draw(t, "need")
	}
	return need
}

func upto(n int) []int {
	all := make([]int, n)
	for i := range all {
		all[i] = i
	}
	return all
}
