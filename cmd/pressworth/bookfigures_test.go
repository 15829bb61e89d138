package main

import (
	"path/filepath"
	"testing"
	"time"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/quote/money"
)

func TestTableOf_runsNothingInASpreadsheet(t *testing.T) {
	data, err := tableOf([][]string{{"name", "sold"}, {"=1+1", "-50.00"}, {`Ada "Pins", Ltd`, "@x"}})
	if err != nil {
		t.Fatal(err)
	}
	want := "name,sold\r\n'=1+1,-50.00\r\n\"Ada \"\"Pins\"\", Ltd\",'@x\r\n"
	if string(data) != want {
		t.Errorf("got %q, want %q", data, want)
	}
}

// The causes that the window shows add up to the difference of the totals.
func TestExplain_inTheWindowsWords(t *testing.T) {
	d, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, "2026-05-04")
	if err != nil {
		t.Fatal(err)
	}
	b := catalog.Book{Shop: d.Shop, Suppliers: d.Suppliers, Cards: d.Cards, Styles: map[int64]catalog.Style{}}
	for _, s := range d.Styles {
		b.Styles[s.ID] = s
	}
	then, problems := catalog.Freeze(d.Drafts[0], b, "2026-05-04")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	wage, err := money.ParseAmount("26.00")
	if err != nil {
		t.Fatal(err)
	}
	b.Shop.Rates.WagePerHour = wage
	now, _ := catalog.Freeze(d.Drafts[0], b, "2026-05-04")
	causes, err := explain(then, now)
	if err != nil || len(causes) != 1 || causes[0].Name != "Shop rates" || causes[0].Why == "" {
		t.Fatalf("causes %+v, %v; want the shop's rates alone, with what changed", causes, err)
	}
	x, errX := quote.Price(then)
	y, errY := quote.Price(now)
	if errX != nil || errY != nil {
		t.Fatal(errX, errY)
	}
	if want := "+" + quote.Less(y.Price.Total, x.Price.Total).String(); causes[0].Amount != want {
		t.Errorf("amount %s, want %s", causes[0].Amount, want)
	}
}

// A quote of the demo shop from sending to finishing, as week, reports and learning see it.
func TestFigures_followAQuoteToItsEnd(t *testing.T) {
	ctx := t.Context()
	shop := draftsOnly(t)
	desk := bookDesk{shop}
	f := bookFigures{desk, bookPapers{desk: desk}}
	do := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	_, err := desk.Send(ctx, 1, "PDF")
	do(err)
	h, err := desk.Quote(ctx, 1)
	do(err)
	today := time.Now().Format(time.DateOnly)
	do(desk.Accept(ctx, 1, h.Revisions[0].ID, today, ""))
	times, err := f.Times(ctx)
	do(err)
	if len(times.Booked) != 1 || times.Booked[0].QuoteID != 1 || times.Booked[0].Hours.Sign() <= 0 {
		t.Errorf("promised %+v, want the accepted quote with its hours", times.Booked)
	}
	do(desk.Finish(ctx, 1, catalog.Actuals{SetUpMinutes: money.Int(45), PressingMinutes: money.Int(150), Spoiled: 2, On: today}))
	left, err := f.WorkOut(ctx, 100)
	do(err)
	all, err := f.Figured(ctx, today, today)
	do(err)
	sales, done := catalog.Sales(all), catalog.FinishedJobs(all)
	if left != 0 {
		t.Errorf("%d quotes are left to be worked out", left)
	}
	if len(sales) != 1 || !sales[0].Won || sales[0].Subtotal.Sign() <= 0 || len(sales[0].Lines) == 0 || sales[0].Lines[0].Methods == "" || sales[0].Lines[0].Category == "" {
		t.Errorf("sales %+v, want the quote won, its garment lines with methods and categories", sales)
	}
	if len(done) != 1 || done[0].Pressing != 150 || done[0].Spoiled != 2 || done[0].PlannedPressing <= 0 || done[0].Outturn.Left.Cmp(done[0].Outturn.Planned) >= 0 {
		t.Errorf("done %+v, want the plan beside what it took, and less left than planned", done)
	}
	do(f.TakeOver(ctx, "handling_s", money.Int(37)))
	rates, err := f.Rates(ctx)
	do(err)
	if rates.Handling.String() != "37" {
		t.Errorf("handling is %s s, want the 37 taken over", rates.Handling)
	}
	if err := f.TakeOver(ctx, "wage_per_hour", money.Int(1)); err == nil {
		t.Error("a rate that is never suggested was taken over")
	}
}

// draftsOnly is the demo shop with the quotes it begins with, which nothing has happened to.
func draftsOnly(t *testing.T) *store.Store {
	t.Helper()
	shop, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "demo.db"), store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := shop.Close(); err != nil {
			t.Error(err)
		}
	})
	if _, err := seedDrafts(t.Context(), shop, time.Now().Format(time.DateOnly)); err != nil {
		t.Fatal(err)
	}
	return shop
}
