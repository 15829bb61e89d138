package blanks

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// stock is a catalog of so many styles, in memory.
type stock int

func (m stock) row(i int) catalog.StyleRow {
	return catalog.StyleRow{
		StyleID: int64(i + 1), Supplier: "Northgate Blanks", Number: fmt.Sprintf("TS-%d", i), Name: "Everyday tee",
		Colors: 3, Sizes: "S–3XL", From: money.FromMinor(310, 2), PricedOn: "2026-11-04",
	}
}

func (m stock) FindFiltered(_ context.Context, f catalog.StyleFilter, limit int) ([]catalog.StyleRow, error) {
	words := f.Words
	if words == "broken" {
		return nil, errors.New("the file is locked")
	}
	var out []catalog.StyleRow
	for i := 0; i < int(m) && len(out) < limit; i++ {
		if r := m.row(i); strings.HasPrefix(strings.ToLower(r.Number), strings.ToLower(words)) && (f.AtMost == nil || r.From.Cmp(*f.AtMost) <= 0) {
			out = append(out, r)
		}
	}
	return out, nil
}

func (m stock) List(_ context.Context, f catalog.StyleFilter) (Listing, error) {
	if f.Category == "cap" {
		return stock(0), nil
	}
	return m, nil
}

func (m stock) Len() int { return int(m) }

func (m stock) Rows(_ context.Context, from, n int) ([]catalog.StyleRow, error) {
	var out []catalog.StyleRow
	for i := from; i < int(m) && len(out) < n; i++ {
		out = append(out, m.row(i))
	}
	return out, nil
}

func (m stock) Suppliers(context.Context) ([]catalog.Supplier, error) {
	return []catalog.Supplier{{ID: 7, Key: "northgate", Name: "Northgate Blanks"}}, nil
}

func (m stock) Style(_ context.Context, id int64) (catalog.Style, error) {
	each := []quote.Break{{From: 1, Each: money.FromMinor(310, 2)}, {From: 72, Each: money.FromMinor(285, 2)}}
	return catalog.Style{
		ID: id, Number: m.row(int(id - 1)).Number, Name: "Everyday tee", Fabric: "100 % cotton",
		Colors: []catalog.Color{{Name: "Navy", Hex: "#1f3055", Shade: "dark"}}, Caution: "dye may migrate",
		Sizes: []catalog.StyleSize{{Size: "S", Each: each}, {Size: "M", Each: each}, {Size: "2XL", Each: each[:1]}},
	}, nil
}

func (m stock) Prices(context.Context, int64) ([]catalog.Price, error) { return nil, nil }

var day = time.Date(2026, time.December, 2, 12, 4, 0, 0, time.UTC)

func onScreen(t testing.TB, p *Place) fyne.Window {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	w := test.NewWindow(parts.NewLayered(p.Content()))
	w.Resize(fyne.NewSize(1280, 820))
	p.Shown()
	return w
}

func texts(o fyne.CanvasObject) string {
	if !o.Visible() {
		return ""
	}
	var b strings.Builder
	var children []fyne.CanvasObject
	switch o := o.(type) {
	case *canvas.Text:
		b.WriteString(o.Text + "\n")
	case *fyne.Container:
		children = o.Objects
	case fyne.Widget:
		children = test.WidgetRenderer(o).Objects()
	}
	for _, child := range children {
		b.WriteString(texts(child))
	}
	return b.String()
}

func key(o fyne.Focusable, name fyne.KeyName) { o.TypedKey(&fyne.KeyEvent{Name: name}) }

func TestBlanks_listFollowsTheSearchAsItIsTyped(t *testing.T) {
	p := New(stock(1000), func() time.Time { return day })
	onScreen(t, p)
	test.Type(p.search, "ts-99")
	if len(p.sight.Found) != 11 || p.sight.Found[0].Number != "TS-99" {
		t.Errorf("got %+v; want TS-99 and its ten", p.sight.Found)
	}
	if got := texts(p.detail.object); !strings.Contains(got, "TS-99 Everyday tee") || !strings.Contains(got, "S – M") || !strings.Contains(got, "dye may migrate") {
		t.Errorf("the first row's detail shows %q", got)
	}
	key(p.search, fyne.KeyDown)
	if got := texts(p.detail.object); !strings.Contains(got, "TS-990 ") {
		t.Errorf("after Down: %q", got)
	}
}

