package quote_test

import (
	"fmt"
	"testing"

	"pressworth/quote"
	"pressworth/quote/money"
)

// The jobs by which figures from outside are put to the engine: pieces of one blank, with nothing else that costs.

func usd(s string) money.Amount {
	a, err := money.ParseAmount(s)
	if err != nil {
		panic(err)
	}
	return a
}

func num(s string) money.Number { return money.Number(usd(s)) }

// pieces is a job of n pieces that cost each; an exact price is asked, to the next cent.
func pieces(n int, each string, edits ...func(*quote.Job)) quote.Job {
	job := quote.Job{Currency: "USD", Suppliers: []quote.Supplier{{ID: "s", Name: "Supplier"}}}
	job.Garments = []quote.Garment{{
		ID: "g", Supplier: "s", Style: "A", Name: "Garment", Color: "Navy", Shade: "dark",
		Sizes: []quote.Size{{Size: "M", Qty: n, Each: []quote.Break{{From: 1, Each: usd(each)}}}},
	}}
	job.Pricing = quote.Pricing{Basis: "markup", Sizes: "spread"}
	for _, e := range edits {
		e(&job)
	}
	return job
}

func priced(t *testing.T, job quote.Job) quote.Result {
	t.Helper()
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func typed(price string) func(*quote.Job) {
	return func(j *quote.Job) { p := usd(price); j.Garments[0].Price = &p }
}

// fixed adds a cost once an order.
func fixed(cost string) func(*quote.Job) {
	return func(j *quote.Job) {
		j.Extras = append(j.Extras, quote.Extra{ID: fmt.Sprint("fixed", len(j.Extras)), Name: "Once", PerOrder: true, Cost: usd(cost)})
	}
}

func basis(name, percent string) func(*quote.Job) {
	return func(j *quote.Job) { j.Pricing.Basis, j.Pricing.Percent = name, num(percent) }
}

// profit is what is left of the subtotal, in cents.
func profit(t *testing.T, job quote.Job) int64 {
	t.Helper()
	r := priced(t, job)
	take, _ := r.Price.Subtotal.Minor(2)
	cost, _ := r.Cost.Total.Minor(2)
	return take - cost
}

func costLine(r quote.Result, kind string) string {
	for _, l := range r.Cost.Lines {
		if l.Kind == kind {
			return l.Amount.String()
		}
	}
	return "none"
}

func same(t *testing.T, what, got, want string) {
	t.Helper()
	if got != want {
		t.Errorf("%s: got %s, want %s", what, got, want)
	}
}

// card adds a placement on everything that is made on a card.
func card(c quote.RateCard) func(*quote.Job) {
	return func(j *quote.Job) {
		c.Supplier, c.Name = "s", c.ID
		j.RateCards = append(j.RateCards, c)
		if len(j.Placements) == 0 {
			j.Placements = []quote.Placement{{ID: "p", Name: "Front", Width: num("4"), Height: num("4"), InkCount: 1}}
		}
	}
}
