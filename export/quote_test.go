package export

import (
	"bytes"
	"strings"
	"testing"

	"github.com/pdfcpu/pdfcpu/pkg/api"
	"github.com/pdfcpu/pdfcpu/pkg/pdfcpu/model"

	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/money"
)

// words are the texts of a recorded drawing.
func words(job quote.Job, lay func(*doc)) string {
	var r paper.Record
	draw(&r, job, footText(job, "Quote"), lay)
	var b strings.Builder
	for line := range strings.SplitSeq(r.String(), "\n") {
		if strings.HasPrefix(line, "text ") {
			b.WriteString(line[strings.IndexByte(line, '"'):] + "\n")
		}
	}
	return b.String()
}

func TestQuote_saysWhatTheCustomerPaysAndNothingInternal(t *testing.T) {
	job, result := regatta(t)
	text := words(job, func(d *doc) { layQuote(d, job, result, date) })
	for _, want := range []string{"1,261.38", "630.69", "27.25", "31.00", "12.50", "96.13", "2026-0147", "9 December 2026", "Ines Halvorsen", "DEMO"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not on the quote", want)
		}
	}
	banned := []string{"margin", "overhead", "markup", "supplier", "hour", "labour", "636.85", "42.2", "film by area", "plastisol"}
	for _, s := range job.Suppliers {
		banned = append(banned, s.Name, s.ID)
	}
	for _, c := range job.RateCards {
		banned = append(banned, c.Name)
	}
	for _, word := range banned {
		if strings.Contains(strings.ToLower(text), strings.ToLower(word)) {
			t.Errorf("the customer's quote says %q", word)
		}
	}
}

func TestTicket_saysWhatIsTooLargeForASizeAndTheQuoteDoesNot(t *testing.T) {
	job, _ := regatta(t)
	job.Garments[0].Sizes[0].Size = "YS"
	job.Garments[0].Info.Category = "youth long sleeve"
	number, err := money.ParseNumber("12")
	if err != nil {
		t.Fatal(err)
	}
	job.Placements[0].Width = number
	result := resultOf(t, job)
	const want = "Full back on size YS: 12 in wide is wider than the printable"
	if text := words(job, func(d *doc) { layTicket(d, job, result, Approval{}, date) }); !strings.Contains(text, want) {
		t.Errorf("the ticket does not say %q", want)
	}
	if text := words(job, func(d *doc) { layQuote(d, job, result, date) }); strings.Contains(text, "printable") {
		t.Error("the quote speaks of the printable area")
	}
	smaller, err := money.ParseNumber("8")
	if err != nil {
		t.Fatal(err)
	}
	job.Placements[0].Variants = []quote.Variant{{Sizes: []string{"YS"}, Width: smaller, Height: smaller}}
	if text := strings.Join(tooLarge(job, result), "; "); strings.Contains(text, "YS: 12 in") {
		t.Errorf("with a variant of 8 in for YS it still says %q", text)
	}
}

func TestQuote_longListsBreakOverPagesWithTheirHeads(t *testing.T) {
	job, _ := regatta(t)
	first := job.Garments[0]
	for i := range 60 {
		g := first
		g.ID, g.Color = "line-"+string(rune('a'+i%26))+string(rune('a'+i/26)), strings.Repeat("A very long name of a colour ", 3)
		job.Garments = append(job.Garments, g)
	}
	result := resultOf(t, job)
	var r paper.Record
	draw(&r, job, "", func(d *doc) { layQuote(d, job, result, date) })
	if heads := strings.Count(r.String(), `"amount in USD"`); r.Pages < 3 || heads < 3 {
		t.Errorf("got %d pages and %d heads of the table, want at least 3 of both", r.Pages, heads)
	}
}

// Names in any script come out, and currencies without cents have none.
func TestQuote_anyNameAndACurrencyWithoutCents(t *testing.T) {
	job, _ := regatta(t)
	job.Currency = "JPY"
	job.Paper.Customer = quote.Party{Name: "株式会社 海風 · نادي التجديف · Żółć Łódź", Contact: "שרה לוי"}
	for i := range job.Garments {
		for j := range job.Garments[i].Sizes {
			job.Garments[i].Sizes[j].Each = job.Garments[i].Sizes[j].Each[:1]
		}
	}
	job.Extras, job.Art, job.Pricing.Step = nil, quote.Art{}, job.Pricing.Discount
	result := resultOf(t, job)
	if strings.Contains(result.Price.Total.String(), ".") {
		t.Errorf("a total of %s in a currency without minor unit", result.Price.Total)
	}
	pdf, err := Quote(job, result, date)
	if err != nil {
		t.Fatal(err)
	}
	if err := api.Validate(bytes.NewReader(pdf), model.NewDefaultConfiguration()); err != nil {
		t.Error(err)
	}
}
