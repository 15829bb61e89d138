package quote

// node is what a part of a combination costs at least, card by card.
type node struct {
	paid  int64   // without sheets and lengths
	area  []int64 // by card: what its sheets or lengths cost at least, by the area on them
	least []int64 // by card: and because some placement is on them
	on    []int   // by card: placements
	areas int64   // the sum of area
	most  int64   // the sum of the larger of area and least
	cards int     // in use
}

// was is a node's figures of one card, and its sums, before a placement was added.
type was struct {
	card              int
	paid, areas, most int64
	area, least       int64
}

func (n *node) reset(cards int, paid int64) {
	*n = node{paid: paid, area: make([]int64, cards), least: make([]int64, cards), on: make([]int, cards)}
}

// with adds placement p on the k-th of its cards.
func (n *node) with(x *search, p, k int) was {
	c := x.allowed[p][k]
	before := was{c, n.paid, n.areas, n.most, n.area[c], n.least[c]}
	if n.on[c]++; n.on[c] == 1 {
		n.cards++
	}
	bought := x.low[p][k] - x.press[p][k]
	n.paid = add(n.paid, x.press[p][k])
	n.areas = add(n.areas, bought)
	n.most -= max(n.area[c], n.least[c])
	n.area[c] = add(n.area[c], bought)
	n.least[c] = max(n.least[c], x.least[p][k])
	n.most = add(n.most, max(n.area[c], n.least[c]))
	return before
}

// back takes the last placement off again.
func (n *node) back(w was) {
	if n.on[w.card]--; n.on[w.card] == 0 {
		n.cards--
	}
	n.paid, n.areas, n.most, n.area[w.card], n.least[w.card] = w.paid, w.areas, w.most, w.area, w.least
}

// figure is less than or equal to the figure of every combination made from the part before placement p. What is paid
// for a placement to come may be no more than what its card costs already: so it is either counted by area everywhere,
// or not at all.
func (n *node) figure(x *search, p int) int64 {
	low := max(add(n.areas, x.rest[p]), add(n.most, x.worked[p]))
	return x.s.m.choosingFigure(max(0, add(n.paid, low)), n.cards)
}
