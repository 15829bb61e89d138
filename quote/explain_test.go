package quote_test

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote"
	"pressworth/quote/money"
)

func amountOf(t testing.TB, s string) money.Amount {
	t.Helper()
	a, err := money.ParseAmount(s)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// causes are the names of the effects, in order.
func causes(d quote.Difference) (out []string) {
	for _, e := range d.Effects {
		out = append(out, e.Cause)
	}
	return out
}

// explained is why the regatta costs something else after a change.
func explained(t *testing.T, change func(*quote.Job)) quote.Difference {
	t.Helper()
	old, now := readJob(t, "regatta.job.json"), readJob(t, "regatta.job.json")
	change(&now)
	d, err := quote.Explain(old, now)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestExplain_namesTheOneThingThatChanged(t *testing.T) {
	for _, c := range []struct {
		cause  string
		detail string
		change func(*quote.Job)
	}{
		{quote.CauseQuantities, "pieces", func(j *quote.Job) { j.Garments[0].Sizes[0].Qty++ }},
		{quote.CauseWork, "", func(j *quote.Job) { j.Art.Minutes = money.Int(90) }},
		{quote.CauseBlanks, "→ 9.99", func(j *quote.Job) {
			for i := range j.Garments[0].Sizes {
				for k := range j.Garments[0].Sizes[i].Each {
					j.Garments[0].Sizes[i].Each[k].Each = amountOf(t, "9.99")
				}
			}
		}},
		{quote.CauseFreight, "→", func(j *quote.Job) {
			for i := range j.Suppliers {
				j.Suppliers[i].Freight, j.Suppliers[i].FreeFrom = amountOf(t, "31.00"), money.Amount{}
			}
		}},
		{quote.CauseShop, "wage an hour", func(j *quote.Job) { j.Shop.WagePerHour = amountOf(t, "30.00") }},
		{quote.CausePricing, "", func(j *quote.Job) { j.Pricing.DepositPercent, j.Pricing.RushPercent = money.Int(30), money.Int(10) }},
		{quote.CauseMethods, "→", func(j *quote.Job) {
			r, err := quote.Price(*j)
			if err != nil || r.Methods[0].RunnerUp == "" {
				t.Fatalf("the first placement has no runner-up: %v", err)
			}
			j.Placements[0].Method = r.Methods[0].RunnerUp
		}},
	} {
		d := explained(t, c.change)
		if got := causes(d); len(got) != 1 || got[0] != c.cause {
			t.Errorf("causes %v, want %s alone", got, c.cause)
			continue
		}
		if e := d.Effects[0]; e.Total.Cmp(d.Total) != 0 || e.Cost.Cmp(d.Cost) != 0 {
			t.Errorf("%s adds %s to the total and %s to the cost, want all of %s and %s", c.cause, e.Total, e.Cost, d.Total, d.Cost)
		}
		if text := strings.Join(d.Effects[0].Details, "; "); !strings.Contains(text, c.detail) {
			t.Errorf("details of %s: %q, want them to hold %q", c.cause, text, c.detail)
		}
	}
}

func TestExplain_nothingChanged(t *testing.T) {
	if d := explained(t, func(j *quote.Job) { j.Title = "Another name" }); d.Effects != nil || d.Total.Sign() != 0 {
		t.Errorf("effects %v, total %s; want none", causes(d), d.Total)
	}
}

// Dearer transfers on the old card first, then what moving to another card saves: the second never adds to the figure
// that methods are chosen by.
func TestExplain_dearerTransfersThenAnotherMethod(t *testing.T) {
	d := explained(t, func(j *quote.Job) {
		r, err := quote.Price(*j)
		if err != nil {
			t.Fatal(err)
		}
		for i, c := range j.RateCards {
			if c.ID == r.Methods[0].Card {
				j.RateCards[i].SetupPerDesign = amountOf(t, "900.00")
			}
		}
	})
	if got := causes(d); !slices.Equal(got, []string{quote.CauseTransfers, quote.CauseMethods}) {
		t.Fatalf("causes %v, want transfers, then methods", got)
	}
	if d.Effects[0].Cost.Sign() <= 0 || d.Effects[1].Cost.Sign() >= 0 {
		t.Errorf("transfers add %s and methods %s to the cost, want the first dearer and the second cheaper", d.Effects[0].Cost, d.Effects[1].Cost)
	}
}

func TestExplain_aCardThatIsGone(t *testing.T) {
	d := explained(t, func(j *quote.Job) {
		r, err := quote.Price(*j)
		if err != nil {
			t.Fatal(err)
		}
		gone := r.Methods[0].Card
		j.RateCards = slices.DeleteFunc(j.RateCards, func(c quote.RateCard) bool { return c.ID == gone })
	})
	if got := causes(d); !slices.Contains(got, quote.CauseMethods) || slices.Contains(got, quote.CauseTransfers) {
		t.Errorf("causes %v, want methods and not transfers: the prices of what is left are the same", got)
	}
}

func TestExplain_refusesTwoCurrencies(t *testing.T) {
	old, now := readJob(t, "regatta.job.json"), readJob(t, "regatta.job.json")
	now.Currency = "CAD"
	if _, err := quote.Explain(old, now); err == nil || !strings.Contains(err.Error(), "USD and CAD") {
		t.Errorf("error %v, want one that names both currencies", err)
	}
}

func TestExplain_addsUpToTheCent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		old, _ := drawPriced(t)
		now, _ := drawPriced(t)
		now.Currency = old.Currency
		if rapid.Bool().Draw(t, "related") { // a part of the job stays as it was
			now.Garments, now.Placements, now.Extras, now.RateCards, now.Unit = old.Garments, old.Placements, old.Extras, old.RateCards, old.Unit
		}
		if rapid.Bool().Draw(t, "frozen") {
			if f, _, err := quote.Freeze(old); err == nil {
				old = f
			}
		}
		d, err := quote.Explain(old, now)
		if err != nil {
			t.Skip("one of the two cannot be priced")
		}
		a, errA := quote.Price(old)
		b, errB := quote.Price(now)
		if errA != nil || errB != nil {
			t.Fatalf("explained, but not priced: %v, %v", errA, errB)
		}
		var totals, costs []money.Amount
		for _, e := range d.Effects {
			totals, costs = append(totals, e.Total), append(costs, e.Cost)
		}
		sumIs(t, "totals of "+strings.Join(causes(d), ", "), quote.Less(b.Price.Total, a.Price.Total), totals...)
		sumIs(t, "costs of "+strings.Join(causes(d), ", "), quote.Less(b.Cost.Total, a.Cost.Total), costs...)
	})
}
