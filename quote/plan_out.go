package quote

import (
	"fmt"

	"pressworth/quote/gang"
	"pressworth/quote/money"
)

// plansOut are the plans of the job in the result's form, with what their sheets have room left for.
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
	texts := textsInTurn{}
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
			piece := m.placedOut(x.Item, x.X, x.Y, x.Turned)
			piece.Text = texts.next(m, x.Item)
			run.Pieces = append(run.Pieces, piece)
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
		Placement: m.placements[it.placement].ID, Variant: it.variant,
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
			Placement: c.m.placements[it.placement].ID, Variant: it.variant, Text: it.firstText(),
			Weight: fmt.Sprint(p.weights[k][n]), Cost: c.m.amount(p.itemCost[i]),
		})
	}
	return out
}
