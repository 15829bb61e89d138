package quote

import (
	"fmt"
	"math/big"
	"slices"

	"pressworth/quote/money"
)

// report turns a job worked out into its result.
type report struct {
	*model
	ladder *stair
	own    *worked
	first  bool   // without cliffs and room
	plans  []Plan // of own
}

func (r *report) result() Result {
	w := r.own
	r.plans = r.plansOut()
	res := Result{
		Format: ResultFormat, Currency: r.job.Currency, Title: r.job.Title, Pieces: w.pieces,
		Cost:   Cost{Total: r.amount(w.total), Lines: r.costLines()},
		Groups: r.groupsOut(), Garments: r.garmentsOut(), Methods: r.methodsOut(), Plans: r.plans,
		Price: r.priceOut(), Hours: decimals(w.hours(), 2), Ladder: r.ladderOut(), Cliffs: []Cliff{},
		Purchases: r.purchases(), Leftovers: r.leftovers(), Heuristic: w.heuristic,
	}
	if margin := w.margin(&w.totals); margin != nil {
		s := decimals(times(margin, rat(100)), 1)
		res.MarginPercent = &s
	}
	if left := w.leftPerHour(&w.totals); left != nil {
		a := r.amount(*left)
		res.LeftPerHour = &a
	}
	if w.frozen == nil && !r.first {
		res.Cliffs = append(res.Cliffs, r.ladder.cliffs(w)...)
	}
	res.Warnings = r.warnings()
	return res
}

// decimals writes x rounded half away from zero to some places.
func decimals(x *big.Rat, places int) string {
	return money.FromMinor(cents(times(x, rat(power10(places)))), places).String()
}

func (r *report) costLines() (ls []CostLine) {
	ls = []CostLine{}
	for _, e := range r.own.lines {
		basis, entries := r.basis(e)
		ls = append(ls, CostLine{Kind: e.kind, Ref: r.ref(e), Amount: r.amount(e.amount), Basis: basis, Entries: entries})
	}
	return ls
}

// ref is the id of what a cost line belongs to.
func (m *model) ref(e costEntry) string {
	switch e.kind {
	case KindBlanks, KindSpoilage:
		return m.lines[e.ref].ID
	case KindTransfers:
		return m.placements[e.ref].ID
	case KindExtra:
		return m.job.Extras[e.ref].ID
	case KindFreight:
		return m.job.Suppliers[e.ref].ID
	}
	return ""
}

func (r *report) groupsOut() (gs []Group) {
	gs = []Group{}
	for g, u := range r.own.us {
		if u == nil {
			continue
		}
		_, typed := r.typed(g)
		out := Group{
			ID: r.model.groups[g].id, Pieces: u.pieces, Cost: r.amount(u.cost), ToRecover: r.amount(u.recover),
			CostEach: r.amount(cents(frac(u.cost, int64(u.pieces)))), Computed: r.amount(r.computed(g)),
			UnitPrice: r.amount(r.own.each[g]), Typed: typed, Basis: r.unitBasis(g),
		}
		for _, l := range r.model.groups[g].lines {
			out.Lines = append(out.Lines, r.lines[l].ID)
			out.Spares += r.own.bought[l] - r.own.lineQty[l]
		}
		gs = append(gs, out)
	}
	return gs
}

// computed is a group's price each by the rules, kept from rising, whatever was typed.
func (r *report) computed(g int) int64 {
	each := r.own.us[g].each
	if r.job.Pricing.MayRise {
		return each
	}
	for k, step := range r.ladder.steps {
		if r.ladder.quantities[k] < r.own.pieces && step != nil && step.us[g] != nil {
			each = min(each, step.each[g])
		}
	}
	return each
}

func (r *report) garmentsOut() []GarmentLine {
	out := make([]GarmentLine, len(r.lines))
	for l, g := range r.lines {
		n := r.own.lineQty[l]
		x := GarmentLine{
			ID: g.ID, Group: r.model.groups[g.group].id, Pieces: n, Cost: r.amount(r.own.lineCost[l]),
			UnitPrice: r.amount(r.own.each[g.group]), Sizes: []SizePrice{}, Split: []CostLine{},
		}
		if n > 0 {
			x.CostEach = r.amount(cents(frac(r.own.lineCost[l], int64(n))))
		} else {
			x.CostEach = r.amount(0)
		}
		goods := int64(0)
		for j, z := range g.Sizes {
			price := add(r.own.each[g.group], r.addition(l, j))
			goods = add(goods, mul(price, int64(r.own.qty[l][j])))
			x.Sizes = append(x.Sizes, SizePrice{
				Size: z.Size, Qty: z.Qty, Spares: r.own.spares[l][j], UnitPrice: r.amount(price),
				BlankEach: r.amount(cents(r.own.blankEach(l, j))),
			})
		}
		x.Goods = r.amount(goods)
		for _, e := range r.own.lines {
			if e.split[l] != 0 {
				x.Split = append(x.Split, CostLine{
					Kind: e.kind, Ref: r.ref(e), Amount: r.amount(e.split[l]),
					Basis: fmt.Sprintf("of %s", r.amount(e.amount)),
				})
			}
		}
		out[l] = x
	}
	return out
}

