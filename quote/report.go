package quote

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"pressworth/quote/gang"
	"pressworth/quote/money"
)

// report turns a job worked out into its result.
type report struct {
	*model
	ladder *stair
	own    *worked
	first  bool // without cliffs
}

func (r *report) result() Result {
	w := r.own
	res := Result{
		Format: ResultFormat, Currency: r.job.Currency, Title: r.job.Title, Pieces: w.pieces,
		Cost:   Cost{Total: r.amount(w.total), Lines: r.costLines()},
		Groups: r.groupsOut(), Garments: r.garmentsOut(), Methods: r.methodsOut(), Plans: r.plansOut(),
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
	best, _ := s.search(allowed, r.own.choice, 1) // one other card moves the rest little
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
		if n := r.own.texts(p); x.Personal && x.ChargeEach.Sign() > 0 && n > 0 {
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

func (r *report) plansOut() []Plan {
	plans := r.own.plansOut()
	if r.first {
		return plans
	}
	for i := range plans {
		p := &r.own.plans[i]
		for k := range plans[i].Runs {
			plans[i].Runs[k].Room = r.roomOn(p, k)
		}
	}
	return plans
}

// roomOn is what the k-th run of a plan has room left for.
func (r *report) roomOn(p *planned, k int) *Room {
	cd := &r.cards[p.card]
	var room gang.Room
	if cd.sheets != nil {
		room = cd.sheets.Room(p.runs[k])
	} else {
		room = cd.roll.Room(p.runs[k])
	}
	if room.Best < 0 && room.W == 0 {
		return nil
	}
	out := Room{}
	if room.Best >= 0 {
		it := r.items[p.runs[k].Items[room.Best]]
		out.Placement, out.Variant, out.More = r.placements[it.placement].ID, it.variant, room.More[room.Best]
	}
	if room.W > 0 {
		out.W, out.H = r.lengthOut(room.W), r.lengthOut(room.H)
	}
	return &out
}

// plansOut are the plans of a costing in the result's form.
func (c *costing) plansOut() []Plan {
	out := []Plan{}
	for i := range c.plans {
		out = append(out, c.planOut(&c.plans[i]))
	}
	return out
}

func (c *costing) planOut(p *planned) Plan {
	m, cd := c.m, &c.m.cards[p.card]
	used, byRun := p.used(m)
	out := Plan{
		Card: cd.ID, Cost: m.amount(p.cost), Bound: m.amount(p.bound), Setup: m.amount(p.setup), Heuristic: p.heuristic,
		UsedPercent: decimals(times(used, rat(100)), 1), Runs: []Run{},
	}
	for k, r := range p.runs {
		run := Run{
			Inks: r.Inks, Sheets: r.Sheets, UsedPercent: decimals(times(byRun[k], rat(100)), 1), Pieces: []PlacedPiece{},
			Setup: m.amount(m.roundPrice(r.Setup)), Each: cd.eachOf(r.Size, r.Row, r.Sheets),
		}
		if cd.roll != nil {
			run.Length = cd.Lengths[r.Size].Length.String()
			run.Width, run.Height = cd.Width.String(), run.Length
			run.Entry = cd.Lengths[r.Size].Info.EntryID
		} else {
			size := cd.RateCard.Sizes[r.Size]
			run.Size, run.Width, run.Height = size.Name, size.Width.String(), size.Height.String()
			if b := priceAt(size.Prices[r.Row].Each, r.Sheets); b != nil {
				run.Entry = b.Info.EntryID
			}
		}
		for _, x := range r.Placed {
			run.Pieces = append(run.Pieces, m.placedOut(x.Item, x.X, x.Y, x.Turned))
		}
		run.Weights = c.weightsOut(p, k)
		out.Runs = append(out.Runs, run)
	}
	return out
}

// eachOf is the price of one sheet or length, as the card has it.
func (c *card) eachOf(size, row, sheets int) money.Amount {
	if c.roll != nil {
		return c.Lengths[size].Each
	}
	if b := priceAt(c.RateCard.Sizes[size].Prices[row].Each, sheets); b != nil {
		return b.Each
	}
	return money.Amount{}
}

func (m *model) placedOut(i int, x, y int64, turned bool) PlacedPiece {
	it := m.items[i]
	w, h := it.w, it.h
	if turned {
		w, h = h, w
	}
	return PlacedPiece{
		Placement: m.placements[it.placement].ID, Variant: it.variant, Text: it.text,
		X: m.lengthOut(x), Y: m.lengthOut(y), W: m.lengthOut(w), H: m.lengthOut(h), Turned: turned,
	}
}

func (m *model) lengthOut(x int64) string {
	return money.Number(money.FromMinor(x, m.lengthPlaces)).String()
}

// weightsOut are the sharing weights of the k-th run; those of a roll plan stand in its first.
func (c *costing) weightsOut(p *planned, k int) []SharingWeight {
	out := []SharingWeight{}
	if k >= len(p.weights) {
		return out
	}
	for n, i := range p.runItems[k] {
		it := c.m.items[i]
		out = append(out, SharingWeight{
			Placement: c.m.placements[it.placement].ID, Variant: it.variant, Text: it.text,
			Weight: fmt.Sprint(p.weights[k][n]), Cost: c.m.amount(p.itemCost[i]),
		})
	}
	return out
}

// Freeze works a job out and returns it with its methods and plans frozen, one entry for its own quantity and one for
// every step of the ladder, and its result. The error, if any, is Problems.
func Freeze(job Job) (frozen Job, r Result, err error) {
	frozen = job
	err = NewMemory().working(job, func(m *model) Problems {
		if len(m.problems) > 0 {
			return m.problems
		}
		ladder := m.stair()
		own := ladder.own()
		if own == nil {
			return m.unserved()
		}
		r = (&report{model: m, ladder: ladder, own: own}).result()
		frozen.Frozen = nil
		for _, w := range append([]*worked{own}, ladder.steps...) {
			if w != nil && !slices.ContainsFunc(frozen.Frozen, func(f Frozen) bool { return f.Pieces == w.pieces }) {
				frozen.Frozen = append(frozen.Frozen, w.freeze())
			}
		}
		return nil
	})
	return frozen, r, err
}

func (w *worked) freeze() Frozen {
	w.layOut()
	f := Frozen{Pieces: w.pieces, Methods: map[string]string{}, Plans: w.plansOut()}
	for p, c := range w.choice {
		if c >= 0 {
			f.Methods[w.m.placements[p].ID] = w.m.cards[c].ID
		}
	}
	return f
}

var _ = strings.Join
