package store_test

import (
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote/money"
)

// finished brings a demo quote to its end, with so many minutes of pressing.
func finished(t *testing.T, s *store.Store, id int64, minutes int64) {
	t.Helper()
	r := sent(t, s, id)
	must(t, s.Accept(ctx, id, r.ID, day, ""))
	must(t, s.Finish(ctx, id, catalog.Actuals{SetUpMinutes: money.Int(20), PressingMinutes: money.Int(minutes), Spoiled: 1}))
}

func figured(t *testing.T, s *store.Store) []catalog.Figured {
	t.Helper()
	all, err := s.Figured(ctx, "", "9999-12-31")
	must(t, err)
	return all
}

// What is kept of a decided quote is what opening it says, and is worked out anew once it is finished with other figures.
func TestFigured_saysWhatOpeningSays(t *testing.T) {
	s := demoStore(t)
	finished(t, s, 1, 150)
	sent(t, s, 2)
	must(t, s.SetState(ctx, 2, catalog.Declined, "too late"))
	fresh := asJSON(t, figured(t, s)) // nothing was kept yet
	left, err := s.WorkOut(ctx, 1)
	if must(t, err); left != 1 {
		t.Errorf("%d left of two after one, want 1", left)
	}
	if left, err = s.WorkOut(ctx, 100); err != nil || left != 0 {
		t.Errorf("%d left after all, %v", left, err)
	}
	all := figured(t, s)
	if got := asJSON(t, all); got != fresh {
		t.Errorf("kept: %s\nopened: %s", got, fresh)
	}
	sales, done := catalog.Sales(all), catalog.FinishedJobs(all)
	if len(sales) != 2 || len(done) != 1 || done[0].Pressing != 150 || done[0].Number == "" || sales[0].Lines == nil {
		t.Fatalf("sales %+v, done %+v", sales, done)
	}
	for _, x := range sales {
		if h := head(t, s, 1); x.Number == h.Number && (!x.Won || x.Subtotal.String() != h.Revisions[0].Subtotal) {
			t.Errorf("sale %+v, want quote %s won for %s", x, h.Number, h.Revisions[0].Subtotal)
		}
	}
	must(t, s.Finish(ctx, 1, catalog.Actuals{SetUpMinutes: money.Int(20), PressingMinutes: money.Int(200), Spoiled: 1}))
	if again := catalog.FinishedJobs(figured(t, s)); again[0].Pressing != 200 || again[0].Outturn.Left.Cmp(done[0].Outturn.Left) >= 0 {
		t.Errorf("after other minutes: %+v", again[0])
	}
	must(t, s.SetState(ctx, 1, catalog.Accepted, ""))
	if all := figured(t, s); len(catalog.FinishedJobs(all)) != 0 || len(all) != 2 {
		t.Errorf("once it is no longer finished: %+v", all)
	}
}

// A quote whose revision is not as it was frozen is left out of the reports, and named; the others are counted.
func TestFigured_leavesOutWhatWasAltered(t *testing.T) {
	s := demoStore(t)
	finished(t, s, 1, 150)
	finished(t, s, 2, 90)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{
		"DROP TRIGGER revision_doc_is_kept",
		"UPDATE revision_doc SET job = (SELECT job FROM revision_doc WHERE revision_id = 2) WHERE revision_id = 1",
	} {
		_, err := db.ExecContext(ctx, statement)
		must(t, err)
	}
	if left, err := s.WorkOut(ctx, 100); err != nil || left != 0 {
		t.Fatalf("%d left, %v", left, err)
	}
	all := figured(t, s)
	why := catalog.LeftOut(all)
	if len(catalog.Sales(all)) != 1 || len(catalog.FinishedJobs(all)) != 1 || len(why) != 1 || !strings.Contains(why[0], "quote "+head(t, s, 1).Number) {
		t.Errorf("sales %d, left out %q; want the altered one named", len(catalog.Sales(all)), why)
	}
}
