package store_test

import (
	"testing"

	"pressworth/catalog"
	"pressworth/quote/money"
)

func TestSave_termsPrintableAndHandlingComeBack(t *testing.T) {
	s := demoStore(t)
	cards, err := s.RateCards(ctx, "")
	if err != nil {
		t.Fatal(err)
	}
	card := cards[0]
	card.Terms = catalog.Terms{ProductionDays: 3, Rush: []catalog.Rush{{Days: 1, Percent: number(t, "40")}}}
	if _, err := s.SaveRateCard(ctx, card); err != nil {
		t.Fatal(err)
	}
	if cards, err = s.RateCards(ctx, ""); err != nil || asJSON(t, cards[0].Terms) != asJSON(t, card.Terms) {
		t.Errorf("terms of a card: got %+v, %v, want %+v", cards[0].Terms, err, card.Terms)
	}
	x := styleOf(t, s, "CP-11")
	x.Printable = []catalog.Printable{{Size: "OS", Width: number(t, "4.5"), Height: number(t, "2.25")}}
	if x, err = s.SaveStyle(ctx, x, ""); err != nil || len(x.Printable) != 1 || x.Printable[0].Width.String() != "4.5" {
		t.Errorf("printable area: got %+v, %v", x.Printable, err)
	}
	suppliers, err := s.Suppliers(ctx)
	if err != nil {
		t.Fatal(err)
	}
	suppliers[0].MinimumOrder = money.FromMinor(5000, 2)
	if _, err := s.SaveSupplier(ctx, suppliers[0]); err != nil {
		t.Fatal(err)
	}
	if suppliers, err = s.Suppliers(ctx); err != nil || suppliers[0].MinimumOrder.String() != "50.00" {
		t.Errorf("least order: got %v, %v, want 50.00", suppliers[0].MinimumOrder, err)
	}
}

// Seconds of handling: the style's own, else its category's, else the shop's.
func TestFreeze_handlingByCategory(t *testing.T) {
	s := demoStore(t)
	shop, err := s.Shop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	shop.Handling = map[string]money.Number{"long sleeve": money.Int(33), "cap": money.Int(99)}
	if err := s.SaveShop(ctx, shop); err != nil {
		t.Fatal(err)
	}
	rows, err := s.Quotes(ctx, quotesOf("regatta"))
	if err != nil || len(rows) != 1 {
		t.Fatal(rows, err)
	}
	d, err := s.Draft(ctx, rows[0].ID)
	if err != nil {
		t.Fatal(err)
	}
	b, err := s.Book(ctx, d, day)
	if err != nil {
		t.Fatal(err)
	}
	job, problems := catalog.Freeze(d, b, day)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if got := job.Garments[0].Handling; got == nil || got.String() != "33" {
		t.Errorf("long sleeve: got %v, want its category's 33", got)
	}
	if got := job.Garments[2].Handling; got == nil || got.String() != "45" {
		t.Errorf("cap: got %v, want the style's own 45", got)
	}
}

func TestList_wordsWithAFilter(t *testing.T) {
	s := demoStore(t)
	l, err := s.List(ctx, catalog.StyleFilter{Words: "performance", Category: "polo"})
	if err != nil {
		t.Fatal(err)
	}
	rows, err := l.Rows(ctx, 0, 100)
	if err != nil || len(rows) != 7 || rows[0].Number != "1530" {
		t.Errorf("got %d rows, %+v, %v; want the seven colours of 1530", len(rows), rows, err)
	}
	if l, err = s.List(ctx, catalog.StyleFilter{Words: "nothingsuch"}); err != nil || l.Len() != 0 {
		t.Errorf("a word that is nowhere: got %d rows, %v", l.Len(), err)
	}
}
