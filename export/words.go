package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/quote"
	"pressworth/quote/money"
)

// grouped writes an amount with commas between thousands: 1,261.38.
func grouped(a fmt.Stringer) string {
	s := a.String()
	sign := ""
	if strings.HasPrefix(s, "-") {
		sign, s = "−", s[1:]
	}
	whole, cents, point := strings.Cut(s, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + "," + whole[i:]
	}
	if point {
		whole += "." + cents
	}
	return sign + whole
}

func zero(a money.Amount) bool { return a.Sign() == 0 }

// day writes a date in words: 9 December 2026. Empty stays empty, what is no date stays as it is.
func day(date string) string {
	t, err := time.Parse(time.DateOnly, date)
	if err != nil {
		return date
	}
	return t.Format("2 January 2006")
}

// inches writes a size with its unit: 11 × 8.5 in.
func inches(job quote.Job, w, h fmt.Stringer) string {
	unit := job.Unit
	if unit == "" {
		unit = "in"
	}
	return fmt.Sprintf("%s × %s %s", w, h, unit)
}

// inkWords is what a placement is printed in.
func inkWords(p quote.Placement) string {
	switch {
	case p.FullColor:
		return "full colour"
	case len(p.Inks) > 0:
		return strings.Join(p.Inks, ", ")
	case p.InkCount == 1:
		return "one ink"
	}
	return fmt.Sprintf("%d inks", p.InkCount)
}

// lower begins a name with a small letter, but for codes like LS-240.
func lower(s string) string {
	r := []rune(s)
	if len(r) < 2 || strings.ToUpper(string(r[:2])) == string(r[:2]) {
		return s
	}
	return strings.ToLower(string(r[:1])) + string(r[1:])
}

// garmentOf is a garment line of the job by its id.
func garmentOf(job quote.Job, id string) quote.Garment {
	if i := slices.IndexFunc(job.Garments, func(g quote.Garment) bool { return g.ID == id }); i >= 0 {
		return job.Garments[i]
	}
	return quote.Garment{ID: id, Name: id}
}

func placementOf(job quote.Job, id string) quote.Placement {
	if i := slices.IndexFunc(job.Placements, func(p quote.Placement) bool { return p.ID == id }); i >= 0 {
		return job.Placements[i]
	}
	return quote.Placement{ID: id, Name: id}
}

// cardOf is a rate card of the job, called by its id where it has no name.
func cardOf(job quote.Job, id string) quote.RateCard {
	card := quote.RateCard{ID: id}
	if i := slices.IndexFunc(job.RateCards, func(c quote.RateCard) bool { return c.ID == id }); i >= 0 {
		card = job.RateCards[i]
	}
	if card.Name == "" {
		card.Name = id
	}
	return card
}

func supplierName(job quote.Job, id string) string {
	if i := slices.IndexFunc(job.Suppliers, func(s quote.Supplier) bool { return s.ID == id }); i >= 0 && job.Suppliers[i].Name != "" {
		return job.Suppliers[i].Name
	}
	return id
}

// named is a garment with its colour: Long-sleeve tee, navy.
func named(g quote.Garment) string {
	name := g.Name
	if name == "" {
		name = g.Style
	}
	if g.Color == "" {
		return name
	}
	return name + ", " + lower(g.Color)
}

// percent writes a percentage with its sign.
func percent(s fmt.Stringer) string { return s.String() + " %" }

// plural counts things: 1 piece, 2 pieces.
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// orNone keeps a paper's data where there is none.
func paperOf(job quote.Job) quote.Paper {
	if job.Paper == nil {
		return quote.Paper{}
	}
	return *job.Paper
}
