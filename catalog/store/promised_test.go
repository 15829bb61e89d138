package store_test

import (
	"testing"

	"pressworth/catalog"
)

func TestTimes_holdAcceptedJobsUntilTheyArePressed(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	booked := func(want int) []catalog.Booked {
		t.Helper()
		x, err := s.Times(ctx)
		must(t, err)
		if len(x.Booked) != want {
			t.Fatalf("%d jobs promised, want %d: %+v", len(x.Booked), want, x.Booked)
		}
		return x.Booked
	}
	booked(0)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	got := booked(1)[0]
	h := head(t, s, 1)
	if got.QuoteID != 1 || got.Number != h.Number || got.NeededBy != h.NeededBy || got.Hours.String() != r.Hours {
		t.Errorf("promised %+v, want quote 1, %s, needed by %s, %s hours", got, h.Number, h.NeededBy, r.Hours)
	}
	must(t, s.TakeStep(ctx, 1, catalog.Step{Name: catalog.Pressed, On: day}))
	booked(0)
}

func TestBook_bringsTheTimes(t *testing.T) {
	s := demoStore(t)
	b, err := s.Book(ctx, catalog.Draft{}, day)
	must(t, err)
	if b.Times == nil || b.Times.Now.IsZero() || b.Times.Shop.Receiving != catalog.DefaultShopCalendar().Receiving {
		t.Errorf("times %+v, want now and the shop's week", b.Times)
	}
}