func TestBlanks_manyRowsAreReadAPageAtATimeAndLetGoAgain(t *testing.T) {
	p := New(stock(250_000), func() time.Time { return day })
	onScreen(t, p)
	if n := p.sight.Held(); n != 1 || p.table.Len() != 250_000 || p.count.Text() != "250,000 rows" {
		t.Fatalf("at first %d pages are held of %d rows, said %q", n, p.table.Len(), p.count.Text())
	}
	key(p.table, fyne.KeyEnd)
	if got := texts(p.table); !strings.Contains(got, "TS-249999") {
		t.Errorf("the last row is not shown: %q", got)
	}
	if got := texts(p.detail.object); !strings.Contains(got, "TS-249999") {
		t.Errorf("its detail is not shown: %q", got)
	}
	p.table.Select(0)
	for range 40 {
		p.table.ScrollBy(parts.SightPage)
	}
	if n := p.sight.Held(); n > parts.SightHeld {
		t.Errorf("%d pages are held, want at most %d", n, parts.SightHeld)
	}
}

func TestBlanks_filterNarrowsListAndSearch(t *testing.T) {
	p := New(stock(1000), func() time.Time { return day })
	w := onScreen(t, p)
	w.Canvas().Focus(p.filter.category)
	test.Type(p.filter.category, "cap")
	if p.table.Len() != 0 {
		t.Errorf("caps: got %d rows, want none", p.table.Len())
	}
	p.filter.category.SetKey("")
	test.Type(p.search, "ts-99")
	into(p.filter.most, "3.00")
	if p.table.Len() != 0 {
		t.Errorf("under 3.00: got %d rows, want none", p.table.Len())
	}
	into(p.filter.most, "3.1O")
	if !p.filter.most.Wrong() || p.table.Len() != 11 {
		t.Errorf("a price that cannot be read: marked %v, %d rows", p.filter.most.Wrong(), p.table.Len())
	}
}

func TestBlanks_whatCannotBeReadIsSaid(t *testing.T) {
	p := New(stock(10), func() time.Time { return day })
	onScreen(t, p)
	p.search.SetText("broken")
	p.find("broken")
	if got := p.fault.Text(); !strings.Contains(got, "the file is locked") {
		t.Errorf("got %q", got)
	}
}

// fakeImports is a price file in memory.
type fakeImports struct {
	matched Matching
	options catalog.ImportOptions
	applied int
	undone  int
	fails   error
}

func (f *fakeImports) Look(path string, supplier int64) (Sheet, error) {
	if path != "/lists/northgate.csv" || supplier != 7 {
		return Sheet{}, fmt.Errorf("%s: no such file", path)
	}
	return Sheet{
		Kind: "comma", Head: [][]string{{"Item", "Farbe", "Size", "Net"}, {"TS-1", "Navy", "S", "4.35"}},
		Fields: []string{"style", "color", "size", "price"}, Matched: Matching{Fields: map[string]string{"style": "Item", "size": "Size", "price": "Net"}},
	}, nil
}

func (f *fakeImports) Compare(_ context.Context, _ string, m Matching, o catalog.ImportOptions) (Compared, error) {
	f.matched, f.options = m, o
	return Compared{
		Report: catalog.ImportReport{
			Rows: 3, Counts: map[string]int{catalog.ChangeDearer: 1, catalog.ChangeNew: 1}, Refused: 1,
			Changes: []catalog.PriceChange{
				{Kind: catalog.ChangeDearer, Line: 2, Style: "TS-1", Before: "4.10", After: "4.35"},
				{Kind: catalog.ChangeNew, Line: 3, Style: "TS-9", After: "5.00"},
			},
			Refusals: []catalog.Refused{{Line: 4, Field: "price", Reason: "4,3O is not a number"}},
		},
		Touched: []catalog.TouchedQuote{{Number: "2026-0001", MarginBefore: "42.2", MarginAfter: "19.0", BelowFloor: true}},
		Apply: func(_ context.Context, progress func(done, of int)) error {
			progress(1, 2)
			f.applied++
			return f.fails
		},
	}, nil
}

func (f *fakeImports) UndoLast(context.Context) (string, error) {
	f.undone++
	return "northgate.csv", nil
}

func (f *fakeImports) Suppliers(context.Context) ([]catalog.Supplier, error) {
	return []catalog.Supplier{{ID: 7, Key: "northgate", Name: "Northgate Blanks"}}, nil
}

func importing(t *testing.T) (*Place, *fakeImports) {
	t.Helper()
	f := &fakeImports{}
	p := New(stock(10), func() time.Time { return day })
	p.Imports = f
	onScreen(t, p)
	p.openImport()
	return p, f
}

