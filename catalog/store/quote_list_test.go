package store_test

import (
	"database/sql"
	"fmt"
	"slices"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

const clubQuotes = 2500 // a fifth of them for sashes, the others for scarves; a third of all sent

func clubBook(t *testing.T) (*store.Store, *sql.DB) {
	t.Helper()
	s := demoStore(t)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{
		fmt.Sprintf(`INSERT INTO quote (number, state, customer, title, pieces, total, margin, needed_by, next_step, draft, created, changed)
			WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < %d)
			SELECT printf('9-%%05d', i), CASE i %% 3 WHEN 0 THEN 'sent' ELSE 'draft' END, 'Oarsfolk', CASE i %% 5 WHEN 0 THEN 'Sashes' ELSE 'Scarves' END,
			1, i * 7919 %% 10007 || '.50', '', '', '', '{}', '2026-01-01', printf('2026-01-01T00:00:00.%%05dZ', i * 7907 %% 9973) FROM n`, clubQuotes),
		"INSERT INTO quote_words (rowid, words) SELECT id, words FROM quote_text WHERE id > 3",
	} {
		_, err := db.ExecContext(ctx, statement)
		must(t, err)
	}
	return s, db
}

// numbers are those of the quotes that a plain selection finds.
func numbers(t *testing.T, db *sql.DB, where string) (all []string) {
	t.Helper()
	r, err := db.QueryContext(ctx, "SELECT number FROM quote WHERE customer = 'Oarsfolk' AND "+where)
	must(t, err)
	defer r.Close()
	for r.Next() {
		var number string
		must(t, r.Scan(&number))
		all = append(all, number)
	}
	must(t, r.Err())
	return all
}

// However many quotes a search finds, all of them are listed in order: few are looked up, many picked out of the book.
func TestListQuotes_everyQuoteIsListedInOrder(t *testing.T) {
	s, db := clubBook(t)
	for _, f := range []struct {
		store.QuoteFilter
		plainly string
	}{
		{store.QuoteFilter{Words: "oarsfolk scarves"}, "title = 'Scarves' ORDER BY changed DESC"},
		{store.QuoteFilter{Words: "sashes"}, "title = 'Sashes' ORDER BY changed DESC"},
		{store.QuoteFilter{Words: "oarsfolk", State: catalog.Drafted}, "state = 'draft' ORDER BY changed DESC"},
		{store.QuoteFilter{Words: "oarsfolk", Sort: "total", Descending: true}, "1 ORDER BY CAST(total AS REAL) DESC, id DESC"},
		{store.QuoteFilter{Words: "sashes", Sort: "total"}, "title = 'Sashes' ORDER BY CAST(total AS REAL), id DESC"},
	} {
		want := numbers(t, db, f.plainly)
		l, err := s.ListQuotes(ctx, f.QuoteFilter)
		must(t, err)
		all, err := l.Rows(ctx, 0, clubQuotes)
		must(t, err)
		got := make([]string, len(all))
		for i, q := range all {
			if got[i] = q.Number; l.Place(q.ID) != i {
				t.Errorf("%+v: quote %s stands at %d, want %d", f.QuoteFilter, q.Number, l.Place(q.ID), i)
			}
		}
		if l.Len() < 500 || !slices.Equal(got, want) {
			t.Errorf("%+v: %d quotes, want %d; the first are %.5q, want %.5q", f.QuoteFilter, l.Len(), len(want), got[:5], want[:5])
		}
		if part, err := l.Rows(ctx, 120, 7); err != nil || len(part) != 7 || part[0].Number != want[120] {
			t.Errorf("%+v: rows from 120 on are %d, %v", f.QuoteFilter, len(part), err)
		}
	}
}
