package plain

import (
	"math/big"
	"slices"
)

// at prices the job at certain quantities: every combination of cards is tried. typed says that typed prices hold.
func (j *work) at(qty [][]int, typed bool) (*priced, error) {
	s := &state{work: j, qty: qty}
	all := s.combinations()
	best := cheapest(all)
	if best == nil {
		return nil, ErrUnserved
	}
	p := &priced{state: best, runnerUp: map[string]RunnerUp{}}
	for _, pl := range best.placements() {
		var others []*state
		for _, o := range all {
			if o.cards[pl] != best.cards[pl] {
				others = append(others, o)
			}
		}
		if second := cheapest(others); second != nil {
			p.runnerUp[j.Placements[pl].ID] = RunnerUp{Card: second.card(pl).ID, Cost: second.total()}
		}
	}
	p.prices(typed)
	return p, nil
}

// combinations are all that serve, in the order of the cards, the earliest placement first.
func (s *state) combinations() []*state {
	combos := []map[int]int{{}}
	for _, p := range s.placements() {
		var longer []map[int]int
		for _, some := range combos {
			for _, c := range s.candidates(p) {
				with := map[int]int{p: c}
				for k, v := range some {
					with[k] = v
				}
				longer = append(longer, with)
			}
		}
		combos = longer
	}
	var served []*state
	for _, cards := range combos {
		x := &state{work: s.work, qty: s.qty, cards: cards}
		if x.cost() {
			served = append(served, x)
		}
	}
	return served
}

// candidates are the cards a placement may go on.
func (s *state) candidates(p int) []int {
	var some []int
	for c, card := range s.RateCards {
		fixed := s.Placements[p].Method
		if (fixed == "" || fixed == "auto" || fixed == card.ID) && s.allows(c, p) {
			some = append(some, c)
		}
	}
	return some
}

// figure is what the choice is made by.
func (s *state) figure() *big.Rat {
	used := map[int]bool{}
	for _, c := range s.cards {
		used[c] = true
	}
	return add(s.total(), mul(s.Shop.MixingSavesAtLeast.Rat(), whole(len(used)-1)))
}

// cheapest is the first of those with the lowest figure.
func cheapest(all []*state) *state {
	if len(all) == 0 {
		return nil
	}
	return slices.MinFunc(all, func(a, b *state) int { return a.figure().Cmp(b.figure()) })
}