func TestImport_nothingIsTakenBeforeItWasSeen(t *testing.T) {
	p, f := importing(t)
	g := p.page
	g.form.Set("file", "/lists/northgate.csv")
	g.look()
	if got := texts(g.steps); !strings.Contains(got, "TS-1") || !strings.Contains(got, "Farbe") {
		t.Fatalf("the file's first rows are not shown: %q", got)
	}
	g.form.ChoiceAt("column.color").SetKey("Farbe")
	g.compare()
	if f.matched.Fields["color"] != "Farbe" || f.matched.Fields["style"] != "Item" || f.options.FileName != "northgate.csv" || f.options.ValidFrom != "2026-12-02" {
		t.Errorf("compared with %+v and %+v", f.matched, f.options)
	}
	got := texts(g.steps)
	for _, want := range []string{"dearer 1", "refused 1", "below the floor", "2026-0001"} {
		if !strings.Contains(got, want) {
			t.Errorf("the report does not show %q: %q", want, got)
		}
	}
	g.report.show(refusedKind)
	if got := texts(g.report.table); !strings.Contains(got, "4,3O is not a number") {
		t.Errorf("refused rows: %q", got)
	}
	if f.applied != 0 {
		t.Fatal("prices were taken before anybody said so")
	}
	test.Tap(g.report.take)
	if f.applied != 1 || g.object.Visible() || !strings.Contains(p.notice.Text(), "northgate.csv") {
		t.Errorf("applied %d times, page open %v, notice %q", f.applied, g.object.Visible(), p.notice.Text())
	}
}

func TestImport_failureIsSaidAndThePageStays(t *testing.T) {
	p, f := importing(t)
	g := p.page
	g.form.Set("file", "/nowhere.csv")
	g.look()
	if got := g.fault.Text(); !strings.Contains(got, "no such file") {
		t.Errorf("missing file: %q", got)
	}
	g.form.Set("file", "")
	g.look()
	if g.form.ProblemAt("file") == "" {
		t.Error("an empty path is not said")
	}
	g.form.Set("file", "/lists/northgate.csv")
	g.look()
	g.compare()
	f.fails = errors.New("disk full")
	g.apply()
	if got := g.fault.Text(); !strings.Contains(got, "isk full") || !g.object.Visible() || g.report.take.Disabled() {
		t.Errorf("failed import: %q, page open %v, button off %v", got, g.object.Visible(), g.report.take.Disabled())
	}
}

func TestImport_lastOneCanBeTakenBackAndEscLeaves(t *testing.T) {
	p, f := importing(t)
	p.page.undo()
	if f.undone != 1 || !strings.Contains(p.page.busy.Text(), "northgate.csv") {
		t.Errorf("undone %d times, said %q", f.undone, p.page.busy.Text())
	}
	if !p.Escape() || p.page.object.Visible() || p.Escape() {
		t.Error("Esc did not leave the page, or left twice")
	}
}

func BenchmarkBlanks_scrollByOneRow(b *testing.B) {
	p := New(stock(250_000), func() time.Time { return day })
	onScreen(b, p)
	for i := 0; b.Loop(); i++ {
		p.table.ScrollBy(1)
	}
}

// keeper keeps what is edited.
type keeper struct {
	saved     []catalog.Style
	own       []catalog.Price // of the last one saved
	suppliers []catalog.Supplier
	fails     error
}

func (k *keeper) StyleAsListed(ctx context.Context, id int64) (catalog.Style, []catalog.Price, error) {
	s, err := stock(10).Style(ctx, id)
	s.SupplierID = 7
	return s, k.own, err
}

func (k *keeper) SaveListed(ctx context.Context, s catalog.Style, own []catalog.Price, person string) (catalog.Style, error) {
	kept, err := k.SaveStyle(ctx, s, person)
	if err == nil {
		k.own = own
	}
	return kept, err
}

func (k *keeper) SaveSupplier(_ context.Context, s catalog.Supplier) (catalog.Supplier, error) {
	if s.ID == 0 {
		s.ID = int64(len(k.suppliers) + 1)
		k.suppliers = append(k.suppliers, s)
	}
	for i := range k.suppliers {
		if k.suppliers[i].ID == s.ID {
			k.suppliers[i] = s
		}
	}
	return s, nil
}

func (k *keeper) SaveStyle(_ context.Context, s catalog.Style, _ string) (catalog.Style, error) {
	if k.fails != nil {
		return s, k.fails
	}
	k.saved = append(k.saved, s)
	return s, nil
}

func (k *keeper) Suppliers(context.Context) ([]catalog.Supplier, error) {
	return slices.Clone(k.suppliers), nil
}

