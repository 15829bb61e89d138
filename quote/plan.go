package quote

import (
	"errors"
	"math/big"
	"slices"

	"pressworth/quote/gang"
	"pressworth/quote/money"
)

// planned is a plan on one sheet or roll card, with its cost split over items. Money is in minor units.
type planned struct {
	card       int
	placements []int
	runs       []gang.Run
	runCost    []int64
	weights    [][]int64 // by run (a roll plan is one): of runItems
	runItems   [][]int
	itemCost   map[int]int64
	cost       int64
	bound      int64
	setup      int64
	heuristic  bool
	outline    bool  // layouts and bound are not there
	rollCost   int64 // of an outline
	frozen     []Run // of a frozen plan: its weights are kept
}

// plan makes the plan of placements on a sheet or roll card, with its layouts.
func (t *setting) plan(c int, placements []int) (planned, error) {
	cd := &t.m.cards[c]
	items, need := t.gangItems(cd, placements)
	var g gang.Plan
	var err error
	if cd.sheets != nil {
		g, err = cd.sheets.Plan(items, need)
	} else {
		g, err = cd.roll.Plan(items, need)
	}
	if err != nil {
		return planned{}, err
	}
	p := planned{card: c, placements: slices.Clone(placements), runs: g.Runs, heuristic: g.Heuristic}
	p.bound = t.m.roundPriceDown(g.Bound)
	t.split(&p, items, need)
	p.bound = min(p.bound+p.rollSetups(t.m), p.cost)
	return p, nil
}

// outline is the plan as far as costs need it: without layouts, and of a roll without its lengths.
func (t *setting) outline(c int, placements []int) (planned, error) {
	cd := &t.m.cards[c]
	if cd.priceScale > 1 {
		return t.plan(c, placements)
	}
	items, need := t.gangItems(cd, placements)
	p := planned{card: c, placements: slices.Clone(placements), outline: true}
	ok := false
	if cd.sheets != nil {
		p.runs, ok = cd.sheets.Runs(items, need)
	} else if p.rollCost, ok = cd.roll.Cost(items, need); !ok {
		return p, errNoPlan
	}
	if !ok {
		return p, errNoPlan
	}
	t.split(&p, items, need)
	return p, nil
}

var errNoPlan = errors.New("there is no plan")

// roundPriceDown is an amount of the planner's in minor units, rounded down.
func (m *model) roundPriceDown(p int64) int64 { return p / power10(m.pricePlaces-m.places) }

func (p *planned) rollSetups(m *model) int64 {
	if m.cards[p.card].roll == nil {
		return 0
	}
	return m.rollSetup(&m.cards[p.card], p.placements)
}

// split rounds what each run costs and shares it among its items; a roll plan is one run.
func (t *setting) split(p *planned, items, need []int) {
	m := t.m
	p.itemCost = map[int]int64{}
	if m.cards[p.card].roll != nil {
		p.setup = p.rollSetups(m)
		var exact int64 // rounded once: the plan is one run
		for _, r := range p.runs {
			p.runCost = append(p.runCost, m.roundPrice(r.Cost()))
			exact = add(exact, r.Cost())
		}
		t.shareRun(p, add(p.setup, add(p.rollCost, m.roundPrice(exact))), items, need)
		return
	}
	for _, r := range p.runs {
		p.setup = add(p.setup, m.roundPrice(r.Setup))
		cost := m.roundPrice(r.Cost())
		p.runCost = append(p.runCost, cost)
		of := make([]int, len(r.Items))
		for k, i := range r.Items {
			of[k] = need[slices.Index(items, i)]
		}
		t.shareRun(p, cost, r.Items, of)
	}
}

func (t *setting) shareRun(p *planned, cost int64, items, need []int) {
	w := t.frozenWeights(p, items)
	if w == nil {
		w = t.weights(p, items, need)
	}
	for k, part := range money.Share(cost, w) {
		p.itemCost[items[k]] = part
	}
	p.weights, p.runItems = append(p.weights, w), append(p.runItems, items)
	p.cost = add(p.cost, cost)
}

// frozenWeights are the weights that a frozen run was shared by, nil where the plan is not frozen or they are not there.
func (t *setting) frozenWeights(p *planned, items []int) []int64 {
	if p.frozen == nil {
		return nil
	}
	w := make([]int64, len(items))
	for _, x := range p.frozen[len(p.weights)].Weights {
		n, err := money.ParseNumber(x.Weight)
		if k := slices.Index(items, t.m.itemOf(x.Placement, x.Variant, x.Text)); k >= 0 && err == nil {
			w[k], _ = n.Scaled(0)
		}
	}
	if slices.Max(w) <= 0 {
		return nil
	}
	return w
}

// weights are the items' weights in a run's cost, by the shop's rule.
func (t *setting) weights(p *planned, items, need []int) []int64 {
	m := t.m
	w := make([]int64, len(items))
	largest := 0
	for k, i := range items {
		area := mul(m.items[i].w, m.items[i].h)
		switch m.job.Shop.SheetShare {
		case shareArea:
			w[k] = mul(area, int64(need[k]))
		case shareCount:
			w[k] = 1
		case shareFirst:
			if best := m.items[items[largest]]; k == 0 || area > mul(best.w, best.h) {
				largest = k
			}
		default:
			w[k] = t.alone(p.card, i, need[k])
		}
	}
	if m.job.Shop.SheetShare == shareFirst {
		w[largest] = 1
	}
	return w
}

// alone is what an item would cost in a run of its own, in the planner's unit of money.
func (t *setting) alone(c, i, need int) int64 {
	m, cd := t.m, &t.m.cards[c]
	if cd.sheets != nil {
		x, ok := cd.sheets.Alone(i, need)
		return fits(x, ok)
	}
	x, ok := cd.roll.Alone(i, need)
	setup := cents(times(m.setupOn(cd, m.items[i].placement), rat(cd.priceScale)))
	return add(fits(x, ok), setup)
}

// used is the share of the bought area that carries copies.
func (p *planned) used(m *model) (plan *big.Rat, byRun []*big.Rat) {
	all, printed := new(big.Rat), new(big.Rat)
	for _, r := range p.runs {
		w, h := m.sheetOf(p.card, r.Size)
		sheet := times(rat(w), rat(h))
		area := new(big.Rat)
		for _, x := range r.Placed {
			area.Add(area, times(rat(m.items[x.Item].w), rat(m.items[x.Item].h)))
		}
		byRun = append(byRun, over(area, sheet))
		all.Add(all, times(sheet, rat(int64(r.Sheets))))
		printed.Add(printed, times(area, rat(int64(r.Sheets))))
	}
	if all.Sign() == 0 {
		return new(big.Rat), byRun
	}
	return over(printed, all), byRun
}

// sheetOf is the width and height of a card's sheet size or roll length.
func (m *model) sheetOf(c, size int) (w, h int64) {
	if cd := &m.cards[c]; cd.roll != nil {
		return cd.rollOf.W, cd.rollOf.Lengths[size].Length
	}
	s := m.cards[c].sheetOf.Sizes[size]
	return s.W, s.H
}
