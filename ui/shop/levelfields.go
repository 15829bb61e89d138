package shop

import (
	"slices"

	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// leveled is a field of one price level.
type leveled struct {
	path, caption, unit string
	write               func(p *quote.Pricing) string
	read                func(r *form.Reader, path string, p *quote.Pricing)
}

func levelAmount(path, caption, unit string, at func(*quote.Pricing) *money.Amount) leveled {
	return leveled{
		path, caption, unit,
		func(p *quote.Pricing) string { return nonzero(at(p).Sign(), at(p).String()) },
		func(r *form.Reader, path string, p *quote.Pricing) { *at(p) = r.Amount(path) },
	}
}

func levelNumber(path, caption, unit string, at func(*quote.Pricing) *money.Number) leveled {
	return leveled{
		path, caption, unit,
		func(p *quote.Pricing) string { return nonzero(at(p).Sign(), at(p).String()) },
		func(r *form.Reader, path string, p *quote.Pricing) { *at(p) = r.Number(path) },
	}
}

// priceFields make a price of a cost.
var priceFields = []leveled{
	levelNumber("pricing.percent", "Percent", "%", func(p *quote.Pricing) *money.Number { return &p.Percent }),
	{"pricing.percents", "Percent by pieces", "", writePercents, readPercents},
	levelNumber("pricing.blank_percent", "On blanks (split)", "%", func(p *quote.Pricing) *money.Number { return &p.BlankPercent }),
	levelAmount("pricing.per_hour", "For an hour (hourly)", "", func(p *quote.Pricing) *money.Amount { return &p.PerHour }),
	levelAmount("pricing.step", "Round up to", "", func(p *quote.Pricing) *money.Amount { return &p.Step }),
	levelAmount("pricing.minimum_order", "Minimum order", "", func(p *quote.Pricing) *money.Amount { return &p.MinimumOrder }),
	levelNumber("pricing.floor_percent", "Floor", "% margin", func(p *quote.Pricing) *money.Number { return &p.FloorPercent }),
	levelNumber("pricing.deposit_percent", "Deposit", "%", func(p *quote.Pricing) *money.Number { return &p.DepositPercent }),
	levelNumber("pricing.rush_percent", "Rush", "%", func(p *quote.Pricing) *money.Number { return &p.RushPercent }),
	levelNumber("pricing.discount_percent", "Discount", "%", func(p *quote.Pricing) *money.Number { return &p.DiscountPercent }),
	{"pricing.upcharges", "Added for sizes", "", writeUpcharges, readUpcharges},
}

// taxFields are the tax, and the fee for a card.
var taxFields = []leveled{
	levelNumber("pricing.tax.percent", "Sales tax", "%", func(p *quote.Pricing) *money.Number { return &p.Tax.Percent }),
	{"pricing.tax.clothing.amount", "Clothing, up to each", "", writeClothing, readClothing},
	levelNumber("pricing.card.percent", "Card fee", "%", func(p *quote.Pricing) *money.Number { return &p.Card.Percent }),
	levelAmount("pricing.card.fixed", "Card fee, fixed", "", func(p *quote.Pricing) *money.Amount { return &p.Card.Fixed }),
	levelNumber("pricing.card.cap_percent", "passed on at most", "%", func(p *quote.Pricing) *money.Number { return &p.Card.CapPercent }),
}

var levelFields = slices.Concat(priceFields, taxFields)

// texts are fields of words among those of numbers, with what they look like.
var texts = map[string]string{"pricing.percents": "12 45, 24 42", "pricing.upcharges": "2XL 2.00, 3XL 3.50"}

// taxed are the parts of an order that a tax may fall on, with the words beside their boxes.
var taxed = [][2]string{{"goods", "goods"}, {"art", "art"}, {"rush", "rush"}, {"delivery", "delivery"}, {"extras", "extras that are taxed"}}

var clothingRules = []parts.Option{
	{Name: "taxed as all goods"},
	{Key: "exempt_below", Name: "free below an amount each"},
	{Key: "tax_excess", Name: "only what is over an amount"},
}

func writeClothing(p *quote.Pricing) string {
	if c := p.Tax.Clothing; c != nil {
		return nonzero(c.Amount.Sign(), c.Amount.String())
	}
	return ""
}

// readClothing reads the amount of the rule that is chosen.
func readClothing(r *form.Reader, path string, p *quote.Pricing) {
	p.Tax.Clothing = nil
	rule := r.Text(clothingRule)
	if rule == "" {
		return
	}
	p.Tax.Clothing = &quote.ClothingRule{Rule: rule, Amount: r.Amount(path)}
	if p.Tax.Clothing.Amount.Sign() == 0 {
		r.Say(path, "enter the amount each that the rule names, like 110.00")
	}
}

const clothingRule = "pricing.tax.clothing.rule"

func taxedPath(part string) string { return "pricing.tax.on." + part }

// readTaxed reads the boxes of the taxed parts and of an exempt level.
func readTaxed(r *form.Reader, t *quote.Tax) {
	t.On = nil
	for _, part := range taxed {
		if r.Text(taxedPath(part[0])) != "" {
			t.On = append(t.On, part[0])
		}
	}
	t.Exempt = r.Text("pricing.tax.exempt") != ""
}