func editing(t *testing.T) (*Place, *keeper) {
	t.Helper()
	k := &keeper{suppliers: []catalog.Supplier{{ID: 7, Key: "northgate", Name: "Northgate Blanks", SharePercent: money.Int(100)}}}
	p := New(stock(10), func() time.Time { return day })
	p.Keeper = k
	onScreen(t, p)
	key(p.search, fyne.KeyReturn)
	if p.editor == nil || !p.editor.object.Visible() {
		t.Fatal("Enter did not open the editor")
	}
	return p, k
}

func into(f *parts.Field, text string) {
	parts.Focus(f)
	test.Type(f, text)
}

func TestEditor_priceTypedIsSavedAndCanBeTakenBack(t *testing.T) {
	p, k := editing(t)
	e := p.editor
	if !e.save.Disabled() {
		t.Error("there is something to save before anything was typed")
	}
	into(e.prices.Cell(1, 1), "3.40")
	test.Tap(e.save)
	if len(k.saved) != 1 || k.saved[0].Sizes[0].Each[0].Each.String() != "3.40" || k.saved[0].Sizes[2].Size != "2XL" {
		t.Fatalf("saved %+v; said %q", k.saved, e.fault.Text())
	}
	if e.object.Visible() || !strings.Contains(p.notice.Text(), "TS-0") {
		t.Errorf("editor open %v, said %q", e.object.Visible(), p.notice.Text())
	}
	p.Undo()
	if len(k.saved) != 2 || k.saved[1].Sizes[0].Each[0].Each.String() != "3.10" {
		t.Errorf("undo saved %+v", k.saved[len(k.saved)-1].Sizes)
	}
	p.Redo()
	if len(k.saved) != 3 || k.saved[2].Sizes[0].Each[0].Each.String() != "3.40" {
		t.Errorf("redo saved %+v", k.saved[len(k.saved)-1].Sizes)
	}
	p.Undo()
	if len(k.saved) != 4 || k.saved[3].Sizes[0].Each[0].Each.String() != "3.10" {
		t.Errorf("undo after redo saved %+v", k.saved[len(k.saved)-1].Sizes)
	}
}

func TestEditor_problemsStandBesideTheirFields(t *testing.T) {
	p, _ := editing(t)
	e := p.editor
	into(e.form.Field("number"), " ")
	if e.form.ProblemAt("number") == "" || !e.save.Disabled() {
		t.Errorf("no number: said %q, button off %v", e.form.ProblemAt("number"), e.save.Disabled())
	}
	into(e.form.Field("number"), "TS-1")
	into(e.prices.Cell(1, 1), "3,1O")
	if got := e.form.ProblemAt("sizes"); !strings.Contains(got, "size S") || !e.save.Disabled() {
		t.Errorf("bad price: said %q", got)
	}
}

func TestEditor_leavingWithSomethingTypedIsAskedForOnce(t *testing.T) {
	p, _ := editing(t)
	into(p.editor.form.Field("name"), "Other tee")
	p.Escape()
	if !p.editor.object.Visible() || p.editor.fault.Text() == "" {
		t.Fatal("what was typed is gone without a word")
	}
	p.Escape()
	if p.editor.object.Visible() {
		t.Error("the second Esc did not leave")
	}
}

func TestEditor_styleComesBackAsItWas(t *testing.T) {
	s, _ := stock(3).Style(context.Background(), 1)
	s.SupplierID, s.Tags = 7, []string{"cotton", "tee"}
	s.Printable = []catalog.Printable{{Size: "S", Width: money.Int(11), Height: money.Int(13)}}
	s.ByColor = map[string][]catalog.StyleSize{"Navy": {{Size: "2XL", Each: []quote.Break{{From: 1, Each: money.FromMinor(415, 2)}}}}}
	s.Colors[0].Sizes = []string{"S", "M", "2XL"}
	kept := []catalog.Price{{Kind: catalog.NetPrice, Size: "S", Each: s.Sizes[0].Each, From: "2026-01-05"}}
	back, own, problems := textOf(s, kept).style("2026-12-02")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	if len(own) != 1 || !own[0].SaysAs(kept[0]) {
		t.Errorf("own prices: got %+v, want %+v", own, kept)
	}
	if got, want := fmt.Sprintf("%+v", back), fmt.Sprintf("%+v", s); got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
}

