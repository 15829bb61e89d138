package gang

import (
	"encoding/binary"
	"fmt"

	"pressworth/quote/nest"
)

// Roll plans the items of one job on one roll card. Like Sheets it keeps what it has found out, and is not safe for
// use by several goroutines at once.
type Roll struct {
	card  RollCard
	items []Item
	plans map[string]*rollPlan
	buf   []byte
}

type rollPlan struct {
	ok   bool
	plan Plan
}

// NewRoll prepares planning of items on a card.
func NewRoll(card RollCard, items []Item) *Roll {
	return &Roll{card: card, items: items, plans: map[string]*rollPlan{}}
}

// Serves says whether one copy of an item fits on some length.
func (r *Roll) Serves(item int) bool {
	_, ok := r.Alone(item, 1)
	return ok
}

// Alone is what an item costs on a roll of its own.
func (r *Roll) Alone(item, need int) (Price, bool) {
	return r.Cost([]int{item}, []int{need})
}

// Cost is the cost of the plan for need[k] copies of items[k], items ascending. It is false where there is none.
func (r *Roll) Cost(items, need []int) (Price, bool) {
	p := r.find(items, need)
	return p.plan.Cost, p.ok
}

// Plan is the cheapest set of lengths found for need[k] copies of items[k], with layouts and bound. A run is one
// layout; its Size is the index of its length.
func (r *Roll) Plan(items, need []int) (Plan, error) {
	p := r.find(items, need)
	if !p.ok {
		return Plan{}, fmt.Errorf("the lengths of this roll do not hold every item")
	}
	return p.plan, nil
}

func (r *Roll) find(items, need []int) *rollPlan {
	if len(items) != len(need) {
		return &rollPlan{}
	}
	r.buf = r.buf[:0]
	var ps []nest.Piece
	for k, i := range items {
		if i < 0 || i >= len(r.items) {
			return &rollPlan{}
		}
		it := r.items[i]
		ps = append(ps, nest.Piece{W: it.W, H: it.H, Turn: it.Turn, Count: max(need[k], 0)})
		r.buf = binary.AppendUvarint(r.buf, uint64(i))
		r.buf = binary.AppendUvarint(r.buf, uint64(max(need[k], 0)))
	}
	if p, ok := r.plans[string(r.buf)]; ok {
		return p
	}
	key := string(r.buf)
	p := r.search(items, ps)
	r.plans[key] = p
	return p
}

// search tries each length by itself.
func (r *Roll) search(items []int, ps []nest.Piece) *rollPlan {
	best := &rollPlan{}
	for j, l := range r.card.Lengths {
		sheet := nest.Sheet{W: r.card.W, H: l.Length, Edge: r.card.Edge, Gap: r.card.Gap}
		res, err := nest.Bins(sheet, ps, nest.Effort{Steps: effort})
		if err != nil {
			continue
		}
		cost, ok := times(res.Sheets, l.Each)
		if ok && (!best.ok || cost < best.plan.Cost) {
			best = &rollPlan{true, Plan{Cost: cost, Runs: r.runsOf(items, len(ps), j, res)}}
		}
	}
	return best
}

func (r *Roll) runsOf(items []int, kinds, length int, res nest.BinsResult) []Run {
	runs := make([]Run, res.Sheets)
	copies := make([][]int, res.Sheets)
	for i := range copies {
		copies[i] = make([]int, kinds)
	}
	for _, p := range res.Placed {
		runs[p.Sheet].Placed = append(runs[p.Sheet].Placed, Placed{Item: items[p.Piece], X: p.X, Y: p.Y, Turned: p.Turned})
		copies[p.Sheet][p.Piece]++
	}
	for i := range runs {
		runs[i].Size, runs[i].Sheets, runs[i].Each = length, 1, r.card.Lengths[length].Each
		for k, n := range copies[i] {
			if n > 0 {
				runs[i].Items, runs[i].Copies = append(runs[i].Items, items[k]), append(runs[i].Copies, n)
			}
		}
	}
	return runs
}
