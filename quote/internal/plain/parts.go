package plain

import (
	"fmt"
	"math/big"
	"slices"

	"pressworth/quote"
)

// state is the job at certain quantities with certain cards.
type state struct {
	*work
	qty     [][]int     // by garment line and size
	cards   map[int]int // rate card of each placement that takes part
	spares  [][]int
	letters map[int][]lettering // by placement
	sums
}

// pieces of a garment line.
func (s *state) pieces(g int) int {
	n := 0
	for _, q := range s.qty[g] {
		n += q
	}
	return n
}

func (s *state) spare(g int) int {
	n := 0
	for _, q := range s.spares[g] {
		n += q
	}
	return n
}

func (s *state) all() int {
	n := 0
	for g := range s.Garments {
		n += s.pieces(g)
	}
	return n
}

// active are the garment lines that have pieces.
func (s *state) active() []int {
	var lines []int
	for g := range s.Garments {
		if s.pieces(g) > 0 {
			lines = append(lines, g)
		}
	}
	return lines
}

// on tells whether a list of garment ids holds a line; nil holds every line.
func (s *state) on(ids []string, g int) bool {
	return ids == nil || slices.Contains(ids, s.Garments[g].ID)
}

// placements are those that have a line with pieces.
func (s *state) placements() []int {
	var some []int
	for p, pl := range s.Placements {
		takes := func(g int) bool { return s.on(pl.On, g) }
		if pl.Personal {
			takes = func(g int) bool { return s.texts(p, g) > 0 }
		}
		if slices.ContainsFunc(s.active(), takes) {
			some = append(some, p)
		}
	}
	return some
}

func (s *state) card(p int) quote.RateCard { return s.RateCards[s.cards[p]] }

func (s *state) pressed(p int) bool { return s.card(p).Press != nil }

// pressedOn are the pressed placements on a line.
func (s *state) pressedOn(g int) []int {
	var some []int
	for _, p := range s.placements() {
		if s.on(s.Placements[p].On, g) && s.pressed(p) {
			some = append(some, p)
		}
	}
	return some
}

// groupName tells which lines share a price: equal names, one group.
func (s *state) groupName(g int) string {
	line := s.Garments[g]
	if line.Group != "" {
		return "named " + line.Group
	}
	var set []int
	for p, pl := range s.Placements {
		if s.on(pl.On, g) {
			set = append(set, p)
		}
	}
	return fmt.Sprintf("%v %q %q %v", line.FromCustomer, line.Supplier, line.Style, set)
}

// groups are the lines with pieces, by group, in the order of the file.
func (s *state) groups() [][]int {
	var names []string
	byName := map[string][]int{}
	for _, g := range s.active() {
		n := s.groupName(g)
		if byName[n] == nil {
			names = append(names, n)
		}
		byName[n] = append(byName[n], g)
	}
	var groups [][]int
	for _, n := range names {
		groups = append(groups, byName[n])
	}
	return groups
}

func (s *state) groupPressed(lines []int) bool {
	return slices.ContainsFunc(lines, func(g int) bool { return len(s.pressedOn(g)) > 0 })
}

// buySpares fills in the spare garments.
func (s *state) buySpares() {
	s.spares = nil
	for _, q := range s.qty {
		s.spares = append(s.spares, make([]int, len(q)))
	}
	for _, lines := range s.groups() {
		n := 0
		var weights []*big.Rat
		for _, g := range lines {
			n += s.pieces(g)
			for _, q := range s.qty[g] {
				weights = append(weights, whole(q))
			}
		}
		rule := s.Shop.Spares
		if s.Garments[lines[0]].FromCustomer || !s.groupPressed(lines) || n < rule.GarmentFrom {
			continue
		}
		total := most(whole(rule.GarmentAtLeast), ceil(mul(whole(n), hundredth(rule.GarmentPercent.Rat()))))
		parts := share(total, weights, 0)
		for _, g := range lines {
			for z := range s.qty[g] {
				s.spares[g][z] = toInt(parts[0])
				parts = parts[1:]
			}
		}
	}
}

// item is a placement at one of its sizes.
type item struct {
	Item
	uses    func(size string) bool
	pieces  int
	spares  int
	letters *lettering // names and numbers of one length
}

// items of a placement that have pieces.
func (s *state) items(p int) []item {
	pl := s.Placements[p]
	if pl.Personal {
		return s.personalItems(p)
	}
	base := Item{Placement: p, Turn: !pl.NoTurn, Inks: pl.Inks, Count: pl.InkCount}
	own := item{Item: base, uses: func(size string) bool {
		return !slices.ContainsFunc(pl.Variants, func(v quote.Variant) bool { return slices.Contains(v.Sizes, size) })
	}}
	own.W, own.H = pl.Width.Rat(), pl.Height.Rat()
	all := []item{own}
	for k, v := range pl.Variants {
		it := item{Item: base, uses: func(size string) bool { return slices.Contains(v.Sizes, size) }}
		it.Variant, it.W, it.H = k+1, v.Width.Rat(), v.Height.Rat()
		all = append(all, it)
	}
	var some []item
	for _, it := range all {
		for g := range s.Garments {
			it.pieces += s.count(s.qty, it, g)
			it.spares += s.count(s.spares, it, g)
		}
		if it.pieces > 0 {
			it.Need = s.need(it)
			some = append(some, it)
		}
	}
	return some
}

// count adds up pieces or spares of a line that use an item.
func (s *state) count(of [][]int, it item, g int) int {
	n := 0
	if it.letters != nil {
		return it.letters.on[g]
	}
	if !s.on(s.Placements[it.Placement].On, g) {
		return 0
	}
	for z, size := range s.Garments[g].Sizes {
		if it.uses(size.Size) {
			n += of[g][z]
		}
	}
	return n
}

// need is how many transfers an item takes, spares included.
func (s *state) need(it item) int {
	if !s.pressed(it.Placement) {
		return it.pieces
	}
	rule := s.Shop.Spares
	t := max(toInt(ceil(mul(whole(it.pieces), hundredth(rule.TransferPercent.Rat())))), it.spares)
	if it.pieces >= rule.TransferFrom {
		t = max(t, rule.TransferAtLeast)
	}
	return it.pieces + t
}

// inks is how many inks are counted for setups.
func (s *state) inks(p int) int {
	pl := s.Placements[p]
	switch {
	case pl.FullColor:
		return 0
	case len(pl.Inks) > 0:
		set := map[string]bool{}
		for _, i := range pl.Inks {
			set[i] = true
		}
		return len(set)
	}
	return pl.InkCount
}
