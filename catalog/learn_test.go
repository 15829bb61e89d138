package catalog_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
)

// The quartiles of 1 to 4 by type 7 are 1.75, 2.5 and 3.25, those of 1 to 9 are 3, 5 and 7: from memory, as statistics
// programs print them by default.
func TestQuartiles_quartilesOfTypeSeven(t *testing.T) {
	for _, c := range []struct {
		figures []float64
		want    catalog.Quartiles
	}{
		{[]float64{4, 1, 3, 2}, catalog.Quartiles{Count: 4, Lower: 1.75, Median: 2.5, Upper: 3.25}},
		{[]float64{1, 2, 3, 4, 5, 6, 7, 8, 9}, catalog.Quartiles{Count: 9, Lower: 3, Median: 5, Upper: 7}},
		{[]float64{7}, catalog.Quartiles{Count: 1, Lower: 7, Median: 7, Upper: 7}},
		{nil, catalog.Quartiles{}},
	} {
		if got := catalog.QuartilesOf(c.figures); got != c.want {
			t.Errorf("spread of %v: %+v, want %+v", c.figures, got, c.want)
		}
	}
}

func TestQuartiles_keepsItsOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		figures := rapid.SliceOfN(rapid.Float64Range(-1e6, 1e6), 1, 50).Draw(t, "figures")
		s := catalog.QuartilesOf(figures)
		below, above := 0, 0
		for _, f := range figures {
			if f < s.Median {
				below++
			}
			if f > s.Median {
				above++
			}
		}
		if s.Lower > s.Median || s.Median > s.Upper || 2*below > len(figures) || 2*above > len(figures) {
			t.Fatalf("spread %+v of %v: %d below the middle, %d above", s, figures, below, above)
		}
	})
}

func rates(t *testing.T) quote.Shop {
	t.Helper()
	number := func(s string) money.Number {
		n, err := money.ParseNumber(s)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	return quote.Shop{Handling: number("30"), AllowancePercent: number("12"), Spares: quote.Spares{GarmentPercent: number("2")}}
}

// jobs are so many finished jobs of 100 pieces, planned at 20 and 112 minutes, each with its own pressing.
func jobs(pressing ...float64) (out []catalog.Done) {
	for _, p := range pressing {
		out = append(out, catalog.Done{
			Number: "2026-0001", Pieces: 100, Pressed: 100, PlannedSetUp: 20, PlannedPressing: 112, SetUp: 20, Pressing: p, Handling: 30, Allowance: 12, Spoiled: 3,
		})
	}
	return out
}

func TestLearn_saysByHowMuchJobsTookLonger(t *testing.T) {
	l := catalog.Learn(jobs(112, 125.2, 138.4, 151.6, 164.8), rates(t)) // 0, 10, 20, 30, 40 % over 132 minutes
	if want := "5 jobs took 20 % longer than planned; half of them between 10 % longer and 30 % longer."; l.Sentence != want {
		t.Errorf("sentence %q, want %q", l.Sentence, want)
	}
	// 1.12 × 1.2 = 1.344: 34 %. Pressing 26.4 minutes over 100 pieces is 15.84 s, 14.14 s without the allowance: 44 s.
	// 3 % were spoiled in every job.
	for i, want := range []string{"34", "44", "3"} {
		s := l.Suggestions[i]
		if s.Suggest.String() != want || !s.Offered || s.Sentence == "" {
			t.Errorf("%s: suggests %s (offered %v, %q), want %s", s.Path, s.Suggest, s.Offered, s.Sentence, want)
		}
	}
	if got := l.Suggestions[2].Sentence; got != "Of 500 pieces 15 were spoiled, 3.0 %; 3.0 % would have covered three jobs of four." {
		t.Errorf("spares: %q", got)
	}
}

func TestLearn_offersNothingOnFewJobsOrNone(t *testing.T) {
	for _, finished := range [][]catalog.Done{nil, jobs(200), jobs(200, 210, 220, 230), {{Pieces: 0}, {}, {}, {}, {}, {}}} {
		for _, s := range catalog.Learn(finished, rates(t)).Suggestions {
			if s.Offered {
				t.Errorf("%d jobs: %s offers %s, want nothing offered", len(finished), s.Path, s.Suggest)
			}
		}
	}
	for _, s := range catalog.Learn(jobs(200, 210), rates(t)).Suggestions[1:] {
		if !strings.HasSuffix(s.Sentence, "; a suggestion takes 5 jobs.") {
			t.Errorf("%s on two jobs: %q, want it said how many it takes", s.Path, s.Sentence)
		}
	}
	if got := catalog.Learn(nil, rates(t)).Sentence; got != "No finished job has its minutes yet." {
		t.Errorf("without jobs: %q", got)
	}
}

// Taken over, the suggested allowance makes the middle job take as long as planned.
func TestLearn_theSuggestedAllowanceFitsTheMiddleJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		finished := jobs(rapid.SliceOfN(rapid.Float64Range(60, 400), 5, 5).Draw(t, "pressing")...)
		s := catalog.Learn(finished, quote.Shop{}).Suggestions[0]
		bare := 132 / 1.12
		var took []float64
		for _, d := range finished {
			took = append(took, d.SetUp+d.Pressing)
		}
		suggested, _ := s.Suggest.Rat().Float64()
		middle := catalog.QuartilesOf(took).Median
		if planned := bare * (1 + suggested/100); suggested > 0 && math.Abs(planned-middle) > 0.006*bare {
			t.Fatalf("with %v %% the plan is %.1f minutes, the middle job took %.1f", suggested, planned, middle)
		}
	})
}

