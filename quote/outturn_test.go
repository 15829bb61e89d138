package quote_test

import (
	"testing"

	"pressworth/quote"
	"pressworth/quote/money"
)

// The worked example has 2.25 hours, 44.88 of labour and 49.69 of overhead, so an hour costs 42.03 (94.57 / 2.25).
func TestOutturned_timeAndInvoicesTakeFromWhatIsLeft(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	hours, err := money.ParseNumber(r.Hours)
	if err != nil {
		t.Fatal(err)
	}
	planned, _ := money.ParseNumber(hours.Rat().Mul(hours.Rat(), money.Int(60).Rat()).FloatString(2))
	bought := quote.BoughtFrom(r, "northgate")
	as := quote.Outturned(job, r, quote.Took{Minutes: planned, Invoices: map[string]money.Amount{"northgate": bought}})
	if as.Left.Cmp(as.Planned) != 0 || as.Time.Sign() != 0 || as.Suppliers[0].More.Sign() != 0 {
		t.Errorf("took what was planned: left %s of %s, time %s, more charged %s; want no difference", as.Left, as.Planned, as.Time, as.Suppliers[0].More)
	}
	more, _ := money.ParseNumber("195")
	worse := quote.Outturned(job, r, quote.Took{Minutes: more, Invoices: map[string]money.Amount{"northgate": quote.Sum(bought, amountOf(t, "20.00"))}})
	if got := quote.Sum(worse.Left, worse.Time, amountOf(t, "20.00")); got.Cmp(worse.Planned) != 0 || worse.Time.Sign() <= 0 {
		t.Errorf("left %s + time %s + 20.00 charged more = %s, want the %s planned", worse.Left, worse.Time, got, worse.Planned)
	}
}

func TestMarginOf_roundsToATenth(t *testing.T) {
	for _, c := range []struct{ sold, cost, want string }{
		{"100.00", "57.80", "42.2"}, {"100.00", "57.75", "42.3"}, {"0.00", "5.00", ""}, {"50.00", "75.00", "-50.0"},
	} {
		if got := quote.MarginOf(amountOf(t, c.sold), amountOf(t, c.cost)); got != c.want {
			t.Errorf("margin of %s over %s: %q, want %q", c.sold, c.cost, got, c.want)
		}
	}
}

// 15 minutes for the job, 2 for each of three pressed placements, 8 for changing between the two cards, 12 % on all of
// it, as the example's shop has them.
func TestSetUpMinutes_ofTheWorkedExample(t *testing.T) {
	job := readJob(t, "regatta.job.json")
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	s := job.Shop
	want := money.Int(0).Rat()
	for _, x := range []money.Number{s.JobSetupMin, s.DesignSetupMin, s.DesignSetupMin, s.DesignSetupMin, s.ChangeoverMin} {
		want.Add(want, x.Rat())
	}
	for _, m := range r.Methods {
		for _, c := range job.RateCards {
			if c.ID == m.Card {
				want.Add(want, c.Press.PrepMin.Rat())
			}
		}
	}
	hundred := money.Int(100).Rat()
	want.Mul(want, hundred.Add(hundred, s.AllowancePercent.Rat())).Quo(want, money.Int(100).Rat())
	if got := quote.SetUpMinutes(job, r); got.Cmp(want) != 0 {
		t.Errorf("set-up takes %s minutes, want %s", got.FloatString(2), want.FloatString(2))
	}
}
