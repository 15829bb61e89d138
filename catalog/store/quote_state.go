package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
)

// ErrTransition is a state that a quote may not be put into from the one it has.
var ErrTransition = errors.New("not from there")

// SetState puts a quote into another state; note says why, where there is something to say. To accept one takes Accept,
// to finish one Finish, which know more.
func (s *Store) SetState(ctx context.Context, id int64, state, note string) error {
	return s.book(ctx, id, func(w *writer) { s.turn(w, id, state, note, s.today()) })
}

// turn moves a quote into a state, keeps when, and says what it waits for next.
func (s *Store) turn(w *writer, id int64, state, note, day string) {
	from := w.word("SELECT state FROM quote WHERE id = ?", id)
	if w.err != nil {
		return
	}
	if !catalog.MayBecome(from, state) {
		w.err = fmt.Errorf("%s quotes become %s, not %s: %w", from, strings.Join(catalog.NextStates(from), " or "), state, ErrTransition)
		return
	}
	w.do("UPDATE quote SET state = ?, changed = ? WHERE id = ?", state, s.stamp(), id)
	w.do(`INSERT INTO quote_event (quote_id, seq, state, at, note)
		SELECT ?1, 1 + coalesce(max(seq), 0), ?2, ?3, ?4 FROM quote_event WHERE quote_id = ?1`, id, state, s.stamp(), note)
	switch state {
	case catalog.Accepted, catalog.Declined:
		w.do("UPDATE quote SET decided = ?, finished = '', follow_up = '' WHERE id = ?", day, id)
	case catalog.Sent:
		w.do("UPDATE quote SET decided = '', accepted_id = NULL WHERE id = ?", id)
		w.do("UPDATE quote_option SET accepted = 0 WHERE quote_id = ?", id)
		w.do("DELETE FROM purchase WHERE quote_id = ? AND ordered = 0 AND received = 0", id)
	case catalog.Finished:
		w.do("UPDATE quote SET finished = ? WHERE id = ?", day, id)
	}
	why := ""
	if state == catalog.Declined {
		why = note
	}
	w.do("UPDATE quote SET why = ? WHERE id = ?", why, id)
	nextStep(w, id)
}

// nextStep writes what a quote waits for, and its words anew.
func nextStep(w *writer, id int64) {
	state := w.word("SELECT state FROM quote WHERE id = ?", id)
	if w.err != nil {
		return
	}
	taken, err := rows(w.ctx, w.tx, scanStep, stepsOf, id)
	if err != nil {
		w.err = err
		return
	}
	w.do("UPDATE quote SET next_step = ? WHERE id = ?", catalog.NextStep(state, taken), id)
	indexQuotes(w, "id = ?", id)
}

// SetDates keeps when to follow a quote up, and until when it may be accepted (2006-01-02, or empty).
func (s *Store) SetDates(ctx context.Context, id int64, followUp, expires string) error {
	var problems quote.Problems
	for _, f := range []struct{ path, day string }{{"follow_up", followUp}, {"expires", expires}} {
		if _, err := time.Parse(time.DateOnly, f.day); err != nil && f.day != "" {
			problems = append(problems, quote.Problem{Path: f.path, Problem: "enter a date as year-month-day, like 2026-05-31"})
		}
	}
	if len(problems) > 0 {
		return problems
	}
	return s.book(ctx, id, func(w *writer) {
		w.do("UPDATE quote SET follow_up = ?, expires = ?, changed = ? WHERE id = ?", followUp, expires, s.stamp(), id)
		indexQuotes(w, "id = ?", id)
	})
}

// book changes a quote that is there, in one transaction, and says which one where that fails.
func (s *Store) book(ctx context.Context, id int64, work func(*writer)) error {
	number := ""
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		number = w.word("SELECT number FROM quote WHERE id = ?", id)
		work(&w)
		return w.err
	})
	switch {
	case err != nil && number != "":
		return fmt.Errorf("quote %s: %w", number, err)
	case err != nil:
		return fmt.Errorf("quote %d: %w", id, err)
	}
	return nil
}

const stepsOf = "SELECT name, taken_on, who, how, note FROM step WHERE quote_id = ? ORDER BY pos"

func scanStep(r *sql.Rows) (x catalog.Step, err error) {
	return x, r.Scan(&x.Name, &x.On, &x.Who, &x.How, &x.Note)
}
