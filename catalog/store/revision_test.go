package store_test

import (
	"database/sql"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote/jobfile"
)

func TestFreezeRevision_countsAndKeepsBothDocuments(t *testing.T) {
	s := demoStore(t)
	first := sent(t, s, 1)
	want, err := s.Revision(ctx, first.ID)
	must(t, err)
	second := sent(t, s, 1)
	if first.Number != 1 || second.Number != 2 {
		t.Errorf("revisions are numbered %d and %d, want 1 and 2", first.Number, second.Number)
	}
	got, err := s.Revision(ctx, first.ID)
	if err != nil || string(got.Job) != string(want.Job) || string(got.Result) != string(want.Result) {
		t.Errorf("the first revision does not come back as it was: %v", err)
	}
	h := head(t, s, 1)
	if h.State != catalog.Sent || h.Revision != 2 || h.NextStep != "follow up" || h.FollowUp != "2026-05-11" || h.Expires == "" || h.Number != "2026-0001" {
		t.Errorf("after sending: %+v", h.QuoteRow)
	}
}

func TestFreezeRevision_keepsItsFiguresWhenPricesRise(t *testing.T) {
	s := demoStore(t)
	first := sent(t, s, 1)
	d, err := s.Draft(ctx, 1)
	must(t, err)
	dearer(t, s, d.Garments[0].StyleID)
	r, err := s.Revision(ctx, first.ID)
	must(t, err)
	must(t, r.Recheck())
	now := frozen(t, s, d)
	if now.Total == first.Total {
		t.Errorf("blanks at 99 each, and today's total is %s as it was", now.Total)
	}
}

// dearer gives a style a list price of 99 in every size from the day on.
func dearer(t *testing.T, s *store.Store, style int64) {
	t.Helper()
	x, err := s.Style(ctx, style)
	must(t, err)
	db := rawWriter(t, s.Path())
	for i, z := range x.Sizes {
		_, err := db.ExecContext(ctx, `INSERT INTO price (style_id, seq, color, size, kind, breaks, valid_from, valid_to, file_id)
			SELECT ?, 1000 + ?, '', ?, 'list', '99', ?, '', min(id) FROM price_file`, style, i, z.Size, day)
		must(t, err)
	}
}

func rawWriter(t testing.TB, path string) *sql.DB {
	t.Helper()
	db, err := sql.Open("sqlite", "file:"+path+"?_pragma=busy_timeout(2000)&_txlock=immediate")
	must(t, err)
	t.Cleanup(func() { _ = db.Close() })
	return db
}

func TestRevision_cannotBeChangedInTheFile(t *testing.T) {
	s := demoStore(t)
	sent(t, s, 1)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{
		"UPDATE revision SET total = '1.00'",
		"DELETE FROM revision",
		"UPDATE revision_doc SET job = x'00'",
		"DELETE FROM revision_doc",
		"INSERT OR REPLACE INTO revision SELECT id, quote_id, number, option, option_name, made_at, sent_how, sha256, pieces, '1.00', deposit, subtotal, cost, margin, hours FROM revision",
		"INSERT OR REPLACE INTO revision_doc SELECT revision_id, x'00', result FROM revision_doc",
		"DELETE FROM quote WHERE id = 1",
	} {
		if _, err := db.ExecContext(ctx, statement); err == nil {
			t.Errorf("%s went through", statement)
		}
	}
	if r, err := s.Revision(ctx, 1); err != nil || r.Recheck() != nil {
		t.Errorf("after the attempts: %v, %v", err, r.Recheck())
	}
}

func TestRevision_alteredOutsideIsSaidAndTheOthersOpen(t *testing.T) {
	s := demoStore(t)
	bad, good := sent(t, s, 1), sent(t, s, 3)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{
		"DROP TRIGGER revision_doc_is_kept",
		"UPDATE revision_doc SET result = (SELECT result FROM revision_doc WHERE revision_id = 2) WHERE revision_id = 1",
	} {
		_, err := db.ExecContext(ctx, statement)
		must(t, err)
	}
	r, err := s.Revision(ctx, bad.ID)
	var altered catalog.Altered
	if !errors.As(err, &altered) || !errors.Is(err, catalog.ErrAltered) || altered.Quote != "2026-0001" || altered.Number != 1 {
		t.Errorf("an altered revision: got %v", err)
	}
	if len(r.Job) == 0 || len(r.Result) == 0 {
		t.Error("what can still be read is not handed on")
	}
	if err := s.Accept(ctx, 1, bad.ID, day, ""); !errors.Is(err, catalog.ErrAltered) {
		t.Errorf("accepting it: got %v", err)
	}
	if _, err := s.Revision(ctx, good.ID); err != nil {
		t.Errorf("another quote's revision: %v", err)
	}
	if d, err := s.Draft(ctx, 1); err != nil || d.Title == "" {
		t.Errorf("its draft: %v", err)
	}
	told := 0
	must(t, s.EachRevision(ctx, func(_ catalog.Revision, err error) error {
		if err != nil {
			told++
		}
		return nil
	}))
	if told != 1 {
		t.Errorf("%d revisions are said to be altered, want 1", told)
	}
}

// A damaged packing is said like any other alteration.
func TestRevision_damagedPackingIsSaid(t *testing.T) {
	s := demoStore(t)
	sent(t, s, 3)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{"DROP TRIGGER revision_doc_is_kept", "UPDATE revision_doc SET job = substr(job, 1, 40)"} {
		_, err := db.ExecContext(ctx, statement)
		must(t, err)
	}
	if _, err := s.Revision(ctx, 1); !errors.Is(err, catalog.ErrAltered) {
		t.Errorf("got %v", err)
	}
}

// Every frozen revision comes to the same with today's engine, to the cent.
func TestRevision_demoAndTestJobsRepriceToTheCent(t *testing.T) {
	s := demoStore(t)
	for _, id := range []int64{1, 2, 3} {
		sent(t, s, id)
	}
	n := 0
	must(t, s.EachRevision(ctx, func(r catalog.Revision, err error) error {
		must(t, err)
		n++
		return r.Recheck()
	}))
	files, err := filepath.Glob(filepath.Join("..", "..", "testdata", "jobs", "*.job.json"))
	if err != nil || len(files) == 0 {
		t.Fatalf("no test jobs: %v", err)
	}
	for _, file := range files {
		job, err := jobfile.Decode(readFile(t, file))
		must(t, err)
		r, _, err := catalog.NewRevision(job)
		must(t, err)
		if err := r.Recheck(); err != nil {
			t.Errorf("%s: %v", file, err)
		}
		n++
	}
	t.Logf("%d revisions priced anew", n)
}

func readFile(t testing.TB, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	must(t, err)
	return data
}
