package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"

	"pressworth/catalog"
	"pressworth/quote"
)

// SaveDraft keeps a quote with what it comes to; result is nil where it could not be priced. A new one gets its id and
// number; a customer with a name and no id is kept too. A draft that is one of several options goes to its place among
// them. The draft comes back with what it was given. Its state is the book's affair: of a quote that is there already
// it is left as it is.
func (s *Store) SaveDraft(ctx context.Context, d catalog.Draft, result *quote.Result) (catalog.Draft, error) {
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		s.saveDraft(&w, &d, result)
		return w.err
	})
	if err != nil {
		return d, fmt.Errorf("save quote %s: %w", d.Number, err)
	}
	return d, nil
}

func (s *Store) saveDraft(w *writer, d *catalog.Draft, result *quote.Result) {
	keepCustomer(w, &d.Customer)
	s.number(w, d)
	total, margin := figures(result)
	leading := true
	ahead := int(w.count("SELECT coalesce(draft ->> '$.Option', 0) FROM quote WHERE id = ?", d.ID))
	if d.Option == 0 { // another was offered beside it since it was opened
		d.Option = ahead
	}
	if d.Option > 0 {
		leading = d.Option == ahead
		writeOption(w, *d, total, margin)
	}
	if leading {
		w.do(`UPDATE quote SET number = ?, title = ?, pieces = ?, total = ?, margin = ?, needed_by = ?, draft = ? WHERE id = ?`,
			d.Number, d.Title, d.Pieces(), total, margin, d.NeededBy, asJSON(d), d.ID)
	}
	w.do("UPDATE quote SET customer_id = ?, customer = ?, changed = ? WHERE id = ?", nullable(d.Customer.ID), d.Customer.Name, s.stamp(), d.ID)
	indexQuotes(w, "id = ?", d.ID)
}

// number gives a new quote its number and its row, and a known one the state that it has in the book.
func (s *Store) number(w *writer, d *catalog.Draft) {
	if d.Number == "" {
		d.Number = s.nextNumber(w)
	}
	if d.ID != 0 {
		d.State = w.word("SELECT state FROM quote WHERE id = ?", d.ID)
		return
	}
	if d.State == "" {
		d.State = catalog.Drafted
	}
	d.ID = w.do("INSERT INTO quote (number, state, customer, title, pieces, total, margin, needed_by, next_step, draft, created, changed)"+
		" VALUES (?, ?, '', '', 0, '', '', '', ?, '{}', ?, '')", d.Number, d.State, catalog.NextStep(d.State, nil), s.stamp())
	w.do("INSERT INTO quote_event (quote_id, seq, state, at, note) VALUES (?, 1, ?, ?, '')", d.ID, d.State, s.stamp())
}

// indexQuotes writes the words that some quotes are found by.
func indexQuotes(w *writer, which string, args ...any) {
	w.do("DELETE FROM quote_words WHERE rowid IN (SELECT id FROM quote WHERE "+which+")", args...)
	w.do("INSERT INTO quote_words (rowid, words) SELECT id, words FROM quote_text WHERE id IN (SELECT id FROM quote WHERE "+which+")", args...)
}

func nullable(id int64) sql.NullInt64 { return sql.NullInt64{Int64: id, Valid: id != 0} }

func figures(r *quote.Result) (total, margin string) {
	if r == nil {
		return "", ""
	}
	if r.MarginPercent != nil {
		margin = *r.MarginPercent
	}
	return r.Price.Total.String(), margin
}

// Draft reads a quote as it stands in the form; of several options the accepted one, else the first.
func (s *Store) Draft(ctx context.Context, id int64) (catalog.Draft, error) {
	d, err := one(ctx, s.read, scanDraft, "SELECT id, state, draft FROM quote WHERE id = ?", id)
	if err != nil {
		return d, fmt.Errorf("quote %d: %w", id, err)
	}
	return d, nil
}

// scanDraft reads a draft with its id and state, which the book knows better than the draft.
func scanDraft(r *sql.Rows) (d catalog.Draft, err error) {
	var id int64
	var state, doc string
	if err = r.Scan(&id, &state, &doc); err == nil {
		err = json.Unmarshal([]byte(doc), &d)
	}
	d.ID, d.State = id, state
	return d, err
}
