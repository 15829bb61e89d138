package quote_test

import (
	"fmt"
	"math/big"
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/internal/plain"
	"pressworth/quote/money"
)

// comparison lists where the oracle's figures and a result are not the same.
type comparison struct {
	places int
	found  []string
}

func (c *comparison) amount(what string, want *big.Rat, got money.Amount) {
	if want == nil {
		want = new(big.Rat)
	}
	if want.Cmp(got.Rat()) != 0 {
		c.found = append(c.found, fmt.Sprintf("%s: oracle %s, engine %s", what, want.FloatString(c.places+2), got))
	}
}

func (c *comparison) text(what string, want, got any) {
	if w, g := fmt.Sprint(want), fmt.Sprint(got); w != g {
		c.found = append(c.found, fmt.Sprintf("%s: oracle %s, engine %s", what, w, g))
	}
}

// differences compares everything that a result holds; what a result leaves out (splits, groups) is passed over.
func differences(want plain.Figures, got quote.Result, places int) []string {
	c := &comparison{places: places}
	c.text("pieces", want.Pieces, got.Pieces)
	c.costs(want, got)
	c.garments(want, got)
	c.methods(want, got)
	c.totals(want.Totals, got.Price)
	c.text("hours", want.Hours.FloatString(2), got.Hours)
	c.margin(want, got)
	c.ladder(want, got)
	c.cliffs(want, got)
	return c.found
}

func (c *comparison) costs(want plain.Figures, got quote.Result) {
	c.amount("cost", want.Cost, got.Cost.Total)
	seen := map[plain.Key]bool{}
	for _, l := range got.Cost.Lines {
		k := plain.Key{Kind: l.Kind, Ref: l.Ref}
		if seen[k] {
			c.found = append(c.found, fmt.Sprintf("cost line %v stands twice", k))
		}
		seen[k] = true
		c.amount(fmt.Sprint("cost line ", k), want.Lines[k], l.Amount)
	}
	for k, x := range want.Lines {
		if !seen[k] && x.Sign() != 0 {
			c.found = append(c.found, fmt.Sprintf("cost line %v: oracle %s, engine none", k, x.FloatString(2)))
		}
	}
}

func (c *comparison) garments(want plain.Figures, got quote.Result) {
	for _, g := range got.Garments {
		if want.Unit[g.ID] == nil {
			continue // a line without pieces
		}
		sum := new(big.Rat)
		for _, x := range want.Split[g.ID] {
			sum.Add(sum, x)
		}
		c.amount(g.ID+" cost", sum, g.Cost)
		c.amount(g.ID+" unit price", want.Unit[g.ID], g.UnitPrice)
		for z, s := range g.Sizes {
			c.amount(g.ID+" "+s.Size, want.Sizes[g.ID][z], s.UnitPrice)
			c.text(g.ID+" "+s.Size+" spares", want.Spares[g.ID][z], s.Spares)
		}
		for _, l := range g.Split {
			c.amount(fmt.Sprintf("%s of %s %s", g.ID, l.Kind, l.Ref), want.Split[g.ID][plain.Key{Kind: l.Kind, Ref: l.Ref}], l.Amount)
		}
	}
	for id := range want.Unit {
		if !slices.ContainsFunc(got.Garments, func(g quote.GarmentLine) bool { return g.ID == id }) {
			c.found = append(c.found, "garment "+id+": not in the result")
		}
	}
}

func (c *comparison) methods(want plain.Figures, got quote.Result) {
	c.text("placements with a method", len(want.Methods), len(got.Methods))
	for _, m := range got.Methods {
		c.text("method of "+m.Placement, want.Methods[m.Placement], m.Card)
		if m.Difference == nil && m.RunnerUp == "" && got.Groups == nil {
			continue // a worked case without runners-up
		}
		second := want.RunnerUp[m.Placement]
		c.text("runner-up of "+m.Placement, second.Card, m.RunnerUp)
		if m.RunnerUpCost != nil {
			c.amount("runner-up's cost of "+m.Placement, second.Cost, *m.RunnerUpCost)
		}
	}
}

func (c *comparison) totals(want plain.Totals, got quote.Totals) {
	for _, x := range []struct {
		what string
		want *big.Rat
		got  money.Amount
	}{
		{"goods", want.Goods, got.Goods},
		{"minimum order", want.MinimumOrder, got.MinimumOrder},
		{"rush", want.Rush, got.Rush},
		{"discount", want.Discount, got.Discount},
		{"extras", want.Extras, got.Extras},
		{"art", want.Art, got.Art},
		{"delivery", want.Delivery, got.Delivery},
		{"subtotal", want.Subtotal, got.Subtotal},
		{"tax", want.Tax, got.Tax},
		{"card fee", want.CardFee, got.CardFee},
		{"absorbed fee", want.AbsorbedFee, got.AbsorbedFee},
		{"total", want.Total, got.Total},
		{"deposit", want.Deposit, got.Deposit},
		{"balance", want.Balance, got.Balance},
	} {
		c.amount(x.what, x.want, x.got)
	}
}

func (c *comparison) margin(want plain.Figures, got quote.Result) {
	margin, perHour := "none", "none"
	if want.Margin != nil {
		margin = unsigned(want.Margin.FloatString(1))
	}
	if want.PerHour != nil {
		perHour = unsigned(want.PerHour.FloatString(c.places))
	}
	gotMargin, gotPerHour := "none", "none"
	if got.MarginPercent != nil {
		gotMargin = *got.MarginPercent
	}
	if got.LeftPerHour != nil {
		gotPerHour = got.LeftPerHour.String()
	}
	c.text("margin", margin, gotMargin)
	c.text("left per hour", perHour, gotPerHour)
}

func (c *comparison) ladder(want plain.Figures, got quote.Result) {
	c.text("ladder steps", len(want.Ladder), len(got.Ladder))
	for i := range min(len(want.Ladder), len(got.Ladder)) {
		w, g := want.Ladder[i], got.Ladder[i]
		at := fmt.Sprintf("at %d: ", w.Pieces)
		c.text(at+"pieces", w.Pieces, g.Pieces)
		c.text(at+"unserved", w.Unserved, g.Unserved)
		if w.Unserved {
			continue
		}
		c.amount(at+"each", w.Each, g.Each)
		c.amount(at+"goods", w.Goods, g.Goods)
		c.amount(at+"total", w.Total, g.Total)
		c.amount(at+"cost", w.Cost, g.Cost)
		c.text(at+"methods", w.Methods, g.Methods)
		c.text(at+"lines", len(w.Units), len(g.Units))
		for id, u := range w.Units {
			c.amount(at+id, u, g.Units[id])
		}
	}
}

func (c *comparison) cliffs(want plain.Figures, got quote.Result) {
	if got.Cliffs == nil && got.Groups == nil {
		return // a worked case without cliffs
	}
	list := func(from, to int, saves string) string { return fmt.Sprintf("%d→%d saves %s", from, to, saves) }
	var w, g []string
	for _, x := range want.Cliffs {
		w = append(w, list(x.From, x.To, x.Saves.FloatString(c.places)))
	}
	for _, x := range got.Cliffs {
		g = append(g, list(x.From, x.To, x.Saves.String()))
	}
	slices.Sort(w)
	slices.Sort(g)
	c.text("cliffs", w, g)
}

// unsigned takes the sign off a zero.
func unsigned(s string) string {
	if strings.Trim(s, "-0.") == "" {
		return strings.TrimPrefix(s, "-")
	}
	return s
}
