package store_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
)

// asJSON writes a value so that equal decimals are equal; an empty list is none.
func asJSON(t *testing.T, v any) string {
	t.Helper()
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return strings.NewReplacer("[]", "null", "{}", "null").Replace(string(b))
}

func TestSeed_everythingComesBack(t *testing.T) {
	want, s := demo(t), demoStore(t)
	shop, err := s.Shop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	if asJSON(t, shop) != asJSON(t, want.Shop) {
		t.Errorf("shop: got %+v\nwant %+v", shop, want.Shop)
	}
	suppliers, err := s.Suppliers(ctx)
	if err != nil || asJSON(t, suppliers) != asJSON(t, want.Suppliers) {
		t.Errorf("suppliers: got %+v, %v\nwant %+v", suppliers, err, want.Suppliers)
	}
	cards, err := s.RateCards(ctx, day)
	if err != nil || len(cards) != len(want.Cards) {
		t.Fatalf("rate cards: got %d, %v, want %d", len(cards), err, len(want.Cards))
	}
	for _, x := range want.Styles {
		got, err := s.Style(ctx, x.ID)
		if err != nil {
			t.Fatal(err)
		}
		for i := range got.Sizes {
			for k := range got.Sizes[i].Each {
				if got.Sizes[i].Each[k].Info.PricedOn != x.PricedOn || got.Sizes[i].Each[k].Info.EntryID == "" {
					t.Errorf("style %s: a price without its entry: %+v", x.Number, got.Sizes[i])
				}
				got.Sizes[i].Each[k].Info = quote.Info{}
			}
		}
		if asJSON(t, got) != asJSON(t, x) {
			t.Errorf("style %s: got %+v\nwant %+v", x.Number, got, x)
		}
	}
}

func TestSaveDraft_numbersByYearAndComesBack(t *testing.T) {
	s := demoStore(t)
	shop, err := s.Shop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	d := catalog.NewDraft(shop)
	d.Title, d.Customer.Name, d.QuotedOn = "Two shirts", "Ada Q. Müller", day
	d.Garments = []catalog.DraftGarment{{Key: "a", StyleID: 1, Color: "Navy", Sizes: []catalog.DraftSize{{Size: "M", Qty: "2"}, {Size: "L", Qty: "x"}}}}
	saved, err := s.SaveDraft(ctx, d, nil)
	if err != nil {
		t.Fatal(err)
	}
	if saved.Number != "2026-0004" {
		t.Errorf("number after the demo's three: got %s, want 2026-0004", saved.Number)
	}
	back, err := s.Draft(ctx, saved.ID)
	if err != nil || !reflect.DeepEqual(back, saved) {
		t.Errorf("got %+v, %v\nwant %+v", back, err, saved)
	}
	saved.Title = "Three shirts"
	again, err := s.SaveDraft(ctx, saved, nil)
	if err != nil || again.Number != saved.Number || again.ID != saved.ID || again.Customer.ID != saved.Customer.ID {
		t.Errorf("saved again: got %+v, %v, want the same number, id and customer", again, err)
	}
}

func TestSaveDraft_isFoundByItsWords(t *testing.T) {
	s := demoStore(t)
	d := catalog.Draft{Title: "Three shirts", Customer: catalog.DraftCustomer{Name: "Ada Q. Müller"}}
	d.Garments = []catalog.DraftGarment{{Key: "a", StyleID: 1, Color: "Navy", Sizes: []catalog.DraftSize{{Size: "M", Qty: "2"}, {Size: "L", Qty: "x"}}}}
	if _, err := s.SaveDraft(ctx, d, nil); err != nil {
		t.Fatal(err)
	}
	found, err := s.FindCustomers(ctx, "mull", 5)
	if err != nil || len(found) != 1 || found[0].Name != "Ada Q. Müller" {
		t.Errorf("customer by the beginning of a word without its dots: got %v, %v", found, err)
	}
	quotes, err := s.Quotes(ctx, store.QuoteFilter{Words: "three ada"})
	if err != nil || len(quotes) != 1 || quotes[0].Pieces != 2 || quotes[0].State != "draft" {
		t.Errorf("quotes by title and customer: got %+v, %v", quotes, err)
	}
	if _, err := s.Draft(ctx, 999); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("a quote that is not there: got %v, want %v", err, store.ErrNotFound)
	}
}

func TestFindBlanks_orderAndColours(t *testing.T) {
	s := demoStore(t)
	cases := []struct {
		words, first, color string
	}{
		{"ls-240", "LS-240", ""},
		{"ls240", "LS-240", ""},
		{"LS-240 nav", "LS-240", "Navy"},
		{"long sl", "LS-240", ""}, // my usual before the others
		{"hood", "HD-500", ""},
		{"pique", "PL-700", ""}, // without its accent
		{"quarry mesh", "CP-15", ""},
		{"tote natural", "TB-40", "Natural"},
		{"h9", "H910", ""},
	}
	for _, c := range cases {
		rows, err := s.FindBlanks(ctx, c.words, 50)
		if err != nil {
			t.Fatal(err)
		}
		if len(rows) == 0 || rows[0].Number != c.first || rows[0].Color.Name != c.color {
			t.Errorf("%q: got %+v, want %s %s first", c.words, rows, c.first, c.color)
		}
	}
	usual, err := s.FindBlanks(ctx, "  ", 50)
	if err != nil || len(usual) != 10 || usual[0].Number != "TB-40" || !usual[9].Usual {
		t.Errorf("nothing typed: got %d rows, %+v, %v; want the usual ten by name", len(usual), usual, err)
	}
	for _, nothing := range []string{"\"", "*", "qqqq", "-", "NEAR(", "ls AND"} {
		rows, err := s.FindBlanks(ctx, nothing, 50)
		if err != nil || len(rows) != 0 {
			t.Errorf("%q: got %d rows, %v, want none", nothing, len(rows), err)
		}
	}
}

func TestFindBlanks_rowHoldsWhatTheListShows(t *testing.T) {
	rows, err := demoStore(t).FindBlanks(ctx, "ls-240 navy", 1)
	if err != nil || len(rows) != 1 {
		t.Fatalf("got %v, %v", rows, err)
	}
	r := rows[0]
	if r.From.String() != "6.85" || r.Sizes != "S–3XL" || r.PricedOn != "2026-04-13" || r.Supplier != "Northgate Blanks" || !r.Usual || r.Color.Hex != "#1f2a4a" {
		t.Errorf("got %+v", r)
	}
}

func quotesOf(words string) store.QuoteFilter { return store.QuoteFilter{Words: words} }
