package blanks

import (
	"context"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/ui/parts"
)

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
