package store_test

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/catalog"
	"pressworth/catalog/pricefile"
	"pressworth/catalog/store"
	"pressworth/quote"
)

// listOf opens a price list with guessed columns.
func listOf(t testing.TB, text string) store.PriceRows {
	t.Helper()
	f, err := pricefile.Open(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return func(take func(catalog.PriceRow) error, refuse func(catalog.Refused)) error {
		return f.Rows(f.Guess(), take, refuse)
	}
}

func options(name, from string) catalog.ImportOptions {
	return catalog.ImportOptions{SupplierID: 1, FileName: name, ValidFrom: from, Whole: true}
}

// take plans and applies a list.
func take(t testing.TB, s *store.Store, text, from string) catalog.ImportReport {
	t.Helper()
	p, err := s.PlanImport(ctx, listOf(t, text), options("list "+from+".csv", from))
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.Apply(ctx, p, nil); err != nil {
		t.Fatal(err)
	}
	return p.Report
}

// emptyShop is a shop file with two suppliers and nothing else.
func emptyShop(t testing.TB) *store.Store {
	t.Helper()
	s := open(t, filepath.Join(t.TempDir(), "shop.db"))
	for _, key := range []string{"northgate", "heron"} {
		if _, err := s.SaveSupplier(ctx, catalog.Supplier{Key: key, Name: strings.ToUpper(key)}); err != nil {
			t.Fatal(err)
		}
	}
	return s
}

// prices writes every price of a style on a day, by colour and size.
func prices(t testing.TB, s *store.Store, number, on string) string {
	t.Helper()
	rows, err := s.FindBlanks(ctx, number, 1)
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) == 0 {
		return "none"
	}
	b, err := s.Book(ctx, catalog.Draft{Garments: []catalog.DraftGarment{{StyleID: rows[0].StyleID}}}, on)
	if err != nil && !errors.Is(err, store.ErrNotFound) {
		t.Fatal(err)
	}
	x := b.Styles[rows[0].StyleID]
	var out []string
	sizes := map[string]bool{}
	for _, z := range x.Sizes {
		sizes[z.Size] = true
	}
	for _, own := range x.ByColor {
		for _, z := range own {
			sizes[z.Size] = true
		}
	}
	for _, c := range x.Colors {
		for size := range sizes {
			if each := x.EachOf(c.Name, size); each != nil && !c.Retired {
				out = append(out, fmt.Sprintf("%s %s %s", c.Name, size, catalog.WriteBreaks(each)))
			}
		}
	}
	slices.Sort(out)
	return strings.Join(out, "; ")
}

// withRates gives an empty shop rates, so that books can be read.
func withRates(t testing.TB, s *store.Store) *store.Store {
	t.Helper()
	if err := s.SaveShop(ctx, demo(t).Shop); err != nil {
		t.Fatal(err)
	}
	return s
}

const may = "Style,Name,Mill,Category,Color,Size,Price\n" +
	"A1,Tee,Oxbow,Tee,White,M,4.00\nA1,Tee,Oxbow,Tee,White,2XL,6.00\nA1,Tee,Oxbow,Tee,Navy,M,4.20\nA1,Tee,Oxbow,Tee,Navy,2XL,6.20\nA1,Tee,Oxbow,Tee,Red,M,4.20\n" +
	"B2,Hoodie,Oxbow,Hoodie,Navy,M,14.00\nC3,Cap,Quarry,Cap,Navy,OS,5.00\n"

const june = "Style,Name,Mill,Category,Color,Size,Price\n" +
	"A1,Tee,Oxbow,Tee,White,M,4.40\nA1,Tee,Oxbow,Tee,White,2XL,6.00\nA1,Tee,Oxbow,Tee,Navy,M,4.20\nA1,Tee,Oxbow,Tee,Green,M,3.10\n" +
	"B2,Hoodie,Oxbow,Hoodie,Navy,M,13.00\nD4,Polo,Oxbow,Polo,Navy,M,9.00\nE5,,,,Navy,M,none\n"

func TestImport_laterListSaysWhatChanges(t *testing.T) {
	s := withRates(t, emptyShop(t))
	first := take(t, s, may, "2026-05-01")
	if first.Counts[catalog.ChangeNew] != 7 || first.NewStyles != 3 || first.Refused != 0 || first.Rows != 7 {
		t.Errorf("first list: got %+v, want 7 new in 3 styles", first)
	}
	checkLater(t, s)
}

