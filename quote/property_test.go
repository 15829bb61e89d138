package quote_test

import (
	"fmt"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// drawPriced draws a job that every placement of has a card, with its result.
func drawPriced(t *rapid.T, edits ...func(*quote.Job)) (quote.Job, quote.Result) {
	job := drawJob(t)
	for _, e := range edits {
		e(&job)
	}
	r, err := quote.Price(job)
	if err != nil {
		t.Skip("a placement that no card serves")
	}
	return job, r
}

// sumIs fails unless the parts add up to the whole.
func sumIs(t *rapid.T, what string, whole money.Amount, parts ...money.Amount) {
	if got := quote.Sum(parts...); got.Cmp(whole) != 0 {
		t.Fatalf("%s: the parts make %s, the whole is %s", what, got, whole)
	}
}

func TestPrice_partsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, r := drawPriced(t)
		var lines, garments, groups, goods []money.Amount
		split := map[string][]money.Amount{}
		for _, l := range r.Cost.Lines {
			lines = append(lines, l.Amount)
		}
		for _, g := range r.Garments {
			var own []money.Amount
			n := 0
			for _, l := range g.Split {
				own = append(own, l.Amount)
				split[l.Kind+" "+l.Ref] = append(split[l.Kind+" "+l.Ref], l.Amount)
			}
			for _, s := range g.Sizes {
				n += s.Qty
			}
			if n != g.Pieces {
				t.Fatalf("%s: sizes make %d pieces, the line has %d", g.ID, n, g.Pieces)
			}
			sumIs(t, "cost of "+g.ID, g.Cost, own...)
			garments, goods = append(garments, g.Cost), append(goods, g.Goods)
		}
		for _, g := range r.Groups {
			groups = append(groups, g.Cost)
		}
		sumIs(t, "cost by kind", r.Cost.Total, lines...)
		sumIs(t, "cost by garment line", r.Cost.Total, garments...)
		sumIs(t, "cost by group", r.Cost.Total, groups...)
		for _, l := range r.Cost.Lines {
			sumIs(t, "split of "+l.Kind+" "+l.Ref, l.Amount, split[l.Kind+" "+l.Ref]...)
		}
		p := r.Price
		sumIs(t, "goods", p.Goods, goods...)
		sumIs(t, "subtotal", quote.Sum(p.Subtotal, p.Discount), p.Goods, p.Rush, p.MinimumOrder, p.Extras, p.Art, p.Delivery)
		sumIs(t, "total", p.Total, p.Subtotal, p.Tax, p.CardFee)
		sumIs(t, "deposit and balance", p.Total, p.Deposit, p.Balance)
		transfers(t, job, r)
	})
}

// transfers holds plans and methods against the cost lines of transfers.
func transfers(t *rapid.T, job quote.Job, r quote.Result) {
	var methods, plans, lines []money.Amount
	planned := map[string]bool{}
	for _, p := range r.Plans {
		planned[p.Card] = true
		plans = append(plans, p.Cost)
		if p.Bound.Cmp(p.Cost) > 0 {
			t.Fatalf("plan on %s costs %s, under its bound %s\n%s", p.Card, p.Cost, p.Bound, jobfile.Encode(job))
		}
	}
	for _, m := range r.Methods {
		if methods = append(methods, m.Transfers); planned[m.Card] {
			lines = append(lines, m.Transfers)
		}
	}
	var all []money.Amount
	for _, l := range r.Cost.Lines {
		if l.Kind == quote.KindTransfers {
			all = append(all, l.Amount)
		}
	}
	sumIs(t, "methods", quote.Sum(all...), methods...)
	if len(plans) > 0 {
		sumIs(t, "plans", quote.Sum(lines...), plans...)
	}
}

