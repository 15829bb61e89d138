package present

import (
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/quote"
)

// dated is the worked example with a calendar: it is Wednesday 2 December 2026, shortly after noon.
func dated(t *testing.T, needed string) *Counter {
	t.Helper()
	c, shop, engine := counter(t, true)
	engine.respond = func(j quote.Job) (quote.Result, error) {
		r := regatta(j)
		r.Purchases.Blanks = []quote.BlankPurchase{{Supplier: "northgate"}}
		return r, nil
	}
	shop.book.Suppliers[0].TransitDays, shop.book.Suppliers[0].CutOff = 2, "15:00"
	shop.book.Times = &catalog.Times{Now: shop.Now(), Shop: catalog.DefaultShopCalendar()}
	c.SetNeededBy(needed)
	c.Reload()
	return c
}

func TestDates_sayWhenToOrder(t *testing.T) {
	d := dated(t, "2026-12-18").View().Panel.Dates
	if !strings.HasPrefix(d.Line, "Ready by ") || !strings.HasSuffix(d.Line, ", needed by Fri 18 Dec") || d.Late {
		t.Errorf("line %q, late %v; want a day in time for Friday 18 December", d.Line, d.Late)
	}
	if len(d.Rows) == 0 || !strings.Contains(d.Rows[0].Name, "Northgate") || !strings.HasPrefix(d.Rows[0].When, "order by ") ||
		!strings.HasSuffix(d.Rows[0].When, "15:00") || d.Rows[0].Basis == "" {
		t.Errorf("rows %+v, want blanks from Northgate with a day, the cut-off and the reason", d.Rows)
	}
}

func TestDates_withoutADayNeededSayWhatIsHereWhen(t *testing.T) {
	d := dated(t, "").View().Panel.Dates
	if len(d.Rows) == 0 || d.Rows[0].When != "here Fri 4 Dec" || strings.Contains(d.Line, "needed") {
		t.Errorf("dates %+v; want blanks ordered on Wednesday to be here on Friday 4 December", d)
	}
}

func TestDates_aDayThatCannotBeKeptIsANote(t *testing.T) {
	c := dated(t, "2026-12-03")
	p := c.View().Panel
	if !p.Dates.Late || len(p.Notes) == 0 || !p.Notes[0].Warning || !strings.Contains(p.Notes[0].Text, "cannot be kept") {
		t.Errorf("late %v, notes %+v; want it said first that the day cannot be kept", p.Dates.Late, p.Notes)
	}
	if got := c.Front().Date; !strings.HasPrefix(got, "Ready by ") || !strings.Contains(got, "needed by Thursday 3 December") {
		t.Errorf("to the customer %q, want both days", got)
	}
}

func TestFront_saysTheReadyDay(t *testing.T) {
	if got := dated(t, "2026-12-18").Front().Date; !strings.HasSuffix(got, ", in time for Friday 18 December.") {
		t.Errorf("to the customer %q, want the day it is ready on, in time", got)
	}
}
