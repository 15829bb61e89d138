package gang

import (
	"cmp"
	"slices"

	"pressworth/quote/nest"
)

// stock is a roll card made ready: the lengths worth buying, longest first, reckoned with the gap to the border.
type stock struct {
	card    RollCard
	width   int64
	lengths []length
}

// length is one length that can be bought.
type length struct {
	index int   // in the card
	high  int64 // usable
	each  Price
}

func newStock(card RollCard) stock {
	st := stock{card: card, width: card.W - 2*card.Edge + card.Gap}
	var all []length
	for j, l := range card.Lengths {
		sheet := nest.Sheet{W: card.W, H: l.Length, Edge: card.Edge, Gap: card.Gap}
		if sound(sheet) && l.Each >= 0 {
			all = append(all, length{j, l.Length - 2*card.Edge + card.Gap, l.Each})
		}
	}
	slices.SortStableFunc(all, func(a, b length) int {
		return cmp.Or(cmp.Compare(a.each, b.each), cmp.Compare(b.high, a.high))
	})
	for _, l := range all { // cheaper ones first, so one that is no longer than the last kept is beaten
		if n := len(st.lengths); n == 0 || l.high > st.lengths[n-1].high {
			st.lengths = append(st.lengths, l)
		}
	}
	slices.Reverse(st.lengths)
	return st
}

// cheapest is the cheapest length that is at least so high, or -1. Longer ones are dearer, so it is the last.
func (st stock) cheapest(high int64) int {
	for j := len(st.lengths) - 1; j >= 0; j-- {
		if st.lengths[j].high >= high {
			return j
		}
	}
	return -1
}

// basket is a number of each length of the stock.
type basket []int

func (st stock) price(b basket) (cost Price, ok bool) {
	ok = true
	for j, n := range b {
		c, fine1 := times(n, st.lengths[j].each)
		sum, fine2 := plus(cost, c)
		cost, ok = sum, ok && fine1 && fine2
	}
	return cost, ok
}

func (b basket) count() (n int) {
	for _, k := range b {
		n = sum(n, k)
	}
	return n
}

// blank is an item with the gap to its neighbours.
func (st stock) blank(it Item) blank {
	return blank{it.W + st.card.Gap, it.H + st.card.Gap, it.Turn}
}

// takes says whether one copy of an item fits on some length.
func (st stock) takes(it Item) bool {
	if min(it.W, it.H) < 1 || max(it.W, it.H) > nest.MaxLength || len(st.lengths) == 0 {
		return false
	}
	b, high := st.blank(it), st.lengths[0].high
	return b.w <= st.width && b.h <= high || b.turn && b.h <= st.width && b.w <= high
}

// sheet is a length of the stock as a sheet.
func (st stock) sheet(j int) nest.Sheet {
	return nest.Sheet{W: st.card.W, H: st.card.Lengths[st.lengths[j].index].Length, Edge: st.card.Edge, Gap: st.card.Gap}
}
