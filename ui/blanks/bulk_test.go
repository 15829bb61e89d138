package blanks

import (
	"context"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
)

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
