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
// number; a customer with a name and no id is kept too. The draft comes back with what it was given.
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
	saveCustomer(w, &d.Customer)
	if d.Number == "" {
		d.Number = s.nextNumber(w)
	}
	if d.State == "" {
		d.State = "draft"
	}
	if d.ID == 0 {
		d.ID = w.do("INSERT INTO quote (number, state, customer, title, pieces, total, margin, needed_by, next_step, draft, created, changed)"+
			" VALUES (?, ?, '', '', 0, '', '', '', '', '{}', ?, '')", d.Number, d.State, s.stamp())
	}
	total, margin := figures(result)
	doc, err := json.Marshal(d)
	if err != nil && w.err == nil {
		w.err = err
	}
	w.do(`UPDATE quote SET number = ?, state = ?, customer_id = ?, customer = ?, title = ?, pieces = ?, total = ?, margin = ?, needed_by = ?,
		next_step = ?, draft = ?, changed = ? WHERE id = ?`,
		d.Number, d.State, nullable(d.Customer.ID), d.Customer.Name, d.Title, d.Pieces(), total, margin, d.NeededBy, nextStep(d.State), string(doc), s.stamp(), d.ID)
	w.do("DELETE FROM quote_words WHERE rowid = ?", d.ID)
	w.do("INSERT INTO quote_words (rowid, number, customer, title) VALUES (?, ?, ?, ?)", d.ID, d.Number, d.Customer.Name, d.Title)
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

func nextStep(state string) string {
	switch state {
	case "draft":
		return "send"
	case "sent":
		return "follow up"
	case "accepted":
		return "order goods"
	}
	return ""
}

// Draft reads a quote as it stands in the form.
func (s *Store) Draft(ctx context.Context, id int64) (catalog.Draft, error) {
	d, err := one(ctx, s.read, func(r *sql.Rows) (d catalog.Draft, err error) {
		var doc string
		if err = r.Scan(&doc); err == nil {
			err = json.Unmarshal([]byte(doc), &d)
		}
		return d, err
	}, "SELECT draft FROM quote WHERE id = ?", id)
	if err != nil {
		return d, fmt.Errorf("quote %d: %w", id, err)
	}
	d.ID = id
	return d, nil
}

// QuoteFilter says which quotes are wanted; empty fields say nothing.
type QuoteFilter struct {
	Words string // found in number, customer or title, each as the beginning of a word
	State string
	Limit int // 0: 200
}

// Quotes reads the quote book, the one changed last first.
func (s *Store) Quotes(ctx context.Context, f QuoteFilter) ([]catalog.QuoteRow, error) {
	query := "SELECT id, number, state, customer, title, pieces, total, margin, needed_by, changed, next_step FROM quote WHERE 1 = 1"
	var args []any
	if m := match(f.Words); m != "" {
		query, args = query+" AND id IN (SELECT rowid FROM quote_words WHERE quote_words MATCH ?)", append(args, m)
	}
	if f.State != "" {
		query, args = query+" AND state = ?", append(args, f.State)
	}
	if f.Limit <= 0 {
		f.Limit = 200
	}
	all, err := rows(ctx, s.read, func(r *sql.Rows) (q catalog.QuoteRow, err error) {
		return q, r.Scan(&q.ID, &q.Number, &q.State, &q.Customer, &q.Title, &q.Pieces, &q.Total, &q.Margin, &q.NeededBy, &q.Changed, &q.NextStep)
	}, query+" ORDER BY changed DESC, id DESC LIMIT ?", append(args, f.Limit)...)
	if err != nil {
		return nil, fmt.Errorf("quote book: %w", err)
	}
	return all, nil
}
