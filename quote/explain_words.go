package quote

import (
	"fmt"
	"reflect"

	"pressworth/quote/money"
)

// stage is a job between two, with its price.
type stage struct {
	job    Job
	result Result
}

// mostDetails is how many details of a cause are told one by one.
const mostDetails = 6

// details say what changed with a cause, for people.
func (x *explaining) details(cause string, a, b stage) []string {
	var all []string
	switch cause {
	case CauseQuantities:
		all = x.countsChanged(a, b)
	case CauseBlanks:
		all = blanksChanged(a, b)
	case CauseFreight:
		all = freightChanged(a, b)
	case CauseTransfers:
		all = cardsChanged(a.job, b.job)
	case CauseShop:
		all = shopChanged(a.job, b.job)
	case CausePricing:
		all = pricingChanged(a.job.Pricing, b.job.Pricing)
	case CauseMethods:
		all = x.methodsChanged(b.job)
	}
	if n := len(all) - mostDetails; n > 0 {
		all = append(all[:mostDetails], fmt.Sprintf("and %d more", n))
	}
	return all
}

func (x *explaining) countsChanged(a, b stage) (out []string) {
	if a.result.Pieces != b.result.Pieces {
		out = append(out, fmt.Sprintf("%d → %d pieces", a.result.Pieces, b.result.Pieces))
	}
	counts := func(g Garment) (n int) {
		for _, z := range g.Sizes {
			n += z.Qty
		}
		return n
	}
	for _, g := range x.now.Garments {
		had := garmentAt(x.old.Garments, g)
		switch {
		case had == nil:
			out = append(out, fmt.Sprintf("%s, new: %d", garmentWords(g), counts(g)))
		case counts(*had) != counts(g):
			out = append(out, fmt.Sprintf("%s %d → %d", garmentWords(g), counts(*had), counts(g)))
		}
	}
	for _, g := range x.old.Garments {
		if garmentAt(x.now.Garments, g) == nil {
			out = append(out, garmentWords(g)+", gone")
		}
	}
	return out
}

func garmentWords(g Garment) string {
	if g.Style == "" {
		return joined(g.Name, g.Color)
	}
	return joined(g.Style, g.Color)
}

func joined(a, b string) string {
	if b == "" {
		return a
	}
	return a + " " + b
}

// blanksChanged compares the prices in force, as both results have them.
func blanksChanged(a, b stage) (out []string) {
	for i, g := range b.result.Garments {
		if i >= len(a.result.Garments) || a.result.Garments[i].ID != g.ID {
			break
		}
		for k, z := range g.Sizes {
			if k < len(a.result.Garments[i].Sizes) {
				if was := a.result.Garments[i].Sizes[k].BlankEach; z.Qty > 0 && was.Cmp(z.BlankEach) != 0 {
					out = append(out, fmt.Sprintf("%s %s %s → %s", b.garment(g.ID), z.Size, was, z.BlankEach))
				}
			}
		}
	}
	return out
}

func (s stage) garment(id string) string {
	for _, g := range s.job.Garments {
		if g.ID == id {
			return garmentWords(g)
		}
	}
	return id
}

func freightChanged(a, b stage) (out []string) {
	for _, l := range b.result.Cost.Lines {
		for _, m := range a.result.Cost.Lines {
			if l.Kind == KindFreight && m.Kind == KindFreight && l.Ref == m.Ref && l.Amount.Cmp(m.Amount) != 0 {
				out = append(out, fmt.Sprintf("%s %s → %s", l.Ref, m.Amount, l.Amount))
			}
		}
	}
	return out
}

// cardsChanged names the cards in use whose prices or settings differ.
func cardsChanged(a, b Job) (out []string) {
	seen := map[string]bool{}
	for _, p := range b.Placements {
		i, k := cardAt(a.RateCards, p.Method), cardAt(b.RateCards, p.Method)
		if i < 0 || k < 0 || seen[p.Method] {
			continue
		}
		seen[p.Method] = true
		if was, is := a.RateCards[i], b.RateCards[k]; !reflect.DeepEqual(was, is) {
			out = append(out, cardName(is))
		}
	}
	return out
}

func cardName(c RateCard) string {
	if c.Name == "" {
		return c.ID
	}
	return c.Name
}

func shopChanged(a, b Job) (out []string) {
	s, t := a.Shop, b.Shop
	amount := func(name string, was, is money.Amount) {
		if was.Cmp(is) != 0 {
			out = append(out, fmt.Sprintf("%s %s → %s", name, was, is))
		}
	}
	number := func(name string, was, is money.Number) {
		if was.Cmp(is) != 0 {
			out = append(out, fmt.Sprintf("%s %s → %s", name, was, is))
		}
	}
	amount("wage an hour", s.WagePerHour, t.WagePerHour)
	number("burden percent", s.BurdenPercent, t.BurdenPercent)
	number("allowance percent", s.AllowancePercent, t.AllowancePercent)
	number("job set-up minutes", s.JobSetupMin, t.JobSetupMin)
	number("design set-up minutes", s.DesignSetupMin, t.DesignSetupMin)
	number("handling seconds", s.Handling, t.Handling)
	amount("overhead a month", s.OverheadPerMonth, t.OverheadPerMonth)
	number("productive hours a month", s.ProductiveHoursPerMonth, t.ProductiveHoursPerMonth)
	amount("a hit", s.HitCost, t.HitCost)
	number("garment spares percent", s.Spares.GarmentPercent, t.Spares.GarmentPercent)
	number("transfer spares percent", s.Spares.TransferPercent, t.Spares.TransferPercent)
	amount("art an hour", a.Art.PerHour, b.Art.PerHour)
	return out
}

func pricingChanged(p, q Pricing) (out []string) {
	number := func(name string, was, is money.Number) {
		if was.Cmp(is) != 0 {
			out = append(out, fmt.Sprintf("%s %s → %s", name, was, is))
		}
	}
	if p.Basis != q.Basis {
		out = append(out, "basis "+p.Basis+" → "+q.Basis)
	}
	number("percent", p.Percent, q.Percent)
	number("rush percent", p.RushPercent, q.RushPercent)
	number("discount percent", p.DiscountPercent, q.DiscountPercent)
	number("tax percent", p.Tax.Percent, q.Tax.Percent)
	number("card fee percent", p.Card.Percent, q.Card.Percent)
	if p.MinimumOrder.Cmp(q.MinimumOrder) != 0 {
		out = append(out, fmt.Sprintf("minimum order %s → %s", p.MinimumOrder, q.MinimumOrder))
	}
	return out
}

func (x *explaining) methodsChanged(j Job) (out []string) {
	name := func(cards []RateCard, id string) string {
		if at := cardAt(cards, id); at >= 0 {
			return cardName(cards[at])
		}
		return id
	}
	for _, p := range j.Placements {
		if was, is := x.held[p.ID], x.chosen[p.ID]; was != "" && is != "" && was != is {
			out = append(out, fmt.Sprintf("%s: %s → %s", p.Name, name(x.old.RateCards, was), name(x.now.RateCards, is)))
		}
	}
	return out
}
