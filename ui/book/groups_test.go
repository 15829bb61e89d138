package book

import (
	"testing"
	"time"

	"pgregory.net/rapid"

	"pressworth/catalog"
)

func TestShareOut_whatIsNeededFirstGetsFirst(t *testing.T) {
	row := catalog.PurchaseRow{Quotes: []catalog.PurchasePart{
		{ID: 1, Needed: 10, Ordered: 10, NeededBy: "2026-12-20"},
		{ID: 2, Needed: 6, Ordered: 6, NeededBy: "2026-12-05"},
	}}
	got := shareOut(row, 9, false)
	if len(got) != 2 || got[0].part.ID != 2 || got[0].received != 6 || got[1].received != 3 || got[1].short != 7 {
		t.Errorf("got %+v, want 6 for the earlier quote, 3 and 7 short for the later one", got)
	}
	if later := shareOut(row, 9, true); later[1].short != 0 {
		t.Errorf("the rest comes later, yet %d are short", later[1].short)
	}
}

// Whatever comes, every piece of it goes to some quote, and nobody gets more than they wait for but the last.
func TestShareOut_losesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var row catalog.PurchaseRow
		for i := range rapid.IntRange(1, 5).Draw(t, "quotes") {
			n := rapid.IntRange(0, 30).Draw(t, "ordered")
			row.Quotes = append(row.Quotes, catalog.PurchasePart{ID: int64(i), Needed: n, Ordered: n, Received: rapid.IntRange(0, n).Draw(t, "here")})
		}
		came := rapid.IntRange(0, 120).Draw(t, "came")
		sum := 0
		for _, x := range shareOut(row, came, rapid.Bool().Draw(t, "later")) {
			sum += x.received - x.part.Received
		}
		if sum != came {
			t.Fatalf("%d came, %d went to quotes", came, sum)
		}
	})
}

func TestReadSpoiled_readsSizesWithCounts(t *testing.T) {
	for text, want := range map[string][]Spoiled{
		"S2 L1":         {{Size: "S", Qty: 2}, {Size: "L", Qty: 1}},
		"2xl 3":         {{Size: "2XL", Qty: 3}},
		"2XL3, m1":      {{Size: "2XL", Qty: 3}, {Size: "M", Qty: 1}},
		"S×2":           {{Size: "S", Qty: 2}},
		"":              nil,
		"S":             nil,
		"S0":            nil,
		"S2 many":       nil,
		"S -1":          nil,
		"S999999999999": nil,
	} {
		got, ok := readSpoiled(text)
		if ok != (want != nil) || ok && len(got) != len(want) {
			t.Errorf("%q: got %v, %v, want %v", text, got, ok, want)
			continue
		}
		for i := range want {
			if ok && got[i] != want[i] {
				t.Errorf("%q: got %v, want %v", text, got[i], want[i])
			}
		}
	}
}

func TestPastDate_aWeekdayIsTheLastOne(t *testing.T) {
	now := time.Date(2026, time.December, 2, 12, 0, 0, 0, time.UTC) // a Wednesday
	for typed, want := range map[string]string{
		"mon": "2026-11-30", "thu": "2026-11-26", "yesterday": "2026-12-01", "28 nov": "2026-11-28", "11/28": "2026-11-28", "2026-12-09": "2026-12-09", "+2": "2026-12-04",
	} {
		if got, ok := pastDate(typed, now); !ok || got != want {
			t.Errorf("%q: got %s, %v, want %s", typed, got, ok, want)
		}
	}
}

func TestBuyGoods_sayWhatIsBoughtInWords(t *testing.T) {
	for what, want := range map[string]string{"13x9.5": "38 sheets of 13 × 9.5", "36": "38 lengths of 36 in", "Sleeve": "38 × Sleeve"} {
		g := buyGoods{kind: catalog.ShelfTransfer, rows: []catalog.PurchaseRow{{Kind: catalog.ShelfTransfer, What: what, Needed: 38}}}
		if got := g.sizes(needed); got != want {
			t.Errorf("%q: got %q, want %q", what, got, want)
		}
	}
	g := buyGoods{kind: catalog.ShelfBlank, rows: []catalog.PurchaseRow{{Size: "S", Needed: 6, Ordered: 6, Received: 4, Short: 2}, {Size: "M", Needed: 4}}}
	if got := g.stand(); got != "4 to order, 2 short, 4 here" {
		t.Errorf("got %q", got)
	}
}