func TestBlanks_pricesThatAreTooOldAreFlagged(t *testing.T) {
	p := New(stock(3), func() time.Time { return day })
	p.Rules = func(context.Context) (catalog.Shop, error) { return catalog.Shop{StaleDays: 20}, nil }
	onScreen(t, p)
	if got := texts(p.table); !strings.Contains(got, "2026-11-04 !") {
		t.Errorf("28 days with a limit of 20: %q", got)
	}
	p.rules.StaleDays = 90
	p.table.Reload()
	if got := texts(p.table); strings.Contains(got, "!") {
		t.Errorf("28 days with a limit of 90: %q", got)
	}
}

func TestHistory_showsTheSizeWithMostPricesInOrderOfDays(t *testing.T) {
	each := func(cents int64) []quote.Break { return []quote.Break{{From: 1, Each: money.FromMinor(cents, 2)}} }
	h := newHistory()
	onScreen(t, New(stock(1), func() time.Time { return day }))
	size := h.set([]catalog.Price{
		{Size: "M", Kind: catalog.ListPrice, From: "2026-05-01", Each: each(320)},
		{Size: "M", Kind: catalog.ListPrice, From: "2025-11-01", Each: each(295)},
		{Size: "M", Kind: catalog.SalePrice, From: "2026-01-01", Each: each(100)},
		{Size: "2XL", Kind: catalog.ListPrice, From: "2026-05-01", Each: each(500)},
		{Size: "M", Kind: catalog.ListPrice, From: "2026-06-01", Each: each(900), File: catalog.PriceFile{Undone: true}},
	})
	if size != "M" || len(h.moments) != 2 || h.moments[0].each != "2.95" || h.moments[1].each != "3.20" {
		t.Errorf("size %s, moments %+v", size, h.moments)
	}
	h.Resize(fyne.NewSize(300, 90))
	if got := texts(h); !strings.Contains(got, "2.95") || !strings.Contains(got, "2026-05-01") {
		t.Errorf("drawn: %q", got)
	}
}

func TestBulk_pricesAreChangedAfterAPreviewAndCanBeTakenBack(t *testing.T) {
	var styles []int64
	var asked catalog.BulkChange
	applied, undone := 0, 0
	p := New(stock(250), func() time.Time { return day })
	p.Bulk = func(_ context.Context, ids []int64, c catalog.BulkChange) (Planned, error) {
		styles, asked = ids, c
		return Planned{
			Changes: []catalog.PriceChange{{Style: "TS-1", Size: "M", Before: "3.10 72:2.85", After: "3.22 72:2.96"}}, Refused: []string{"TS-9"},
			Apply: func(context.Context) (func(context.Context) error, error) {
				applied++
				return func(context.Context) error { undone++; return nil }, nil
			},
		}, nil
	}
	onScreen(t, p)
	p.openBulk()
	b := p.bulk
	into(b.form.Field("percent"), "4")
	into(b.form.Field("amount"), "-0.01")
	test.Tap(b.look)
	if len(styles) != 250 || asked.Percent.String() != "4" || asked.Amount.String() != "-0.01" {
		t.Fatalf("asked %+v of %d styles", asked, len(styles))
	}
	if got := texts(b.object); !strings.Contains(got, "3.22, from 72 2.96") || !strings.Contains(got, "TS-9") || applied != 0 {
		t.Errorf("preview: %q, applied %d times", got, applied)
	}
	test.Tap(b.take)
	if applied != 1 || b.object.Visible() {
		t.Fatalf("applied %d times, page open %v", applied, b.object.Visible())
	}
	p.Undo()
	if undone != 1 {
		t.Errorf("taken back %d times", undone)
	}
}

func TestBulk_whatIsTypedAfterThePreviewDropsIt(t *testing.T) {
	p := New(stock(5), func() time.Time { return day })
	p.Bulk = func(context.Context, []int64, catalog.BulkChange) (Planned, error) {
		return Planned{Changes: []catalog.PriceChange{{Style: "TS-1"}}}, nil
	}
	onScreen(t, p)
	p.openBulk()
	b := p.bulk
	test.Tap(b.look)
	if b.form.ProblemAt("percent") == "" {
		t.Error("nothing to change by is not said")
	}
	into(b.form.Field("percent"), "much")
	test.Tap(b.look)
	if b.form.ProblemAt("percent") == "" || !b.take.Disabled() {
		t.Error("a word for a number is not said")
	}
	into(b.form.Field("percent"), "5")
	test.Tap(b.look)
	if b.take.Disabled() {
		t.Fatal("the preview cannot be taken")
	}
	into(b.form.Field("percent"), "6")
	if !b.take.Disabled() || b.table.Len() != 0 {
		t.Error("an old preview can still be taken")
	}
}
