package store_test

import (
	"context"
	"errors"
	"slices"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/quote/money"
)

func number(t testing.TB, s string) money.Number {
	t.Helper()
	n, err := money.ParseNumber(s)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

func styleOf(t testing.TB, s *store.Store, number string) catalog.Style {
	t.Helper()
	rows, err := s.FindBlanks(ctx, number, 1)
	if err != nil || len(rows) == 0 {
		t.Fatalf("style %s: %v, %v", number, rows, err)
	}
	x, err := s.Style(ctx, rows[0].StyleID)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

func TestSaveStyle_priceChangesFromToday(t *testing.T) {
	s := demoStore(t)
	x := styleOf(t, s, "CP-11")
	each, err := catalog.ReadBreaks("4.60 48:4.30")
	if err != nil {
		t.Fatal(err)
	}
	x.Sizes[0].Each = each
	x.Colors = append(x.Colors, catalog.Color{Name: "Mustard", Hex: "#c9a227", Shade: "light"})
	x, err = s.SaveStyle(ctx, x, "Wren")
	if err != nil {
		t.Fatal(err)
	}
	if got := catalog.WriteBreaks(x.EachOf("Mustard", "OS")); got != "4.60 48:4.30" {
		t.Errorf("today: got %s, want 4.60 48:4.30", got)
	}
	old, err := s.Book(ctx, catalog.Draft{Garments: []catalog.DraftGarment{{StyleID: x.ID}}}, "2026-05-03")
	if err != nil {
		t.Fatal(err)
	}
	before := old.Styles[x.ID]
	if got := catalog.WriteBreaks(before.EachOf("Navy", "OS")); got != "4.15" {
		t.Errorf("the day before: got %s, want 4.15", got)
	}
	entries, err := s.Prices(ctx, x.ID)
	if err != nil || len(entries) != 2 || entries[1].File.Name != "Wren" || entries[1].File.Source != "person" {
		t.Errorf("entries: got %+v, %v, want the demo's and one by Wren", entries, err)
	}
	if rows, err := s.FindBlanks(ctx, "cap mustard", 5); err != nil || len(rows) != 1 || rows[0].Number != "CP-11" {
		t.Errorf("found by its new colour: got %v, %v", rows, err)
	}
}

func TestSaveStyle_problemsNameTheirField(t *testing.T) {
	s := demoStore(t)
	x := styleOf(t, s, "CP-11")
	x.Name = " "
	x.Colors[0].Hex = "navy"
	x.Sizes[0].Each = nil
	_, err := s.SaveStyle(ctx, x, "Wren")
	var problems quote.Problems
	if !errors.As(err, &problems) || len(problems) != 3 {
		t.Fatalf("got %v, want three problems", err)
	}
	for _, path := range []string{"name", "colors[0].hex", "sizes[0].each"} {
		if !slices.ContainsFunc(problems, func(p quote.Problem) bool { return p.Path == path }) {
			t.Errorf("got %v, want one at %s", problems, path)
		}
	}
}

// A net price that a person agreed goes before every list until its last day.
func TestAddPrice_netBeforeList(t *testing.T) {
	s := demoStore(t)
	x := styleOf(t, s, "CP-11")
	each, err := catalog.ReadBreaks("3.80")
	if err != nil {
		t.Fatal(err)
	}
	err = s.AddPrice(ctx, catalog.Price{StyleID: x.ID, Size: "OS", Kind: catalog.NetPrice, Each: each, From: day, Until: "2026-06-30"}, "Wren")
	if err != nil {
		t.Fatal(err)
	}
	for on, want := range map[string]string{"2026-05-03": "4.15", day: "3.80", "2026-06-30": "3.80", "2026-07-01": "4.15"} {
		b, err := s.Book(ctx, catalog.Draft{Garments: []catalog.DraftGarment{{StyleID: x.ID}}}, on)
		if err != nil {
			t.Fatal(err)
		}
		if got := catalog.WriteBreaks(b.Styles[x.ID].EachOf("Navy", "OS")); got != want {
			t.Errorf("on %s: got %s, want %s", on, got, want)
		}
	}
}

func TestBulk_previewApplyUndo(t *testing.T) {
	s := demoStore(t)
	cap, tote := styleOf(t, s, "CP-11"), styleOf(t, s, "TB-40")
	p, err := s.PlanBulk(ctx, []int64{cap.ID, tote.ID}, catalog.BulkChange{Percent: number(t, "10")})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Changes) != 2 || p.Changes[0].After != "4.57" || p.Changes[1].After != "4.13 72:3.74 144:3.41" {
		t.Errorf("4.15 and 3.75, 3.40, 3.10 and 10 %%: got %+v, want 4.57 and 4.13, 3.74, 3.41", p.Changes)
	}
	ids, err := s.ApplyBulk(ctx, p, "Wren")
	if err != nil {
		t.Fatal(err)
	}
	if got := catalog.WriteBreaks(styleOf(t, s, "CP-11").Sizes[0].Each); got != "4.57" {
		t.Errorf("applied: got %s, want 4.57", got)
	}
	if err := s.UndoBulk(ctx, ids); err != nil {
		t.Fatal(err)
	}
	if got := catalog.WriteBreaks(styleOf(t, s, "CP-11").Sizes[0].Each); got != "4.15" {
		t.Errorf("taken back: got %s, want 4.15", got)
	}
}

func TestBulk_refusals(t *testing.T) {
	s := demoStore(t)
	cap := styleOf(t, s, "CP-11")
	p, err := s.PlanBulk(ctx, []int64{cap.ID}, catalog.BulkChange{Percent: number(t, "-100")})
	if err != nil || len(p.Refused) != 1 || len(p.Changes) != 0 {
		t.Errorf("prices of nothing: got %+v, %v, want the style refused", p, err)
	}
	if p, err = s.PlanBulk(ctx, []int64{cap.ID}, catalog.BulkChange{Percent: number(t, "5")}); err != nil {
		t.Fatal(err)
	}
	ids, err := s.ApplyBulk(ctx, p, "Wren")
	if err != nil {
		t.Fatal(err)
	}
	if err := s.SetUsual(ctx, []int64{cap.ID}, false); err != nil {
		t.Fatal(err)
	}
	var edited *catalog.EditedError
	if err := s.UndoBulk(ctx, ids); !errors.As(err, &edited) {
		t.Errorf("edited since: got %v, want a refusal that names it", err)
	}
}

func TestRetire_leavesSearchAndComesBack(t *testing.T) {
	s := demoStore(t)
	x := styleOf(t, s, "CP-11")
	for _, retired := range []bool{true, false} {
		if err := s.Retire(ctx, []int64{x.ID}, retired); err != nil {
			t.Fatal(err)
		}
		rows, err := s.FindBlanks(ctx, "CP-11", 5)
		if err != nil || (len(rows) == 0) != retired {
			t.Errorf("retired %v: got %v, %v", retired, rows, err)
		}
	}
}

func TestList_filtersAndRows(t *testing.T) {
	s := demoStore(t)
	amount, err := money.ParseAmount("4.00")
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		filter catalog.StyleFilter
		fits   func(catalog.StyleRow) bool
	}{
		"all":        {catalog.StyleFilter{}, func(catalog.StyleRow) bool { return true }},
		"a supplier": {catalog.StyleFilter{SupplierID: 2}, func(r catalog.StyleRow) bool { return r.Supplier == "Copper Heron Wholesale" }},
		"a category": {catalog.StyleFilter{Category: "cap"}, func(r catalog.StyleRow) bool { return r.Category == "cap" }},
		"a shade":    {catalog.StyleFilter{Shade: "neon"}, func(r catalog.StyleRow) bool { return r.Color.Shade == "neon" }},
		"a price":    {catalog.StyleFilter{AtMost: &amount}, func(r catalog.StyleRow) bool { return r.From.Cmp(amount) <= 0 }},
		"a size":     {catalog.StyleFilter{Size: "2T"}, func(r catalog.StyleRow) bool { return strings.HasPrefix(r.Sizes, "2T") }},
	} {
		t.Run(name, func(t *testing.T) {
			l, err := s.List(ctx, c.filter)
			if err != nil {
				t.Fatal(err)
			}
			var rows []catalog.StyleRow
			for from := 0; from < l.Len(); from += 7 {
				part, err := l.Rows(ctx, from, 7)
				if err != nil {
					t.Fatal(err)
				}
				rows = append(rows, part...)
			}
			want := 0
			for _, x := range demo(t).Styles {
				for _, color := range x.Colors {
					r := catalog.StyleRow{Category: x.Category, Color: color, From: x.From(), Sizes: x.SizeSpan()}
					r.Supplier = map[string]string{"northgate": "Northgate Blanks", "heron": "Copper Heron Wholesale", "ropewalk": "Ropewalk Garment Supply"}[x.Supplier]
					if c.fits(r) {
						want++
					}
				}
			}
			if len(rows) != want || want == 0 || !slices.IsSortedFunc(rows, func(a, b catalog.StyleRow) int { return order(b.Usual) - order(a.Usual) }) {
				t.Errorf("got %d rows of %d, want %d, my usual first", len(rows), l.Len(), want)
			}
			for _, r := range rows {
				if !c.fits(r) || r.Color.Name == "" {
					t.Errorf("does not fit, or has no colour: %+v", r)
				}
			}
		})
	}
}

func order(usual bool) int {
	if usual {
		return 1
	}
	return 0
}

func TestSaveColumns_remembersBySupplier(t *testing.T) {
	s := demoStore(t)
	if err := s.SaveColumns(ctx, 2, `{"columns":{"style":"Code"}}`); err != nil {
		t.Fatal(err)
	}
	for supplier, want := range map[int64]string{1: "", 2: `{"columns":{"style":"Code"}}`} {
		if got, err := s.Columns(ctx, supplier); err != nil || got != want {
			t.Errorf("supplier %d: got %q, %v, want %q", supplier, got, err, want)
		}
	}
	if _, err := s.Columns(context.Background(), 99); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("no such supplier: got %v", err)
	}
}
