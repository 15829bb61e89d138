package present

import (
	"fmt"
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Line is one line of a comparison of two priced jobs.
type Line struct {
	Part   string // what the line belongs to: Garments, Artwork, Price, Cost
	Name   string
	A, B   string
	Differ string // B less A for amounts; empty for words
	Same   bool
}

// priced is a job with what it came to.
type priced struct {
	job    quote.Job
	result quote.Result
}

// CompareJobs sets two priced jobs side by side, line by line: what is ordered in words, then price and cost in amounts.
// The lines of price add up to the totals, and so do those of cost.
func CompareJobs(jobA quote.Job, a quote.Result, jobB quote.Job, b quote.Result) []Line {
	l := &lines{}
	left, right := priced{jobA, a}, priced{jobB, b}
	l.words("Garments", left.garments(), right.garments())
	l.words("Artwork", left.artwork(), right.artwork())
	l.amounts("Price", left.prices(), right.prices())
	l.amounts("Cost", left.costs(), right.costs())
	return l.out
}

type lines struct{ out []Line }

// word and sum are a named text and a named amount.
type (
	word struct{ name, text string }
	sum  struct {
		name   string
		amount money.Amount
	}
)

func (l *lines) words(part string, a, b []word) {
	for _, name := range names(a, b, func(w word) string { return w.name }) {
		x, y := textOf(a, name), textOf(b, name)
		l.out = append(l.out, Line{Part: part, Name: name, A: x, B: y, Same: x == y})
	}
}

func (l *lines) amounts(part string, a, b []sum) {
	for _, name := range names(a, b, func(s sum) string { return s.name }) {
		x, inA := amountOf(a, name)
		y, inB := amountOf(b, name)
		d := quote.Less(y, x)
		line := Line{Part: part, Name: name, A: Amount(x), B: Amount(y), Differ: withSign(d), Same: d.Sign() == 0}
		if !inA {
			line.A = "–"
		}
		if !inB {
			line.B = "–"
		}
		l.out = append(l.out, line)
	}
}

// withSign writes a difference with its sign, nothing for none.
func withSign(d money.Amount) string {
	switch d.Sign() {
	case 0:
		return ""
	case 1:
		return "+" + Amount(d)
	}
	return Amount(d)
}

// names are those of both lists, in the order of the second with what only the first has where it stood.
func names[T any](a, b []T, name func(T) string) []string {
	var out []string
	for _, x := range b {
		if !slices.Contains(out, name(x)) {
			out = append(out, name(x))
		}
	}
	for i, x := range a {
		if !slices.Contains(out, name(x)) {
			out = slices.Insert(out, min(i, len(out)), name(x))
		}
	}
	return out
}

func textOf(all []word, name string) string {
	for _, w := range all {
		if w.name == name {
			return w.text
		}
	}
	return "–"
}

// amountOf adds up what stands under a name: one kind of cost may have several lines for one thing.
func amountOf(all []sum, name string) (money.Amount, bool) {
	var total money.Amount
	found := false
	for _, s := range all {
		if s.name == name {
			total, found = quote.Sum(total, s.amount), true
		}
	}
	return total, found
}

func (p priced) garments() []word {
	var out []word
	for _, g := range p.job.Garments {
		var sizes []string
		for _, s := range g.Sizes {
			if s.Qty > 0 {
				sizes = append(sizes, fmt.Sprintf("%s %d", s.Size, s.Qty))
			}
		}
		out = append(out, word{p.garment(g.ID), strings.Join(sizes, " · ")})
	}
	return out
}

func (p priced) garment(id string) string {
	for _, g := range p.job.Garments {
		if g.ID == id {
			name := g.Name
			if name == "" {
				name = g.Style
			}
			if g.Color != "" {
				name += ", " + lower(g.Color)
			}
			return name
		}
	}
	return id
}

func (p priced) artwork() []word {
	var out []word
	for _, x := range p.job.Placements {
		text := inches(x.Width.String(), x.Height.String())
		switch {
		case x.FullColor:
			text += ", full colour"
		case len(x.Inks) > 0:
			text += ", " + strings.Join(x.Inks, ", ")
		}
		for _, m := range p.result.Methods {
			if m.Placement == x.ID {
				text += ", " + lower(p.card(m.Card))
			}
		}
		out = append(out, word{p.placement(x.ID), text})
	}
	return out
}

func (p priced) placement(id string) string {
	for _, x := range p.job.Placements {
		if x.ID == id && x.Name != "" {
			return x.Name
		}
	}
	return id
}

func (p priced) card(id string) string {
	for _, c := range p.job.RateCards {
		if c.ID == id && c.Name != "" {
			return c.Name
		}
	}
	return id
}

// prices are what makes the total, each line once.
func (p priced) prices() []sum {
	var out []sum
	for _, g := range p.result.Garments {
		out = append(out, sum{p.garment(g.ID), g.Goods})
	}
	t := p.result.Price
	for _, x := range t.ExtraLines {
		out = append(out, sum{x.Name, x.Amount})
	}
	for _, s := range []sum{{"Minimum order", t.MinimumOrder}, {"Rush", t.Rush}, {"Discount", money.Amount{}}, {"Art", t.Art}, {"Delivery", t.Delivery}, {"Sales tax", t.Tax}, {"Card fee", t.CardFee}} {
		if s.name == "Discount" {
			s.amount = quote.Less(money.Amount{}, t.Discount)
		}
		if s.amount.Sign() != 0 {
			out = append(out, s)
		}
	}
	return append(out, sum{"Total with tax", t.Total})
}

func (p priced) costs() []sum {
	var out []sum
	for _, l := range p.result.Cost.Lines {
		out = append(out, sum{p.costName(l), l.Amount})
	}
	return append(out, sum{"Total cost", p.result.Cost.Total})
}

func (p priced) costName(l quote.CostLine) string {
	name := shownKinds[l.Kind]
	if name == "" {
		name = restNames[l.Kind]
		name = strings.ToUpper(name[:1]) + name[1:]
	}
	for _, s := range p.job.Suppliers {
		if s.ID == l.Ref {
			return name + ", " + s.Name
		}
	}
	for _, e := range p.job.Extras {
		if e.ID == l.Ref {
			return name + ", " + lower(e.Name)
		}
	}
	if l.Ref == "" {
		return name
	}
	if x := p.garment(l.Ref); x != l.Ref {
		return name + ", " + lower(x)
	}
	return name + ", " + lower(p.placement(l.Ref))
}
