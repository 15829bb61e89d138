package quote

import (
	"math/big"
	"slices"
	"strconv"

	"pressworth/quote/money"
)

// state is the job at one total quantity.
type state struct {
	m        *model
	pieces   int
	qty      [][]int // by line, size
	lineQty  []int
	groupQty []int
	uses     [][]int // by item, line: pieces (or texts) that use it
	need     []int   // by item: their sum
	active   []bool  // placements with pieces
	allowed  [][]int // by placement: cards that serve it here
	settings map[string]*setting
	groupsOn [][]int // by placement: the groups it is on, once they are asked for
	frozen   *frozenPlans
}

// setting is a state with its spares, which depend on the groups that have something pressed.
type setting struct {
	*state
	spares   [][]int // by line, size
	bought   []int   // by line: pieces and spares
	spared   []bool  // by group: spares are bought
	pressed  []bool  // by group: something is pressed on it
	breakOf  [][]*Break
	blanks   []int64
	spoilage []int64
	fixed    int64   // blanks and spoilage of all lines
	value    []int64 // by supplier: blanks
	orders   []bool  // by supplier: blanks are bought
	unpriced []Problem
	copies   []int // by item: transfers on a pressed card
	pieceOf  map[[2]int]pieceCost
	gangOf   map[string]known
	floorOf  map[string]known
	memo     memo
	hitsOn   []int64 // by placement: times the press closes on it
}

// at returns the state for a total quantity, scaled from the job's own.
func (m *model) at(pieces int) *state {
	if s, ok := m.quantities[pieces]; ok {
		return s
	}
	m.memory.mayGoOn()
	s := &state{m: m, pieces: pieces, settings: map[string]*setting{}}
	s.scale()
	s.count()
	for p := range m.placements {
		s.allowed = append(s.allowed, s.serving(p))
	}
	m.quantities[pieces] = s
	return s
}

func (s *state) scale() {
	var run []int64
	for _, l := range s.m.lines {
		for _, z := range l.Sizes {
			run = append(run, int64(z.Qty))
		}
	}
	parts := money.Share(int64(s.pieces), run)
	s.groupQty = make([]int, len(s.m.groups))
	for _, l := range s.m.lines {
		qty, total := make([]int, len(l.Sizes)), 0
		for j := range l.Sizes {
			qty[j] = int(parts[j])
			total += qty[j]
		}
		parts = parts[len(qty):]
		s.qty, s.lineQty = append(s.qty, qty), append(s.lineQty, total)
		s.groupQty[l.group] += total
	}
}

// count finds the pieces that use each item.
func (s *state) count() {
	m := s.m
	s.uses, s.need, s.active = make([][]int, len(m.items)), make([]int, len(m.items)), make([]bool, len(m.placements))
	for i := range s.uses {
		s.uses[i] = make([]int, len(m.lines))
	}
	for p := range m.placements {
		if m.placements[p].Personal {
			s.countTexts(p)
			continue
		}
		for _, l := range m.placements[p].on {
			for j, q := range s.qty[l] {
				s.uses[m.itemFor(p, m.lines[l].Sizes[j].Size)][l] += q
			}
		}
	}
	for i, it := range m.items {
		for _, n := range s.uses[i] {
			s.need[i] += n
		}
		s.active[it.placement] = s.active[it.placement] || s.need[i] > 0
	}
}

// itemFor is the item of a placement that goes on a garment size.
func (m *model) itemFor(p int, size string) int {
	pl := &m.placements[p]
	for k, v := range pl.Variants {
		if slices.Contains(v.Sizes, size) {
			return pl.items[k+1]
		}
	}
	return pl.items[0]
}

// serving are the cards that may carry a placement here: kind of artwork, shades, tags, sizes and quantity allow it.
func (s *state) serving(p int) (cards []int) {
	if !s.active[p] {
		return nil
	}
	for _, c := range s.m.placements[p].serving {
		if s.serves(&s.m.cards[c], p) {
			cards = append(cards, c)
		}
	}
	return cards
}

func (s *state) serves(c *card, p int) bool {
	for _, l := range s.m.placements[p].on {
		if s.lineQty[l] > 0 && !c.goesOn(&s.m.lines[l]) {
			return false
		}
	}
	for _, i := range s.m.placements[p].items {
		if s.need[i] > 0 && !s.m.holds(c, i) {
			return false
		}
	}
	return true
}

// with returns the setting for the groups that have something pressed on them.
func (s *state) with(pressed []bool) *setting {
	key := make([]byte, len(pressed))
	for i, p := range pressed {
		if p {
			key[i] = 1
		}
	}
	if t, ok := s.settings[string(key)]; ok {
		return t
	}
	t := &setting{
		state: s, pressed: slices.Clone(pressed), pieceOf: map[[2]int]pieceCost{}, gangOf: map[string]known{}, floorOf: map[string]known{},
		value: make([]int64, len(s.m.job.Suppliers)), orders: make([]bool, len(s.m.job.Suppliers)),
	}
	t.memo = t.newMemo()
	t.spare()
	t.priceBlanks()
	t.spoil()
	t.countCopies()
	s.settings[string(key)] = t
	return t
}

// spare buys spare garments and spreads them over each group's sizes.
func (t *setting) spare() {
	m, sp := t.m, t.m.job.Shop.Spares
	t.spared = make([]bool, len(m.groups))
	for l := range m.lines {
		t.spares = append(t.spares, make([]int, len(t.qty[l])))
		t.bought = append(t.bought, t.lineQty[l])
	}
	for g, gr := range m.groups {
		n := t.groupQty[g]
		if gr.fromCustomer || !t.pressed[g] || n == 0 || n < sp.GarmentFrom {
			continue
		}
		extra := max(sp.GarmentAtLeast, m.garmentSpare.ceil(n))
		t.spared[g] = extra > 0
		var run []int64
		for _, l := range gr.lines {
			for _, q := range t.qty[l] {
				run = append(run, int64(q))
			}
		}
		parts := money.Share(int64(extra), run)
		for _, l := range gr.lines {
			for j := range t.qty[l] {
				t.spares[l][j] = int(parts[j])
				t.bought[l] += int(parts[j])
			}
			parts = parts[len(t.qty[l]):]
		}
	}
}