func TestPrice_neverRisesAlongTheLadder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, r := drawPriced(t, func(j *quote.Job) {
			j.Pricing.MayRise = false
			j.Ladder = append(j.Ladder, 3, 17, 40)
			for i := range j.Garments {
				j.Garments[i].Price = nil
			}
		})
		lowest := map[string]money.Amount{}
		check := func(at int, line string, u money.Amount) {
			if low, ok := lowest[line]; ok && u.Cmp(low) > 0 {
				t.Fatalf("%s costs %s each at %d, and %s at fewer", line, u, at, low)
			}
			lowest[line] = u
		}
		own := false
		for i := 0; i <= len(r.Ladder); i++ {
			if !own && (i == len(r.Ladder) || r.Ladder[i].Pieces >= r.Pieces) {
				own = true
				for _, g := range r.Garments {
					if low, ok := lowest[g.ID]; ok && g.Pieces > 0 && g.UnitPrice.Cmp(low) > 0 {
						t.Fatalf("%s costs %s each at the job's own %d, and %s at fewer", g.ID, g.UnitPrice, r.Pieces, low)
					}
				}
			}
			if i < len(r.Ladder) {
				for line, u := range r.Ladder[i].Units {
					check(r.Ladder[i].Pieces, line, u)
				}
			}
		}
	})
}

// A price that goes up never makes the job cheaper, once the methods are fixed and no delivery comes free.
func TestPrice_dearerNeverCostsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, r := drawPriced(t, func(j *quote.Job) {
			j.Ladder = nil
			for i := range j.Suppliers {
				j.Suppliers[i].FreeFrom = money.Amount{}
			}
		})
		for i := range job.Placements {
			for _, m := range r.Methods {
				if m.Placement == job.Placements[i].ID {
					job.Placements[i].Method = m.Card
				}
			}
		}
		for _, p := range r.Plans {
			if p.Heuristic {
				t.Skip("a plan that is not exact")
			}
		}
		prices := pricesOf(&job)
		at := rapid.IntRange(0, len(prices)-1).Draw(t, "price")
		before := jobfile.Encode(job)
		*prices[at] = quote.Sum(*prices[at], money.FromMinor(int64(rapid.IntRange(1, 5000).Draw(t, "dearer")), 2-2*boolInt(job.Currency == "JPY")))
		dearer, err := quote.Price(job)
		if err != nil {
			t.Fatal(err)
		}
		if dearer.Cost.Total.Cmp(r.Cost.Total) < 0 {
			t.Fatalf("cost fell from %s to %s with price %d dearer\n%s", r.Cost.Total, dearer.Cost.Total, at, before)
		}
	})
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// pricesOf are all prices that a job pays.
func pricesOf(job *quote.Job) []*money.Amount {
	s := &job.Shop
	all := []*money.Amount{&s.WagePerHour, &s.OverheadPerMonth, &s.HitCost, &s.Power.PerKWh, &job.Art.PerHour, &job.Pricing.DeliveryCost}
	breaks := func(bs []quote.Break) {
		for i := range bs {
			all = append(all, &bs[i].Each)
		}
	}
	for i := range job.Garments {
		all = append(all, &job.Garments[i].ValueEach)
		for k := range job.Garments[i].Sizes {
			breaks(job.Garments[i].Sizes[k].Each)
		}
	}
	for i := range job.Suppliers {
		all = append(all, &job.Suppliers[i].Freight)
	}
	for i := range job.Extras {
		all = append(all, &job.Extras[i].Cost)
	}
	for i := range job.RateCards {
		c := &job.RateCards[i]
		all = append(all, &c.SetupPerDesign, &c.SetupPerInk, &c.MinimumEach)
		breaks(c.Rates)
		breaks(c.FullColorEach)
		for k := range c.Prices {
			breaks(c.Prices[k].Each)
		}
		for k := range c.Sizes {
			for n := range c.Sizes[k].Prices {
				breaks(c.Sizes[k].Prices[n].Each)
			}
		}
		for k := range c.Lengths {
			all = append(all, &c.Lengths[k].Each)
		}
	}
	return all
}

