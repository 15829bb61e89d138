package main

import (
	"testing"

	"pressworth/assets"
	"pressworth/catalog"
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
