package quote

import (
	"fmt"
	"math/big"
)

// Codes of warnings.
const (
	WarnBelowFloor = "below_floor"
	WarnUnserved   = "ladder_unserved"
	WarnHeuristic  = "methods_heuristic"
	WarnPlan       = "plan_heuristic"
)

// warnings are what the shop should know about the job.
func (r *report) warnings() []Warning {
	out := []Warning{}
	floor := percent(r.job.Pricing.FloorPercent)
	if margin := r.own.margin(&r.own.totals); margin != nil && margin.Cmp(floor) < 0 {
		out = append(out, Warning{Code: WarnBelowFloor, Path: "pricing.floor_percent", Text: r.floorText(margin, floor)})
	}
	for k, q := range r.ladder.quantities {
		if r.ladder.steps[k] == nil {
			out = append(out, Warning{Code: WarnUnserved, Path: "ladder", Text: fmt.Sprintf("No rate card or blank price serves %d pieces.", q)})
		}
	}
	if r.own.heuristic {
		out = append(out, Warning{
			Code: WarnHeuristic, Path: "placements",
			Text: "Too many combinations of methods to try all: the choice is a good one, not proven the cheapest.",
		})
	}
	for _, p := range r.own.plans {
		if p.heuristic {
			out = append(out, Warning{
				Code: WarnPlan, Path: "rate_cards." + r.cards[p.card].ID,
				Text: "Too many designs on one card to try every split into runs: the plan is a good one, not proven the cheapest.",
			})
		}
	}
	return out
}

func (r *report) floorText(margin, floor *big.Rat) string {
	text := fmt.Sprintf("Margin %s %% is under the floor of %s %%.", decimals(times(margin, rat(100)), 1), r.job.Pricing.FloorPercent)
	raise, ok := r.raiseToFloor(floor)
	if !ok {
		return text
	}
	for g, u := range r.own.us {
		if u != nil {
			text += fmt.Sprintf(" %s at %s", r.model.groups[g].id, r.amount(add(r.own.each[g], raise)))
			text += " would hold it;"
		}
	}
	return text[:len(text)-1] + "."
}

// raiseToFloor finds the least raise of every price each, in steps, that holds the floor.
func (r *report) raiseToFloor(floor *big.Rat) (int64, bool) {
	step := max(1, r.minor(r.job.Pricing.Step))
	holds := func(n int64) bool {
		each := make([]int64, len(r.own.each))
		for g := range each {
			each[g] = add(r.own.each[g], mul(n, step))
		}
		t := r.own.costing.totals(r.own.us, each)
		margin := r.own.margin(&t)
		return margin != nil && margin.Cmp(floor) >= 0
	}
	high := int64(1)
	for ; !holds(high); high *= 2 {
		if high > 1<<30 {
			return 0, false
		}
	}
	low := high / 2
	for low+1 < high {
		if mid := (low + high) / 2; holds(mid) {
			high = mid
		} else {
			low = mid
		}
	}
	return mul(high, step), true
}
