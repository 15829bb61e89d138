package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
)

// Accept records that the customer took a revision on a day (2006-01-02), perhaps under a purchase order number. What it
// needs goes on the purchase list. A quote that is accepted already may be accepted anew at another revision: what has
// been ordered stays ordered.
func (s *Store) Accept(ctx context.Context, id, revisionID int64, on, poNumber string) error {
	if _, err := time.Parse(time.DateOnly, on); err != nil {
		return quote.Problems{{Path: "on", Problem: "enter a date as year-month-day, like 2026-05-31"}}
	}
	return s.book(ctx, id, func(w *writer) {
		r, job, result := w.frozen(revisionID)
		if w.err == nil && r.QuoteID != id {
			w.fail(errors.New("that revision is another quote's"))
		}
		if w.err == nil && w.word("SELECT state FROM quote WHERE id = ?", id) != catalog.Accepted {
			s.turn(w, id, catalog.Accepted, acceptedNote(r), on)
		}
		w.do("UPDATE quote SET accepted_id = ?, po_number = ?, decided = ?, changed = ? WHERE id = ?", revisionID, poNumber, on, s.stamp(), id)
		if r.Option > 0 {
			w.do("UPDATE quote_option SET accepted = 0 WHERE quote_id = ?", id)
			w.do("UPDATE quote_option SET accepted = 1 WHERE quote_id = ? AND pos = ?", id, r.Option)
			lead(w, id, r.Option)
		}
		toBuy(w, id, job, result)
		nextStep(w, id)
	})
}

func acceptedNote(r kept) string {
	if r.OptionName == "" {
		return fmt.Sprintf("revision %d", r.Number)
	}
	return fmt.Sprintf("revision %d, %s", r.Number, r.OptionName)
}

// TakeStep records a step of an accepted job; one that is taken already is corrected.
func (s *Store) TakeStep(ctx context.Context, id int64, x catalog.Step) error {
	if p := x.Check(); len(p) > 0 {
		return quote.Problems(p)
	}
	return s.book(ctx, id, func(w *writer) {
		accepted(w, id)
		w.do(`INSERT INTO step (quote_id, pos, name, taken_on, who, how, note) VALUES (?, ?, ?, ?, ?, ?, ?)
			ON CONFLICT (quote_id, pos) DO UPDATE SET taken_on = excluded.taken_on, who = excluded.who, how = excluded.how, note = excluded.note`,
			id, x.Place(), x.Name, x.On, x.Who, x.How, x.Note)
		w.do("UPDATE quote SET changed = ? WHERE id = ?", s.stamp(), id)
		nextStep(w, id)
	})
}

// UndoStep takes back a step that was recorded by mistake.
func (s *Store) UndoStep(ctx context.Context, id int64, name string) error {
	return s.book(ctx, id, func(w *writer) {
		accepted(w, id)
		w.do("DELETE FROM step WHERE quote_id = ? AND name = ?", id, name)
		w.do("UPDATE quote SET changed = ? WHERE id = ?", s.stamp(), id)
		nextStep(w, id)
	})
}

// accepted refuses a quote that nothing is being made for.
func accepted(w *writer, id int64) {
	if state := w.word("SELECT state FROM quote WHERE id = ?", id); w.err == nil && state != catalog.Accepted && state != catalog.Finished {
		w.fail(fmt.Errorf("it is %s, and has steps once it is accepted: %w", state, ErrTransition))
	}
}

// Quote reads all about a quote beside its drafts and frozen documents.
func (s *Store) Quote(ctx context.Context, id int64) (h catalog.QuoteHead, err error) {
	h, err = one(ctx, s.read, func(r *sql.Rows) (h catalog.QuoteHead, err error) {
		return h, r.Scan(append(quoteFields(&h.QuoteRow), &h.CustomerID, &h.AcceptedID, &h.PONumber, &h.Why)...)
	}, "SELECT "+quoteColumns+", coalesce(customer_id, 0), coalesce(accepted_id, 0), po_number, why FROM quote WHERE id = ?", id)
	if err != nil {
		return h, fmt.Errorf("quote %d: %w", id, err)
	}
	for _, part := range []func() error{
		func() (err error) { h.Options, err = s.Options(ctx, id); return err },
		func() (err error) { h.Revisions, err = s.Revisions(ctx, id); return err },
		func() (err error) { h.Steps, err = rows(ctx, s.read, scanStep, stepsOf, id); return err },
		func() (err error) { h.Account, err = account(ctx, s.read, id); return err },
		func() (err error) { h.Actuals, err = s.actuals(ctx, id); return err },
		func() (err error) { h.History, err = s.history(ctx, id); return err },
	} {
		if err := part(); err != nil {
			return h, fmt.Errorf("quote %s: %w", h.Number, err)
		}
	}
	return h, nil
}

// Approval is how the artwork of a quote was approved, by the quote's number; no step where it was not.
func (s *Store) Approval(ctx context.Context, number string) (catalog.Step, error) {
	x, err := one(ctx, s.read, scanStep, "SELECT t.name, taken_on, who, how, note FROM step t JOIN quote q ON q.id = t.quote_id WHERE q.number = ? AND t.name = ?",
		number, catalog.ArtApproved)
	if err != nil && !errors.Is(err, ErrNotFound) {
		return x, fmt.Errorf("quote %s: %w", number, err)
	}
	return x, nil
}

func (s *Store) history(ctx context.Context, id int64) ([]catalog.StateChange, error) {
	return rows(ctx, s.read, func(r *sql.Rows) (c catalog.StateChange, err error) { return c, r.Scan(&c.State, &c.At, &c.Note) },
		"SELECT state, at, note FROM quote_event WHERE quote_id = ? ORDER BY seq", id)
}