// addition is what a size of a line sells for above the price each.
func (r *report) addition(l, size int) int64 {
	g := r.lines[l].group
	u := r.own.us[g]
	if u == nil {
		return 0
	}
	return u.additions[slices.Index(r.model.groups[g].lines, l)][size]
}

func (r *report) methodsOut() []Method {
	out := []Method{}
	for p, c := range r.own.choice {
		if c < 0 {
			continue
		}
		x := Method{Placement: r.placements[p].ID, Card: r.cards[c].ID, Transfers: r.amount(r.own.transfers[p])}
		for _, i := range r.placements[p].items {
			x.Needed += r.own.needOn(&r.cards[c], i)
		}
		if second := r.runnerUp(p, c); second.ok {
			cost, more := r.amount(second.cost), r.amount(second.cost-r.own.total)
			x.RunnerUp, x.RunnerUpCost, x.Difference = r.cards[second.choice[p]].ID, &cost, &more
		}
		out = append(out, x)
	}
	return out
}

// runnerUp is the best combination that has a placement on another card.
func (r *report) runnerUp(p, card int) combination {
	s := r.own.state
	if s.frozen != nil {
		return combination{}
	}
	allowed := slices.Clone(s.allowed)
	allowed[p] = slices.DeleteFunc(slices.Clone(allowed[p]), func(c int) bool { return c == card })
	best, _ := s.search(allowed, r.own.choice, secondEffort) // one other card moves the rest little
	return best
}

func (r *report) priceOut() Totals {
	t, p := r.own.totals, r.job.Pricing
	out := Totals{
		Goods: r.amount(t.goods), MinimumOrder: r.amount(t.minimum), Rush: r.amount(t.rush), Discount: r.amount(t.discount),
		Extras: r.amount(t.extras), Art: r.amount(t.art), Delivery: r.amount(t.delivery), Subtotal: r.amount(t.subtotal),
		Taxable: r.amount(cents(t.taxable)), Tax: r.amount(t.tax), CardFee: r.amount(t.cardFee),
		AbsorbedFee: r.amount(t.absorbed), Total: r.amount(t.total), Deposit: r.amount(t.deposit),
		Balance: r.amount(t.total - t.deposit), ExtraLines: r.extraLinesOut(),
	}
	out.Basis = r.priceBasis(p, t)
	return out
}

func (r *report) extraLinesOut() []ExtraLine {
	out := []ExtraLine{}
	for e, x := range r.job.Extras {
		if n := r.own.extraPieces(e); x.Charge.Sign() > 0 && n > 0 {
			out = append(out, ExtraLine{
				Kind: "extra", Ref: x.ID, Name: x.Name, Amount: r.amount(r.own.extraRevenue(e)),
				Basis: product(n, x.Charge),
			})
		}
	}
	for p, x := range r.placements {
		if n := r.own.charged(p); x.Personal && x.ChargeEach.Sign() > 0 && n > 0 {
			out = append(out, ExtraLine{
				Kind: "personal", Ref: x.ID, Name: x.Name, Amount: r.amount(r.own.personalRevenue(p)),
				Basis: product(n, x.ChargeEach),
			})
		}
	}
	return out
}

func (r *report) ladderOut() []Step {
	out := []Step{}
	for k, q := range r.ladder.quantities {
		w := r.ladder.steps[k]
		x := Step{Pieces: q, Units: map[string]money.Amount{}, Methods: map[string]string{}}
		if w == nil {
			zero := r.amount(0)
			x.Unserved, x.Each, x.Goods, x.Total, x.Cost = true, zero, zero, zero, zero
			out = append(out, x)
			continue
		}
		x.Each, x.Goods = r.amount(cents(frac(w.totals.goods, int64(q)))), r.amount(w.totals.goods)
		x.Total, x.Cost = r.amount(w.totals.total), r.amount(w.total)
		for l, g := range r.lines {
			if w.lineQty[l] > 0 {
				x.Units[g.ID] = r.amount(w.each[g.group])
			}
		}
		for p, c := range w.choice {
			if c >= 0 {
				x.Methods[r.placements[p].ID] = r.cards[c].ID
			}
		}
		out = append(out, x)
	}
	return out
}
