package present

import (
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// RestKind is the kind of the row in which small kinds of cost are gathered.
const RestKind = "rest"

// shownKinds are the kinds of cost with a row of their own, and their names.
var shownKinds = map[string]string{
	quote.KindBlanks: "Blanks", quote.KindTransfers: "Transfers", quote.KindLabour: "Pressing time",
	quote.KindOverhead: "Overhead", quote.KindFreight: "Freight", quote.KindArt: "Art",
}

// restNames are what the kinds under "the rest" are called.
var restNames = map[string]string{
	quote.KindSpoilage: "spoilage", quote.KindPressWear: "wear", quote.KindDelivery: "delivery", quote.KindExtra: "extras",
}

func (c *Counter) costs() CostStack {
	total := c.result.Cost.Total
	stack := CostStack{Total: Amount(total)}
	rest := quote.Gathered{Kind: RestKind}
	gathered := c.result.Cost.Gather()
	slices.SortStableFunc(gathered, func(a, b quote.Gathered) int { return b.Amount.Cmp(a.Amount) })
	for _, g := range gathered {
		if shownKinds[g.Kind] == "" {
			rest.Amount = quote.Sum(rest.Amount, g.Amount)
			rest.Lines = append(rest.Lines, g.Lines...)
			continue
		}
		stack.Rows = append(stack.Rows, c.costRow(g, shownKinds[g.Kind], total))
	}
	if len(rest.Lines) > 0 {
		stack.Rows = append(stack.Rows, c.costRow(rest, c.restName(rest.Lines), total))
	}
	return stack
}

func (c *Counter) costRow(g quote.Gathered, name string, total money.Amount) CostRow {
	r := CostRow{Kind: g.Kind, Name: name, Amount: Amount(g.Amount), Fraction: fraction(g.Amount, total)}
	var basis []string
	for _, l := range g.Lines {
		basis = append(basis, l.Basis)
		r.Lines = append(r.Lines, Figure{Name: c.lineWords(l), Basis: l.Basis, Amount: Amount(l.Amount)})
	}
	r.Basis = strings.Join(basis, " + ")
	if g.Kind == RestKind {
		r.Basis = ""
	}
	return r
}

// restName names what is in "the rest": "Bagging, wear, spoilage".
func (c *Counter) restName(lines []quote.CostLine) string {
	var words []string
	for _, l := range lines {
		w := restNames[l.Kind]
		if l.Kind == quote.KindExtra {
			w = lower(c.extraName(l.Ref))
		}
		if !contains(words, w) {
			words = append(words, w)
		}
	}
	s := strings.Join(words, ", ")
	if len(words) > 3 {
		return "The rest"
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// lineWords says what one line of cost is for.
func (c *Counter) lineWords(l quote.CostLine) string {
	switch l.Kind {
	case quote.KindBlanks, quote.KindSpoilage:
		return c.prefixed(l.Kind, c.garmentName(l.Ref))
	case quote.KindTransfers:
		return c.placementName(l.Ref)
	case quote.KindFreight:
		return c.supplierName(l.Ref)
	case quote.KindExtra:
		return c.extraName(l.Ref)
	case quote.KindPressWear:
		return "Press wear and power"
	case quote.KindDelivery:
		return "Delivery"
	}
	return shownKinds[l.Kind]
}

func (c *Counter) prefixed(kind, name string) string {
	if kind == quote.KindSpoilage {
		return "Spoilage, " + lower(name)
	}
	return name
}

func (c *Counter) garmentName(id string) string {
	for _, g := range c.job.Garments {
		if g.ID == id {
			if g.Color != "" {
				return g.Name + ", " + lower(g.Color)
			}
			return g.Name
		}
	}
	return id
}

func (c *Counter) placementName(id string) string {
	for _, p := range c.job.Placements {
		if p.ID == id && p.Name != "" {
			return p.Name
		}
	}
	return id
}

func (c *Counter) supplierName(id string) string {
	for _, s := range c.job.Suppliers {
		if s.ID == id {
			return s.Name
		}
	}
	return id
}

func (c *Counter) extraName(id string) string {
	for _, e := range c.job.Extras {
		if e.ID == id {
			return e.Name
		}
	}
	return id
}