// With the rule "alone" a placement on a shared sheet or roll costs at most what it would without the others.
func TestPrice_nobodyPaysMoreForSharing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := &draw{T: t, places: 2}
		job := pieces(d.upto(5, 40), "3.00")
		job.Shop.SheetShare = "alone"
		c := quote.RateCard{ID: "c", Name: "Card", Supplier: "s", SetupPerDesign: d.amount(0, 9), SetupPerInk: d.amount(0, 9)}
		if d.oneIn(3) {
			d.rollCard(&c)
		} else {
			d.sheetCard(&c)
			c.Sizes[0].Prices = append(c.Sizes[0].Prices, quote.InkRow{Inks: 12, Each: d.breaks(3, 1, 9, 1, d.amount)})
		}
		job.RateCards = []quote.RateCard{c}
		for i := range d.upto(2, 4) {
			job.Placements = append(job.Placements, quote.Placement{
				ID: fmt.Sprint("p", i), Name: "P", Width: d.length(1, 6), Height: d.length(1, 6),
				Inks: []string{d.one("white", "gold")},
			})
		}
		together, err := quote.Price(job)
		if err != nil {
			t.Skip("does not fit the card")
		}
		for i, p := range job.Placements {
			single := job
			single.Placements = job.Placements[i : i+1]
			alone, err := quote.Price(single)
			if err != nil {
				t.Fatalf("%s is served with the others, but not alone: %v", p.ID, err)
			}
			if s, a := together.Methods[i].Transfers, alone.Methods[0].Transfers; s.Cmp(a) > 0 {
				t.Fatalf("%s pays %s for sharing and %s alone\n%s", p.ID, s, a, jobfile.Encode(job))
			}
		}
	})
}

// A frozen job, written and read back, comes to the same cent without anything being searched for.
func TestFreeze_comesToTheSameCent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job := drawJob(t)
		frozen, want, err := quote.Freeze(job)
		if err != nil {
			t.Skip("a placement that no card serves")
		}
		read, err := jobfile.Decode(jobfile.Encode(frozen))
		if err != nil {
			t.Fatal(err)
		}
		got, err := quote.Price(read)
		if err != nil {
			t.Fatalf("%v\n%s", err, jobfile.Encode(frozen))
		}
		if !reflect.DeepEqual(amounts(got), amounts(want)) {
			t.Fatalf("got\n%v\nwant\n%v\n%s", amounts(got), amounts(want), jobfile.Encode(frozen))
		}
	})
}

// amounts are the figures of a result that a frozen job has to repeat.
func amounts(r quote.Result) []string {
	var all []string
	for _, l := range r.Cost.Lines {
		all = append(all, l.Kind+" "+l.Ref+" "+l.Amount.String())
	}
	for _, g := range r.Garments {
		all = append(all, fmt.Sprint(g.ID, " ", g.Cost, " ", g.Sizes))
		for _, l := range g.Split {
			all = append(all, fmt.Sprint(g.ID, " ", l.Kind, " ", l.Ref, " ", l.Amount))
		}
	}
	for _, m := range r.Methods {
		all = append(all, m.Placement+" "+m.Card+" "+m.Transfers.String())
	}
	p := r.Price
	all = append(all, fmt.Sprint(p.Goods, p.Subtotal, p.Tax, p.CardFee, p.AbsorbedFee, p.Total, p.Deposit))
	for _, s := range r.Ladder {
		all = append(all, fmt.Sprint(s.Pieces, s.Unserved, s.Each, s.Goods, s.Total, s.Cost, s.Methods))
	}
	return all
}

func TestPrice_sameJobSameResult(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		job, a := drawPriced(t)
		b, err := quote.Price(job)
		if err != nil || !reflect.DeepEqual(a, b) {
			t.Fatalf("twice the same job, two results; %v", err)
		}
	})
}
