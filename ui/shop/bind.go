package shop

import (
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
)

// bound is one field of the page: where it stands in the shop's records, and how it is written and read.
type bound struct {
	path, caption, unit string
	write               func(s *catalog.Shop) string
	read                func(r *form.Reader, path string, s *catalog.Shop)
}

func amount(path, caption, unit string, at func(*catalog.Shop) *money.Amount) bound {
	return bound{
		path, caption, unit,
		func(s *catalog.Shop) string { return nonzero(at(s).Sign(), at(s).String()) },
		func(r *form.Reader, path string, s *catalog.Shop) { *at(s) = r.Amount(path) },
	}
}

func number(path, caption, unit string, at func(*catalog.Shop) *money.Number) bound {
	return bound{
		path, caption, unit,
		func(s *catalog.Shop) string { return nonzero(at(s).Sign(), at(s).String()) },
		func(r *form.Reader, path string, s *catalog.Shop) { *at(s) = r.Number(path) },
	}
}

func count(path, caption, unit string, at func(*catalog.Shop) *int) bound {
	return bound{
		path, caption, unit,
		func(s *catalog.Shop) string { return nonzero(*at(s), strconv.Itoa(*at(s))) },
		func(r *form.Reader, path string, s *catalog.Shop) { *at(s) = r.Count(path) },
	}
}

func words(path, caption string, at func(*catalog.Shop) *string) bound {
	return bound{
		path, caption, "",
		func(s *catalog.Shop) string { return strings.ReplaceAll(*at(s), "\n", "; ") },
		func(r *form.Reader, path string, s *catalog.Shop) {
			*at(s) = strings.ReplaceAll(strings.ReplaceAll(r.Text(path), "; ", "\n"), ";", "\n")
		},
	}
}

// nonzero leaves nothing empty.
func nonzero(sign int, text string) string {
	if sign == 0 {
		return ""
	}
	return text
}

var letterhead = []bound{
	words("paper.shop.name", "Name", func(s *catalog.Shop) *string { return &s.Letterhead.Name }),
	words("paper.shop.contact", "Contact", func(s *catalog.Shop) *string { return &s.Letterhead.Contact }),
	words("paper.shop.email", "E-mail", func(s *catalog.Shop) *string { return &s.Letterhead.Email }),
	words("paper.shop.phone", "Telephone", func(s *catalog.Shop) *string { return &s.Letterhead.Phone }),
	words("paper.shop.address", "Address, lines divided by ;", func(s *catalog.Shop) *string { return &s.Letterhead.Address }),
	words("paper.shop.website", "Website", func(s *catalog.Shop) *string { return &s.Letterhead.Website }),
}

var timeFields = []bound{
	amount("shop.wage_per_hour", "Wage", "an hour", func(s *catalog.Shop) *money.Amount { return &s.Rates.WagePerHour }),
	number("shop.burden_percent", "Burden", "%", func(s *catalog.Shop) *money.Number { return &s.Rates.BurdenPercent }),
	number("shop.allowance_percent", "Allowance", "%", func(s *catalog.Shop) *money.Number { return &s.Rates.AllowancePercent }),
	number("shop.job_setup_min", "Set-up a job", "min", func(s *catalog.Shop) *money.Number { return &s.Rates.JobSetupMin }),
	number("shop.design_setup_min", "Set-up a design", "min", func(s *catalog.Shop) *money.Number { return &s.Rates.DesignSetupMin }),
	number("shop.changeover_min", "Changeover", "min", func(s *catalog.Shop) *money.Number { return &s.Rates.ChangeoverMin }),
	number("shop.handling_s", "Handling a piece", "s", func(s *catalog.Shop) *money.Number { return &s.Rates.Handling }),
	amount("art.per_hour", "Art time", "an hour", func(s *catalog.Shop) *money.Amount { return &s.ArtPerHour }),
}

var overheadFields = []bound{
	amount("shop.overhead_per_month", "Overhead", "a month", func(s *catalog.Shop) *money.Amount { return &s.Rates.OverheadPerMonth }),
	number("shop.productive_hours_per_month", "Pressing hours", "a month", func(s *catalog.Shop) *money.Number { return &s.Rates.ProductiveHoursPerMonth }),
	amount("shop.hit_cost", "Wear", "a hit", func(s *catalog.Shop) *money.Amount { return &s.Rates.HitCost }),
	number("shop.power.watts", "Press draws", "W", func(s *catalog.Shop) *money.Number { return &s.Rates.Power.Watts }),
	number("shop.power.duty_percent", "Heating", "% of the time", func(s *catalog.Shop) *money.Number { return &s.Rates.Power.DutyPercent }),
	amount("shop.power.per_kwh", "Power", "a kWh", func(s *catalog.Shop) *money.Amount { return &s.Rates.Power.PerKWh }),
}

var spareFields = []bound{
	number("shop.spares.garment_percent", "Spare garments", "%", func(s *catalog.Shop) *money.Number { return &s.Rates.Spares.GarmentPercent }),
	count("shop.spares.garment_at_least", "at least", "", func(s *catalog.Shop) *int { return &s.Rates.Spares.GarmentAtLeast }),
	count("shop.spares.garment_from", "from pieces", "", func(s *catalog.Shop) *int { return &s.Rates.Spares.GarmentFrom }),
	number("shop.spares.transfer_percent", "Spare transfers", "%", func(s *catalog.Shop) *money.Number { return &s.Rates.Spares.TransferPercent }),
	count("shop.spares.transfer_at_least", "at least", "", func(s *catalog.Shop) *int { return &s.Rates.Spares.TransferAtLeast }),
	count("shop.spares.transfer_from", "from pieces", "", func(s *catalog.Shop) *int { return &s.Rates.Spares.TransferFrom }),
}

var quoteFields = []bound{
	{"ladder", "Ladder, quantities", "", func(s *catalog.Shop) string { return joinInts(s.Ladder) }, readLadder},
	count("valid_days", "Quotes hold", "days", func(s *catalog.Shop) *int { return &s.ValidDays }),
	count("stale_days", "Prices go stale", "days", func(s *catalog.Shop) *int { return &s.StaleDays }),
	words("terms", "Terms printed on the quote", func(s *catalog.Shop) *string { return &s.Terms }),
}

func joinInts(n []int) string {
	texts := make([]string, len(n))
	for i, x := range n {
		texts[i] = strconv.Itoa(x)
	}
	return strings.Join(texts, " ")
}

func readLadder(r *form.Reader, path string, s *catalog.Shop) {
	s.Ladder = nil
	for _, word := range strings.FieldsFunc(r.Text(path), func(c rune) bool { return c == ' ' || c == ',' || c == ';' }) {
		n, err := strconv.Atoi(word)
		if err != nil || n < 1 {
			r.Say(path, "enter quantities like 12 24 48")
			return
		}
		s.Ladder = append(s.Ladder, n)
	}
}

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

var levelFields = []leveled{
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
	levelNumber("pricing.tax.percent", "Sales tax", "%", func(p *quote.Pricing) *money.Number { return &p.Tax.Percent }),
	levelNumber("pricing.card.percent", "Card fee", "%", func(p *quote.Pricing) *money.Number { return &p.Card.Percent }),
	levelAmount("pricing.card.fixed", "Card fee, fixed", "", func(p *quote.Pricing) *money.Amount { return &p.Card.Fixed }),
	levelNumber("pricing.card.cap_percent", "passed on at most", "%", func(p *quote.Pricing) *money.Number { return &p.Card.CapPercent }),
}
