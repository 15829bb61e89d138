package blanks

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
)

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