// priceAt is the price of the last break that holds at a quantity, nil where none does.
func priceAt(bs []Break, quantity int) *Break {
	for i := len(bs) - 1; i >= 0; i-- {
		if bs[i].From <= quantity {
			return &bs[i]
		}
	}
	return nil
}

func (t *setting) priceBlanks() {
	m := t.m
	ofStyle := map[[2]string]int{}
	for l, g := range m.lines {
		if !g.FromCustomer {
			ofStyle[[2]string{g.Supplier, g.Style}] += t.bought[l]
		}
	}
	for l, g := range m.lines {
		breaks := make([]*Break, len(g.Sizes))
		bought := ofStyle[[2]string{g.Supplier, g.Style}]
		for j, z := range g.Sizes {
			if g.FromCustomer {
				continue
			}
			breaks[j] = priceAt(z.Each, bought)
			if breaks[j] == nil && t.qty[l][j]+t.spares[l][j] > 0 {
				t.unpriced = append(t.unpriced, m.noPrice(l, j, bought))
			}
		}
		amount := t.blanksOf(l, breaks)
		t.breakOf, t.blanks = append(t.breakOf, breaks), append(t.blanks, amount)
		if g.supplier >= 0 && t.bought[l] > 0 {
			t.value[g.supplier] = add(t.value[g.supplier], amount)
			t.orders[g.supplier] = true
		}
	}
}

// blanksOf is what the blanks of a line cost: in scaled integers, or in fractions where those would not hold them.
func (t *setting) blanksOf(l int, breaks []*Break) int64 {
	m, total, whole := t.m, int64(0), new(big.Rat)
	for j, b := range breaks {
		n := t.qty[l][j] + t.spares[l][j]
		switch {
		case b == nil || n == 0:
		case m.vastBlanks:
			whole.Add(whole, times(rat(int64(n)), m.inMinor(b.Each)))
		default:
			total = add(total, mul(int64(n), m.blankPrice(b)))
		}
	}
	if m.vastBlanks {
		return cents(whole)
	}
	return exact{1, power10(m.blankPlaces - m.places)}.times(total)
}

// blankPrice is the price of a blank in units of 10^-blankPlaces.
func (m *model) blankPrice(b *Break) int64 {
	p, ok := m.blankPrices[b]
	if !ok {
		p = fits(b.Each.Minor(m.blankPlaces))
		m.blankPrices[b] = p
	}
	return p
}

// vast tells whether a price of a blank, for as many pieces as there may be, is too large for scaled integers.
func (m *model) vast() bool {
	for _, g := range m.job.Garments {
		for _, z := range g.Sizes {
			for _, b := range z.Each {
				if p, ok := b.Each.Minor(m.blankPlaces); !ok || p > 1<<62/(20*MaxPieces) {
					return true
				}
			}
		}
	}
	return false
}

func (m *model) noPrice(l, size, bought int) Problem {
	return Problem{
		Path:    "garments[" + strconv.Itoa(l) + "].sizes[" + strconv.Itoa(size) + "].each",
		Problem: "has no price for " + strconv.Itoa(bought) + " pieces: enter one from a smaller quantity",
	}
}

// spoil allows for spoilage in money where no spare is bought.
func (t *setting) spoil() {
	m := t.m
	for l, g := range m.lines {
		amount := int64(0)
		if t.lineQty[l] > 0 && t.pressed[g.group] && !t.spared[g.group] {
			value := rat(t.blanks[l])
			if g.FromCustomer {
				value = times(rat(int64(t.lineQty[l])), m.inMinor(g.ValueEach))
			}
			amount = cents(times(percent(m.job.Shop.Spares.GarmentPercent), value))
		}
		t.spoilage = append(t.spoilage, amount)
		t.fixed = add(t.fixed, add(t.blanks[l], amount))
	}
}

// countCopies finds the transfers each item needs on a pressed card, and the hits of each placement.
func (t *setting) countCopies() {
	m, sp := t.m, t.m.job.Shop.Spares
	for i, it := range m.items {
		n, p := t.need[i], &m.placements[it.placement]
		if n > 0 && !p.Personal {
			spare := max(m.transferSpare.ceil(n), t.spareGarments(i))
			if n >= sp.TransferFrom {
				spare = max(spare, sp.TransferAtLeast)
			}
			n += spare
		}
		t.copies = append(t.copies, n)
	}
	t.hitsOn = make([]int64, len(m.placements))
	for p := range m.placements {
		for _, l := range m.placements[p].on {
			t.hitsOn[p] += int64(t.closings(p, l))
		}
	}
}

// closings is how often the press closes for a placement on a line, if it is pressed.
func (t *setting) closings(p, l int) int {
	pl := &t.m.placements[p]
	if !pl.Personal {
		return t.bought[l]
	}
	n := 0
	for _, i := range pl.items {
		n += t.uses[i][l]
	}
	return n
}

// spareGarments is the spare blanks of the sizes an item goes on.
func (t *setting) spareGarments(i int) (n int) {
	p := t.m.items[i].placement
	for _, l := range t.m.placements[p].on {
		for j, s := range t.spares[l] {
			if s > 0 && t.m.itemFor(p, t.m.lines[l].Sizes[j].Size) == i {
				n += s
			}
		}
	}
	return n
}