// checkLater takes the list of June after that of May.
func checkLater(t *testing.T, s *store.Store) {
	t.Helper()
	mayPrices := "Navy 2XL 6.20; Navy M 4.20; Red M 4.20; White 2XL 6.00; White M 4.00"
	if got := prices(t, s, "A1", "2026-05-02"); got != mayPrices {
		t.Errorf("after the first list: got %s, want %s", got, mayPrices)
	}
	second := take(t, s, june, "2026-06-01")
	want := map[string]int{catalog.ChangeNew: 2, catalog.ChangeDearer: 1, catalog.ChangeCheaper: 1, catalog.ChangeSame: 2, catalog.ChangeGone: 3}
	for kind, n := range want {
		if second.Counts[kind] != n {
			t.Errorf("%s: got %d, want %d in %+v", kind, second.Counts[kind], n, second)
		}
	}
	if second.Refused != 1 || second.Refusals[0].Line != 8 || second.Refusals[0].Field != "price" {
		t.Errorf("refused: got %+v, want the price on line 8", second.Refusals)
	}
	if second.DearerBy.Middle < 9.99 || second.DearerBy.Middle > 10.01 {
		t.Errorf("4.00 to 4.40: got %+v, want 10 %%", second.DearerBy)
	}
	if got, want := prices(t, s, "A1", "2026-06-02"), "Green M 3.10; Navy M 4.20; White 2XL 6.00; White M 4.40"; got != want {
		t.Errorf("after the second list: got %s, want %s", got, want)
	}
	if got := prices(t, s, "C3", "2026-06-02"); got != "none" {
		t.Errorf("the cap is gone: got %s", got)
	}
	rows, err := s.FindBlanks(ctx, "a1", 5)
	if err != nil || len(rows) != 1 || rows[0].Colors != 3 {
		t.Errorf("colours after Red is gone and Green is new: got %+v, %v, want 3", rows, err)
	}
}

// A quote of May uses the prices of May, whatever came later.
func TestImport_olderPricesStayReadable(t *testing.T) {
	s := withRates(t, emptyShop(t))
	take(t, s, "Style,Color,Size,Price\nA,Navy,M,4.00\n", "2026-05-01")
	take(t, s, "Style,Color,Size,Price\nA,Navy,M,4.50\n", "2026-06-01")
	for on, want := range map[string]string{"2026-04-30": "", "2026-05-01": "Navy M 4.00", "2026-05-31": "Navy M 4.00", "2026-06-01": "Navy M 4.50"} {
		if got := prices(t, s, "A", on); got != want {
			t.Errorf("on %s: got %q, want %q", on, got, want)
		}
	}
	if _, err := s.PlanImport(ctx, listOf(t, "Style,Price\nA,1\n"), options("old.csv", "2026-05-15")); err == nil {
		t.Error("a list older than the last was taken")
	}
}

func TestImport_salePriceEndsByItself(t *testing.T) {
	s := withRates(t, emptyShop(t))
	take(t, s, "Style,Color,Size,Price,Sale,Sale until\nA,Navy,M,4.00,3.50,2026-05-10\nA,Red,M,4.00,,\n", "2026-05-01")
	for on, want := range map[string]string{"2026-05-10": "Navy M 3.50; Red M 4.00", "2026-05-11": "Navy M 4.00; Red M 4.00"} {
		if got := prices(t, s, "A", on); got != want {
			t.Errorf("on %s: got %q, want %q", on, got, want)
		}
	}
}

func TestImport_sameStyleNumberTwiceWithOtherPriceIsRefused(t *testing.T) {
	s := withRates(t, emptyShop(t))
	r := take(t, s, "Style,Color,Size,Price\nA,Navy,M,4.00\na,Navy,M,4.00\nA,Navy,M,5.00\n", "2026-05-01")
	if r.Refused != 1 || r.Refusals[0].Line != 4 || !strings.Contains(r.Refusals[0].Reason, "line 2") {
		t.Errorf("got %+v, want line 4 refused because of line 2", r.Refusals)
	}
}

