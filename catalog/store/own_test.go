package store_test

import (
	"testing"

	"pressworth/catalog"
)

// onDay is what a size of the cap costs on a day.
func onDay(t *testing.T, entries []catalog.Price, on string) string {
	t.Helper()
	var x catalog.Style
	x.SetPrices(catalog.InForce(entries, on), "")
	return catalog.WriteBreaks(x.EachOf("Navy", "OS"))
}

func own(t *testing.T, kind, each, from, until string) catalog.Price {
	t.Helper()
	breaks, err := catalog.ReadBreaks(each)
	if err != nil {
		t.Fatal(err)
	}
	return catalog.Price{Kind: kind, Size: "OS", Each: breaks, From: from, Until: until}
}

// The store's day is 2026-05-04; the cap's list price is 4.15.
func TestSaveListed_ownPricesAndSalesComeAndGo(t *testing.T) {
	s := demoStore(t)
	id := styleOf(t, s, "CP-11").ID
	save := func(prices ...catalog.Price) []catalog.Price {
		t.Helper()
		x, _, err := s.StyleAsListed(ctx, id)
		if err != nil {
			t.Fatal(err)
		}
		if got := catalog.WriteBreaks(x.Sizes[0].Each); got != "4.15" {
			t.Fatalf("as listed: got %s, want 4.15 whatever the shop's own prices are", got)
		}
		if _, err := s.SaveListed(ctx, x, prices, "Wren"); err != nil {
			t.Fatal(err)
		}
		entries, err := s.Prices(ctx, id)
		if err != nil {
			t.Fatal(err)
		}
		return entries
	}
	check := func(entries []catalog.Price, days map[string]string) {
		t.Helper()
		for on, want := range days {
			if got := onDay(t, entries, on); got != want {
				t.Errorf("on %s: got %s, want %s", on, got, want)
			}
		}
	}
	net := own(t, "net", "3.80", "", "")
	check(save(net), map[string]string{"2026-05-03": "4.15", "2026-05-04": "3.80", "2027-05-04": "3.80"})
	_, kept, err := s.StyleAsListed(ctx, id)
	if err != nil || len(kept) != 1 {
		t.Fatal(kept, err)
	}
	entries := save(kept[0], own(t, "sale", "3.10", "2026-06-01", "2026-06-10"))
	check(entries, map[string]string{"2026-05-31": "3.80", "2026-06-01": "3.10", "2026-06-10": "3.10", "2026-06-11": "3.80"})
	if again := save(catalog.OwnOn(entries, "2026-05-04")...); len(again) != len(entries) {
		t.Errorf("saved as it was: %d entries, want %d", len(again), len(entries))
	}
	check(save(own(t, "net", "3.70", "", "2026-07-31")), map[string]string{
		"2026-05-04": "3.70", "2026-06-05": "3.70", "2026-07-31": "3.70", "2026-08-01": "4.15",
	})
	check(save(), map[string]string{"2026-05-04": "4.15", "2026-06-05": "4.15"})
}

func TestSaveListed_whatCannotBeIsRefusedWithItsRow(t *testing.T) {
	s := demoStore(t)
	x, _, err := s.StyleAsListed(ctx, styleOf(t, s, "CP-11").ID)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []catalog.Price{
		own(t, "sale", "3.10", "", ""),
		own(t, "net", "3.10", "2026-05-03", ""),
		own(t, "net", "3.10", "", "2026-05-01"),
		own(t, "gift", "3.10", "", ""),
		own(t, "net", "0", "", ""),
		{Kind: "net", Size: "9XL", Each: x.Sizes[0].Each},
		{Kind: "net", Size: "OS", Color: "Plaid", Each: x.Sizes[0].Each},
	} {
		if _, err := s.SaveListed(ctx, x, []catalog.Price{p}, ""); err == nil {
			t.Errorf("%+v was taken", p)
		}
	}
}

// A net price for every colour goes before a colour's own list price.
func TestInForce_netForEveryColour(t *testing.T) {
	each := func(text string) catalog.Price { return own(t, "list", text, "2026-01-01", "") }
	navy, all := each("5.00"), each("4.00")
	navy.Color = "Navy"
	navy.Seq, all.Seq = 1, 2
	if got := onDay(t, []catalog.Price{all, navy}, "2026-05-04"); got != "5.00" {
		t.Errorf("without: got %s, want the colour's own 5.00", got)
	}
	net := own(t, "net", "3.50", "2026-02-01", "")
	if got := onDay(t, []catalog.Price{all, navy, net}, "2026-05-04"); got != "3.50" {
		t.Errorf("with: got %s, want 3.50", got)
	}
}

func TestFindFiltered_wordsAmongWhatAFilterLetsThrough(t *testing.T) {
	s := demoStore(t)
	found := func(f catalog.StyleFilter) (out []catalog.StyleRow) {
		t.Helper()
		out, err := s.FindFiltered(ctx, f, 50)
		if err != nil {
			t.Fatal(err)
		}
		return out
	}
	for _, r := range found(catalog.StyleFilter{Words: "tee", Shade: "dark"}) {
		if r.Color.Shade != "dark" {
			t.Errorf("dark: got %s %s, %s", r.Number, r.Color.Name, r.Color.Shade)
		}
	}
	if n := len(found(catalog.StyleFilter{Words: "tee", Shade: "dark"})); n == 0 {
		t.Error("no dark tee")
	}
	price := own(t, "list", "3.50", "", "").Each[0].Each
	cheap, any := found(catalog.StyleFilter{Words: "t", AtMost: &price}), found(catalog.StyleFilter{Words: "t", Size: "M"})
	if len(cheap) == 0 || len(any) == 0 {
		t.Errorf("at most 3.50: %d, in M: %d", len(cheap), len(any))
	}
	for _, r := range cheap {
		if r.From.Cmp(price) > 0 {
			t.Errorf("at most 3.50: got %s from %s", r.Number, r.From)
		}
	}
	x := styleOf(t, s, "CP-11")
	x.Retired = true
	if _, err := s.SaveStyle(ctx, x, ""); err != nil {
		t.Fatal(err)
	}
	for words, want := range map[string]int{"cp-11": 1, "cp11": 1, "cap nav": 1, "ca na": 1, "100%": 0, "hoodie": 0} {
		if got := found(catalog.StyleFilter{Words: words, Retired: true}); len(got) == 0 != (want == 0) {
			t.Errorf("retired, %q: got %d rows", words, len(got))
		}
	}
	if got := found(catalog.StyleFilter{Words: "cp-11", Category: "cap"}); len(got) != 0 {
		t.Errorf("retired among the others: %+v", got)
	}
}
