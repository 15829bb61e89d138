package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
)

// Finish ends an accepted job with what it really took. Its artwork is kept on file. A finished job's actuals may be
// corrected by finishing it again.
func (s *Store) Finish(ctx context.Context, id int64, a catalog.Actuals) error {
	if a.On == "" {
		a.On = s.today()
	}
	if p := a.Check(); len(p) > 0 {
		return quote.Problems(p)
	}
	return s.book(ctx, id, func(w *writer) {
		again := w.word("SELECT state FROM quote WHERE id = ?", id) == catalog.Finished
		if !again {
			s.turn(w, id, catalog.Finished, "", a.On)
		}
		w.do(`INSERT INTO actuals (quote_id, set_up_minutes, pressing_minutes, spoiled, invoices, note, finished_on) VALUES (?, ?, ?, ?, ?, ?, ?)
			ON CONFLICT (quote_id) DO UPDATE SET set_up_minutes = excluded.set_up_minutes, pressing_minutes = excluded.pressing_minutes,
			spoiled = excluded.spoiled, invoices = excluded.invoices, note = excluded.note, finished_on = excluded.finished_on`,
			id, a.SetUpMinutes.String(), a.PressingMinutes.String(), a.Spoiled, asJSON(a.Invoices), a.Note, a.On)
		w.do("UPDATE quote SET finished = ? WHERE id = ?", a.On, id)
		if revision := w.count("SELECT coalesce(accepted_id, 0) FROM quote WHERE id = ?", id); revision > 0 && !again {
			_, job, result := w.frozen(revision)
			d, err := one(w.ctx, w.tx, scanDraft, "SELECT id, state, draft FROM quote WHERE id = ?", id)
			w.fail(err)
			fileDesigns(w, d, job, result, a.On)
		}
		indexQuotes(w, "id = ?", id)
	})
}

func scanActuals(r *sql.Rows) (a catalog.Actuals, err error) {
	return a, r.Scan(text(&a.SetUpMinutes), text(&a.PressingMinutes), &a.Spoiled, jsonOf{&a.Invoices}, &a.Note, &a.On)
}

// actuals reads what a job really took; nil where it has not been finished.
func (s *Store) actuals(ctx context.Context, id int64) (*catalog.Actuals, error) {
	a, err := one(ctx, s.read, scanActuals, "SELECT set_up_minutes, pressing_minutes, spoiled, invoices, note, finished_on FROM actuals WHERE quote_id = ?", id)
	if errors.Is(err, ErrNotFound) {
		return nil, nil
	}
	return &a, err
}

// Outcomes lists the quotes that were accepted or declined between two days, both included (2006-01-02), by that day,
// with the figures they were decided upon.
func (s *Store) Outcomes(ctx context.Context, from, to string) ([]catalog.Outcome, error) {
	all, err := rows(ctx, s.read, scanOutcome, `SELECT `+quoteColumns+`, coalesce(customer_id, 0), decided, finished, why, coalesce(r_id, 0),
		coalesce(r_subtotal, ''), coalesce(r_cost, ''), coalesce(r_hours, ''),
		coalesce(a.set_up_minutes, ''), coalesce(a.pressing_minutes, ''), coalesce(a.spoiled, 0), coalesce(a.invoices, '[]'), coalesce(a.note, ''),
		coalesce(a.finished_on, '') FROM (`+decidedUpon+`) LEFT JOIN actuals a ON a.quote_id = id ORDER BY decided, number`, from, to)
	if err != nil {
		return nil, fmt.Errorf("outcomes: %w", err)
	}
	return all, nil
}

// decidedUpon are quotes with the revision that was accepted, else the last (of several options the first).
const decidedUpon = `SELECT q.*, r.id r_id, r.subtotal r_subtotal, r.cost r_cost, r.hours r_hours FROM quote q LEFT JOIN revision r
	ON r.id = coalesce(q.accepted_id, (SELECT id FROM revision WHERE quote_id = q.id ORDER BY number DESC, option LIMIT 1))
	WHERE q.decided <> '' AND q.decided BETWEEN ? AND ?`

// numberOrNone reads a number, which may be empty.
type numberOrNone struct{ to *money.Number }

// Scan implements sql.Scanner.
func (n numberOrNone) Scan(v any) error {
	if v == "" {
		return nil
	}
	return text(n.to).Scan(v)
}

func scanOutcome(r *sql.Rows) (o catalog.Outcome, err error) {
	var a catalog.Actuals
	err = r.Scan(append(quoteFields(&o.QuoteRow), &o.CustomerID, &o.Decided, &o.Finished, &o.Why, &o.RevisionID, &o.Subtotal, &o.Cost, &o.Hours,
		numberOrNone{&a.SetUpMinutes}, numberOrNone{&a.PressingMinutes}, &a.Spoiled, jsonOf{&a.Invoices}, &a.Note, &a.On)...)
	if a.On != "" {
		o.Actuals = &a
	}
	return o, err
}

// Leftovers are the transfers that a quote's accepted revision leaves over, for the shelf.
func (s *Store) Leftovers(ctx context.Context, id int64) ([]catalog.ShelfItem, error) {
	h, err := s.Quote(ctx, id)
	if err != nil {
		return nil, err
	}
	if h.AcceptedID == 0 {
		return nil, nil
	}
	r, err := s.Revision(ctx, h.AcceptedID)
	if err != nil {
		return nil, err
	}
	job, result, err := r.Open()
	if err != nil {
		return nil, err
	}
	return catalog.LeftOver(job, result, h.CustomerID, h.Number), nil
}