func TestUndoImport_givesBackWhatWas(t *testing.T) {
	s := withRates(t, emptyShop(t))
	take(t, s, may, "2026-05-01")
	before := everything(t, s)
	take(t, s, june, "2026-06-01")
	if everything(t, s) == before {
		t.Fatal("the second list changed nothing: the test says nothing")
	}
	if _, err := s.UndoImport(ctx); err != nil {
		t.Fatal(err)
	}
	if after := everything(t, s); after != before {
		t.Errorf("got %s\nwant %s", after, before)
	}
	if _, err := s.UndoImport(ctx); !errors.Is(err, store.ErrNothingToUndo) {
		t.Errorf("a second step back: got %v, want %v", err, store.ErrNothingToUndo)
	}
}

// everything writes what the shop file says of its styles, in force far in the future.
func everything(t testing.TB, s *store.Store) string {
	t.Helper()
	var b strings.Builder
	for _, n := range []string{"A1", "B2", "C3", "D4"} {
		rows, err := s.FindBlanks(ctx, n, 10)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range rows {
			x, err := s.Style(ctx, r.StyleID)
			if err != nil {
				t.Fatal(err)
			}
			entries, err := s.Prices(ctx, r.StyleID)
			if err != nil {
				t.Fatal(err)
			}
			fmt.Fprintf(&b, "%d %s %s %s %v %v: %d entries, %s\n", x.ID, x.Number, x.Name, x.Mill, x.Colors, x.Retired, len(entries), prices(t, s, n, "2030-01-01"))
		}
	}
	return b.String()
}

func TestUndoImport_refusedWhereEditedOrUsed(t *testing.T) {
	s := withRates(t, emptyShop(t))
	take(t, s, may, "2026-05-01")
	take(t, s, june, "2026-06-01")
	rows, err := s.FindBlanks(ctx, "d4", 1)
	if err != nil || len(rows) != 1 {
		t.Fatal(rows, err)
	}
	d := catalog.Draft{Garments: []catalog.DraftGarment{{Key: "g", StyleID: rows[0].StyleID}}}
	d, err = s.SaveDraft(ctx, d, nil)
	if err != nil {
		t.Fatal(err)
	}
	var edited *catalog.EditedError
	if _, err := s.UndoImport(ctx); !errors.As(err, &edited) || !slices.Equal(edited.Quotes, []string{d.Number}) {
		t.Errorf("a quote uses a new style: got %v, want it named", err)
	}
	d.Garments = nil
	if _, err := s.SaveDraft(ctx, d, nil); err != nil {
		t.Fatal(err)
	}
	hoodie, err := s.FindBlanks(ctx, "b2", 1)
	if err != nil {
		t.Fatal(err)
	}
	x, err := s.Style(ctx, hoodie[0].StyleID)
	if err != nil {
		t.Fatal(err)
	}
	x.Name = "Warm hoodie"
	if _, err := s.SaveStyle(ctx, x, "Wren"); err != nil {
		t.Fatal(err)
	}
	if _, err := s.UndoImport(ctx); !errors.As(err, &edited) || !slices.Equal(edited.Styles, []string{"B2"}) {
		t.Errorf("a style was edited: got %v, want B2 named", err)
	}
}

func TestApply_stoppedOrStaleChangesNothing(t *testing.T) {
	s := withRates(t, emptyShop(t))
	take(t, s, may, "2026-05-01")
	before := everything(t, s)
	var many strings.Builder
	many.WriteString("Style,Color,Size,Price\n")
	for i := range 6000 {
		fmt.Fprintf(&many, "Z%d,Navy,M,4.00\n", i)
	}
	p, err := s.PlanImport(ctx, listOf(t, many.String()), options("many.csv", "2026-06-01"))
	if err != nil {
		t.Fatal(err)
	}
	stop, cancel := context.WithCancel(ctx)
	defer cancel()
	if _, err := s.Apply(stop, p, func(done, total int) { cancel() }); !errors.Is(err, context.Canceled) {
		t.Errorf("stopped: got %v, want %v", err, context.Canceled)
	}
	if after := everything(t, s); after != before {
		t.Errorf("after a stop: got %s\nwant %s", after, before)
	}
	take(t, s, june, "2026-06-01")
	if _, err := s.Apply(ctx, p, nil); !errors.Is(err, store.ErrChanged) {
		t.Errorf("a plan made before another import: got %v, want %v", err, store.ErrChanged)
	}
}