func TestLearn_saysWhichJobsLostMoneyAndWhy(t *testing.T) {
	amount := func(s string) money.Amount {
		a, err := money.ParseAmount(s)
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	done := jobs(250, 112)
	done[0].Outturn = quote.Outturn{Planned: amount("40.00"), Left: amount("-60.00"), Time: amount("80.00"), Suppliers: []quote.Charged{
		{Supplier: "northgate", Planned: amount("100.00"), Amount: amount("120.00"), More: amount("20.00")},
	}}
	done[1].Outturn = quote.Outturn{Planned: amount("40.00"), Left: amount("40.00")}
	l := catalog.Learn(done, rates(t)).Lost
	if len(l) != 1 || l[0].Left.String() != "-60.00" {
		t.Fatalf("lost %+v, want the one job that left −60.00", l)
	}
	if want := "270 minutes instead of 132: 80.00; northgate charged 120.00 instead of 100.00; 3 pieces spoiled"; strings.Join(l[0].Why, "; ") != want {
		t.Errorf("why: %v, want %s", l[0].Why, want)
	}
}

func TestDone_ofTheDemo(t *testing.T) {
	d, b := demo(t)
	job := frozen(t, d.Drafts[0], b)
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	x := catalog.DoneOf(catalog.QuoteRow{Number: "2026-0001"}, job, r, catalog.Actuals{
		SetUpMinutes: money.Int(40), PressingMinutes: money.Int(120), Spoiled: 1, Invoices: []catalog.Invoice{{Supplier: "northgate", Amount: quote.BoughtFrom(r, "northgate")}},
	})
	if x.Pieces != 46 || x.Pressed < 46 || x.PlannedSetUp <= 0 || math.Abs(x.PlannedSetUp+x.PlannedPressing-2.25*60) > 0.4 {
		t.Errorf("got %+v, want 46 pieces and 2.25 hours planned, set-up among them", x)
	}
	if x.Outturn.Time.Sign() <= 0 || len(x.Outturn.Suppliers) != 1 || x.Outturn.Suppliers[0].More.Sign() != 0 {
		t.Errorf("outturn %+v, want 25 minutes more to cost something, and the invoice as planned", x.Outturn)
	}
}

func TestReports_addUp(t *testing.T) {
	d, b := demo(t)
	var sales []catalog.Sale
	for i, day := range []string{"2026-05-20", "2026-07-02", "2026-07-30"} {
		job := frozen(t, d.Drafts[i], b)
		r, err := quote.Price(job)
		if err != nil {
			t.Fatal(err)
		}
		state := catalog.Finished
		if i == 1 {
			state = catalog.Declined
		}
		sales = append(sales, catalog.SaleOf(catalog.Outcome{QuoteRow: catalog.QuoteRow{State: state, Customer: d.Drafts[i].Customer.Name}, Decided: day}, job, r))
	}
	months := catalog.ByMonth(sales)
	if len(months) != 3 || months[1] != (catalog.MonthRow{Month: "2026-06"}) || months[0].Won != 1 || months[2].Won != 1 || months[2].Lost != 1 {
		t.Errorf("months %+v, want May, an empty June, and July with one won and one lost", months)
	}
	for by, names := range map[string]int{catalog.ByMethod: 0, catalog.ByCategory: 3, catalog.ByCustomer: 2} {
		rows := catalog.Margins(sales, by)
		var sold, goods []money.Amount
		for _, r := range rows {
			sold = append(sold, r.Sold)
			if r.Margin == "" || r.Jobs == 0 || r.Pieces == 0 {
				t.Errorf("by %s: row %+v, want its margin, jobs and pieces", by, r)
			}
		}
		for _, s := range []catalog.Sale{sales[0], sales[2]} {
			if by == catalog.ByCustomer {
				goods = append(goods, s.Subtotal)
				continue
			}
			for _, l := range s.Lines {
				goods = append(goods, l.Goods)
			}
		}
		if quote.Sum(sold...).Cmp(quote.Sum(goods...)) != 0 || names > 0 && len(rows) != names {
			t.Errorf("by %s: %d rows of %s, want %d of %s: what was won and nothing else", by, len(rows), quote.Sum(sold...), names, quote.Sum(goods...))
		}
	}
}
