package plain

import (
	"math/big"
	"slices"
)

// rung is a quantity of the ladder; priced is nil where no card serves.
type rung struct {
	pieces int
	*priced
}

// ladder prices the quantities of the ladder in ascending order, no price above an earlier one unless it may rise.
func (j *work) ladder() []rung {
	quantities := slices.Clone(j.Ladder)
	slices.Sort(quantities)
	var rungs []rung
	for _, q := range slices.Compact(quantities) {
		p, err := j.at(scaled(j.Job, q), false)
		if err != nil {
			p = nil
		}
		if p != nil {
			j.neverRise(p, rungs)
		}
		rungs = append(rungs, rung{q, p})
	}
	return rungs
}

// neverRise lowers each u to the lowest that its group has on the ladder at fewer pieces.
func (j *work) neverRise(p *priced, ladder []rung) {
	if j.Pricing.MayRise {
		return
	}
	pieces := p.all()
	for _, r := range ladder {
		if r.pieces >= pieces || r.priced == nil {
			continue
		}
		for g := range p.unit {
			for h, u := range r.unit {
				if !p.typed[g] && p.groupName(g) == r.groupName(h) {
					p.unit[g] = least(p.unit[g], u)
				}
			}
		}
	}
}

func (j *work) steps(ladder []rung) []Step {
	var steps []Step
	for _, r := range ladder {
		if r.priced == nil {
			steps = append(steps, Step{Pieces: r.pieces, Unserved: true})
			continue
		}
		t := r.totals()
		step := Step{Pieces: r.pieces, Goods: t.Goods, Total: t.Total, Cost: r.total(), Units: map[string]*big.Rat{}, Methods: r.methods()}
		step.Each = j.cents(div(t.Goods, whole(r.pieces)))
		for g, u := range r.unit {
			step.Units[j.Garments[g].ID] = u
		}
		steps = append(steps, step)
	}
	return steps
}

// cliffs are the pairs of quantities of which the larger costs less.
func (j *work) cliffs(own *priced, ladder []rung) []Cliff {
	n := own.all()
	all := []rung{{n, own}}
	for _, r := range ladder {
		if r.pieces != n && r.priced != nil {
			all = append(all, r)
		}
	}
	slices.SortFunc(all, func(a, b rung) int { return a.pieces - b.pieces })
	var cliffs []Cliff
	check := func(a, b rung) bool {
		saves := sub(a.totals().Total, b.totals().Total)
		c := Cliff{a.pieces, b.pieces, saves}
		known := slices.ContainsFunc(cliffs, func(k Cliff) bool { return k.From == c.From && k.To == c.To })
		if positive(saves) && !known {
			cliffs = append(cliffs, c)
		}
		return positive(saves)
	}
	for i := 1; i < len(all); i++ {
		check(all[i-1], all[i])
	}
	for q := n + 1; q <= n+max(6, min(50, (n+9)/10)); q++ {
		p, err := j.at(scaled(j.Job, q), false)
		if err != nil {
			continue
		}
		j.neverRise(p, ladder)
		if check(rung{n, own}, rung{q, p}) {
			break
		}
	}
	return cliffs
}

func (p *priced) methods() map[string]string {
	methods := map[string]string{}
	for _, pl := range p.placements() {
		methods[p.Placements[pl].ID] = p.card(pl).ID
	}
	return methods
}

// figures gathers what a job comes to.
func (j *work) figures(p *priced) Figures {
	f := Figures{
		Pieces: p.all(), Cost: p.total(), Lines: p.lines, Split: map[string]map[Key]*big.Rat{}, Spares: map[string][]int{},
		Unit: map[string]*big.Rat{}, Sizes: map[string][]*big.Rat{}, Methods: p.methods(), RunnerUp: p.runnerUp,
		Totals: p.totals(), Hours: p.hours(),
	}
	for _, g := range p.active() {
		id := j.Garments[g].ID
		f.Split[id], f.Spares[id], f.Unit[id] = p.split[g], p.spares[g], p.unit[g]
		for z := range p.qty[g] {
			f.Sizes[id] = append(f.Sizes[id], p.sells(g, z))
		}
	}
	left := sub(f.Totals.Subtotal, f.Cost, f.Totals.AbsorbedFee)
	if f.Totals.Subtotal.Sign() != 0 {
		f.Margin = mul(div(left, f.Totals.Subtotal), whole(100))
	}
	hours := add(f.Hours, div(j.Art.Minutes.Rat(), whole(60)))
	if hours.Cmp(big.NewRat(1, 4)) >= 0 {
		timed := func(kind string) *big.Rat { return orZero(p.lines[Key{kind, ""}]) }
		f.PerHour = div(add(left, timed("labour"), timed("overhead")), hours)
	}
	return f
}