func TestPlanImport_damagedFileTouchesNothing(t *testing.T) {
	s := withRates(t, emptyShop(t))
	text := "Style,Price\n" + strings.Repeat("A,1.00\n", 1000) + "B,\"1.00\n"
	if _, err := s.PlanImport(ctx, listOf(t, text), options("broken.csv", day)); err == nil || !strings.Contains(err.Error(), "broken.csv: line 1002") {
		t.Errorf("got %v, want the file and line 1002 named", err)
	}
}

func TestTouched_openQuotesWithTheirMargin(t *testing.T) {
	s := demoStore(t)
	p, err := s.PlanImport(ctx, listOf(t, dearList(t)), options("dear.csv", day))
	if err != nil {
		t.Fatal(err)
	}
	touched, err := s.Touched(ctx, p, func(d catalog.Draft, b catalog.Book, on string) (store.QuoteFigures, error) {
		job, problems := catalog.Freeze(d, b, on)
		if len(problems) > 0 {
			return store.QuoteFigures{}, quote.Problems(problems)
		}
		r, err := quote.Price(job)
		if err != nil {
			return store.QuoteFigures{}, err
		}
		return store.QuoteFigures{Total: r.Price.Total.String(), Margin: *r.MarginPercent}, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	var club *catalog.TouchedQuote
	for i := range touched {
		if strings.HasPrefix(touched[i].Title, "Harbour Rowing") {
			club = &touched[i]
		}
	}
	if club == nil || club.Unpriced != "" || club.TotalBefore == "" || club.TotalBefore >= club.TotalAfter && len(club.TotalBefore) >= len(club.TotalAfter) {
		t.Errorf("got %+v, want the club dearer than before", touched)
	}
}

// dearList is the demo's list of a supplier, with one style far dearer.
func dearList(t *testing.T) string {
	t.Helper()
	var b bytes.Buffer
	b.WriteString("Style,Name,Color,Size,Price\n")
	for _, x := range demo(t).Styles {
		if x.Supplier != "northgate" {
			continue
		}
		for _, c := range x.Colors {
			for _, z := range x.Sizes {
				each := z.Each[0].Each.String()
				if x.Number == "LS-240" {
					each = "12.00"
				}
				fmt.Fprintf(&b, "%s,%s,%s,%s,%s\n", x.Number, x.Name, c.Name, z.Size, each)
			}
		}
	}
	return b.String()
}

// Whatever lists come one after the other, the catalog then says what the last one says.
func TestImport_anyTwoLists(t *testing.T) {
	row := rapid.Custom(func(t *rapid.T) string {
		return fmt.Sprintf("%s,%s,%s,%s", rapid.SampledFrom([]string{"A1", "B2", "C3"}).Draw(t, "style"), rapid.SampledFrom([]string{"Navy", "Red", "White"}).Draw(t, "color"),
			rapid.SampledFrom([]string{"S", "M", "2XL"}).Draw(t, "size"), rapid.SampledFrom([]string{"4.00", "4.20", "5.00"}).Draw(t, "price"))
	})
	lists := rapid.SliceOfN(rapid.SliceOfNDistinct(row, 1, 12, func(r string) string { return r[:strings.LastIndexByte(r, ',')] }), 2, 4)
	s := withRates(t, emptyShop(t))
	dayNumber := 0
	rapid.Check(t, func(rt *rapid.T) {
		for _, list := range lists.Draw(rt, "lists") {
			dayNumber++
			on := clock().AddDate(0, 0, dayNumber).Format("2006-01-02")
			take(t, s, "Style,Color,Size,Price\n"+strings.Join(list, "\n")+"\n", on)
			want := map[string][]string{}
			for _, r := range list {
				f := strings.Split(r, ",")
				want[f[0]] = append(want[f[0]], strings.Join(f[1:], " "))
			}
			for _, n := range []string{"A1", "B2", "C3"} {
				slices.Sort(want[n])
				w := strings.Join(want[n], "; ")
				if w == "" {
					w = "none"
				}
				if got := prices(t, s, n, on); got != w {
					rt.Errorf("style %s after %v: got %s, want %s", n, list, got, w)
				}
			}
		}
	})
}
