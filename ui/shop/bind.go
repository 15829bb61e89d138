package shop

import (
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote/money"
	"pressworth/ui/form"
)

// record is all that the page edits.
type record struct {
	catalog.Shop
	catalog.Settings
}

// bound is one field of the page: where it stands in the record, and how it is written and read.
type bound struct {
	path, caption, unit string
	write               func(s *record) string
	read                func(r *form.Reader, path string, s *record)
	words               bool // not a number
}

func amount(path, caption, unit string, at func(*record) *money.Amount) bound {
	return bound{
		path, caption, unit,
		func(s *record) string { return nonzero(at(s).Sign(), at(s).String()) },
		func(r *form.Reader, path string, s *record) { *at(s) = r.Amount(path) }, false,
	}
}

func number(path, caption, unit string, at func(*record) *money.Number) bound {
	return bound{
		path, caption, unit,
		func(s *record) string { return nonzero(at(s).Sign(), at(s).String()) },
		func(r *form.Reader, path string, s *record) { *at(s) = r.Number(path) }, false,
	}
}

func count(path, caption, unit string, at func(*record) *int) bound {
	return bound{
		path, caption, unit,
		func(s *record) string { return nonzero(*at(s), strconv.Itoa(*at(s))) },
		func(r *form.Reader, path string, s *record) { *at(s) = r.Count(path) }, false,
	}
}

func words(path, caption string, at func(*record) *string) bound {
	return bound{
		path, caption, "",
		func(s *record) string { return strings.ReplaceAll(*at(s), "\n", "; ") },
		func(r *form.Reader, path string, s *record) {
			*at(s) = strings.ReplaceAll(strings.ReplaceAll(r.Text(path), "; ", "\n"), ";", "\n")
		}, true,
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
	words("paper.shop.name", "Name", func(s *record) *string { return &s.Letterhead.Name }),
	words("paper.shop.contact", "Contact", func(s *record) *string { return &s.Letterhead.Contact }),
	words("paper.shop.email", "E-mail", func(s *record) *string { return &s.Letterhead.Email }),
	words("paper.shop.phone", "Telephone", func(s *record) *string { return &s.Letterhead.Phone }),
	words("paper.shop.address", "Address, lines divided by ;", func(s *record) *string { return &s.Letterhead.Address }),
	words("paper.shop.website", "Website", func(s *record) *string { return &s.Letterhead.Website }),
}

var timeFields = []bound{
	amount("shop.wage_per_hour", "Wage", "an hour", func(s *record) *money.Amount { return &s.Rates.WagePerHour }),
	number("shop.burden_percent", "Burden", "%", func(s *record) *money.Number { return &s.Rates.BurdenPercent }),
	number("shop.allowance_percent", "Allowance", "%", func(s *record) *money.Number { return &s.Rates.AllowancePercent }),
	number("shop.job_setup_min", "Set-up a job", "min", func(s *record) *money.Number { return &s.Rates.JobSetupMin }),
	number("shop.design_setup_min", "Set-up a design", "min", func(s *record) *money.Number { return &s.Rates.DesignSetupMin }),
	number("shop.changeover_min", "Changeover", "min", func(s *record) *money.Number { return &s.Rates.ChangeoverMin }),
	number("shop.handling_s", "Handling a piece", "s", func(s *record) *money.Number { return &s.Rates.Handling }),
	amount("art.per_hour", "Art time", "an hour", func(s *record) *money.Amount { return &s.ArtPerHour }),
}

var overheadFields = []bound{
	amount("shop.overhead_per_month", "Overhead", "a month", func(s *record) *money.Amount { return &s.Rates.OverheadPerMonth }),
	number("shop.productive_hours_per_month", "Pressing hours", "a month", func(s *record) *money.Number { return &s.Rates.ProductiveHoursPerMonth }),
	amount("shop.hit_cost", "Wear", "a hit", func(s *record) *money.Amount { return &s.Rates.HitCost }),
	number("shop.power.watts", "Press draws", "W", func(s *record) *money.Number { return &s.Rates.Power.Watts }),
	number("shop.power.duty_percent", "Heating", "% of the time", func(s *record) *money.Number { return &s.Rates.Power.DutyPercent }),
	amount("shop.power.per_kwh", "Power", "a kWh", func(s *record) *money.Amount { return &s.Rates.Power.PerKWh }),
}

var spareFields = []bound{
	number("shop.spares.garment_percent", "Spare garments", "%", func(s *record) *money.Number { return &s.Rates.Spares.GarmentPercent }),
	count("shop.spares.garment_at_least", "at least", "", func(s *record) *int { return &s.Rates.Spares.GarmentAtLeast }),
	count("shop.spares.garment_from", "from pieces", "", func(s *record) *int { return &s.Rates.Spares.GarmentFrom }),
	number("shop.spares.transfer_percent", "Spare transfers", "%", func(s *record) *money.Number { return &s.Rates.Spares.TransferPercent }),
	count("shop.spares.transfer_at_least", "at least", "", func(s *record) *int { return &s.Rates.Spares.TransferAtLeast }),
	count("shop.spares.transfer_from", "from pieces", "", func(s *record) *int { return &s.Rates.Spares.TransferFrom }),
}

var quoteFields = []bound{
	{"ladder", "Ladder, quantities", "", func(s *record) string { return joinInts(s.Ladder) }, readLadder, true},
	count("valid_days", "Quotes hold", "days", func(s *record) *int { return &s.ValidDays }),
	count("stale_days", "Prices go stale", "days", func(s *record) *int { return &s.StaleDays }),
	words("terms", "Terms printed on the quote", func(s *record) *string { return &s.Terms }),
}

func joinInts(n []int) string {
	texts := make([]string, len(n))
	for i, x := range n {
		texts[i] = strconv.Itoa(x)
	}
	return strings.Join(texts, " ")
}

func readLadder(r *form.Reader, path string, s *record) {
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
