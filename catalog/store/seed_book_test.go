package store_test

import (
	"slices"
	"testing"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/catalog/store"
)

// demoBook is the demo shop with its book.
func demoBook(t testing.TB) *store.Store {
	t.Helper()
	s := demoStore(t)
	b, err := catalog.ReadDemoBook(assets.DemoBook, day, demo(t))
	must(t, err)
	must(t, s.SeedBook(ctx, b))
	return s
}

func TestSeedBook_tellsOfTheLastWeeks(t *testing.T) {
	s := demoBook(t)
	all, err := s.Quotes(ctx, store.QuoteFilter{Sort: "number"})
	must(t, err)
	var states []string
	for _, q := range all {
		states = append(states, q.State)
		if q.Changed > "2026-05-05" {
			t.Errorf("%s was changed %s, after the day", q.Number, q.Changed)
		}
	}
	for _, state := range catalog.States {
		if !slices.Contains(states, state) {
			t.Errorf("no quote is %s: %v", state, states)
		}
	}
	if open, err := s.PurchaseList(ctx, true); err != nil || len(open) == 0 {
		t.Errorf("nothing is on the purchase list: %v", err)
	}
	if todo, err := s.ToDo(ctx, day); err != nil || len(todo) < 2 {
		t.Errorf("what needs doing: %+v, %v", todo, err)
	}
	if done, err := s.Outcomes(ctx, "2026-04-01", day); err != nil || len(done) != 4 || done[0].Actuals == nil {
		t.Errorf("outcomes: %+v, %v", done, err)
	}
	d, err := s.Draft(ctx, 1)
	must(t, err)
	if offers, err := s.ShelfOffers(ctx, d); err != nil || len(offers) == 0 {
		t.Errorf("the shelf offers the club nothing: %v", err)
	}
}

// The book is the same each time it is made, to the last byte of what was frozen.
func TestSeedBook_isTheSameEachTime(t *testing.T) {
	seals := func() (all []string) {
		must(t, demoBook(t).EachRevision(ctx, func(r catalog.Revision, err error) error {
			must(t, err)
			all = append(all, r.MadeAt+" "+r.SHA256)
			return r.Recheck()
		}))
		return all
	}
	if first, second := seals(), seals(); !slices.Equal(first, second) || len(first) != 5 {
		t.Errorf("got %v, then %v", first, second)
	}
}
