package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"runtime"
	"sync"

	"pressworth/catalog"
)

// figuredBasis names what the figures of a decided quote are worked out of: how, of which revision, and of what it took.
// The number in front counts the ways in which figures were worked out.
const figuredBasis = `'1 ' || r_id || coalesce(' ' || a.set_up_minutes || ' ' || a.pressing_minutes || ' ' || a.spoiled || ' ' || a.finished_on || ' ' || a.invoices, '')`

// figuredColumns are those of scanFigured.
const figuredColumns = `q.id, number, customer, title, q.state, decided, r_id,
	coalesce(a.set_up_minutes, ''), coalesce(a.pressing_minutes, ''), coalesce(a.spoiled, 0), coalesce(a.invoices, '[]'), coalesce(a.finished_on, ''), ` +
	figuredBasis + `, coalesce(f.doc, '')`

// figuredFrom are the quotes that were decided upon a revision, with their figures where these are as they would come out.
const figuredFrom = ` FROM (SELECT id, number, customer, title, state, decided,
	coalesce(accepted_id, (SELECT id FROM revision WHERE quote_id = quote.id ORDER BY number DESC, option LIMIT 1)) r_id FROM quote WHERE decided <> '') q
	LEFT JOIN actuals a ON a.quote_id = q.id AND q.state = 'finished' LEFT JOIN figured f ON f.quote_id = q.id AND f.basis = ` + figuredBasis + `
	WHERE r_id IS NOT NULL `

// outcome is a decided quote with its figures, as far as they are there.
type outcome struct {
	catalog.Outcome
	basis, doc string
	figured    catalog.Figured
}

func scanFigured(r *sql.Rows) (o outcome, err error) {
	var a catalog.Actuals
	err = r.Scan(&o.ID, &o.Number, &o.Customer, &o.Title, &o.State, &o.Decided, &o.RevisionID,
		numberOrNone{&a.SetUpMinutes}, numberOrNone{&a.PressingMinutes}, &a.Spoiled, jsonOf{&a.Invoices}, &a.On, &o.basis, &o.doc)
	if a.On != "" {
		o.Actuals = &a
	}
	return o, err
}

// WorkOut works out the figures of decided quotes that have none as they would come out now, at most so many, keeps
// them, and says how many are left. A shop that is only looked at keeps nothing.
func (s *Store) WorkOut(ctx context.Context, most int) (left int, err error) {
	if s.write == nil {
		return 0, nil
	}
	all, err := rows(ctx, s.read, scanFigured, "SELECT "+figuredColumns+figuredFrom+"AND f.quote_id IS NULL LIMIT ?", most)
	if err == nil {
		err = s.workOut(ctx, all)
	}
	if err == nil {
		err = s.change(ctx, func(tx *sql.Tx) error {
			w := writer{ctx: ctx, tx: tx}
			for _, o := range all {
				w.do("INSERT INTO figured (quote_id, basis, doc) VALUES (?1, ?2, ?3) ON CONFLICT (quote_id) DO UPDATE SET basis = ?2, doc = ?3", o.ID, o.basis, asJSON(o.figured))
			}
			return w.err
		})
	}
	if err == nil && len(all) == most {
		left, err = one(ctx, s.read, scanCount, "SELECT count(*)"+figuredFrom+"AND f.quote_id IS NULL")
	}
	if err != nil {
		return 0, fmt.Errorf("figures of decided quotes: %w", err)
	}
	return left, nil
}

func scanCount(r *sql.Rows) (n int, err error) { return n, r.Scan(&n) }

// Figured gives the quotes that were decided between two days, both included (2006-01-02), by that day, as reports and
// learning see them. What WorkOut did not keep is worked out on the way.
func (s *Store) Figured(ctx context.Context, from, to string) ([]catalog.Figured, error) {
	all, err := rows(ctx, s.read, scanFigured, "SELECT "+figuredColumns+figuredFrom+"AND decided BETWEEN ? AND ? ORDER BY decided, number", from, to)
	if err == nil {
		err = s.workOut(ctx, all)
	}
	if err != nil {
		return nil, fmt.Errorf("figures of decided quotes: %w", err)
	}
	out := make([]catalog.Figured, len(all))
	for i, o := range all {
		out[i] = o.figured.Named(o.Outcome)
	}
	return out, nil
}

// workOut reads the figures of quotes, or works them out where there are none, with every processor there is.
func (s *Store) workOut(ctx context.Context, all []outcome) error {
	var wait sync.WaitGroup
	workers := runtime.GOMAXPROCS(0)
	failed := make([]error, workers)
	for k := range workers {
		wait.Go(func() {
			for i := k; i < len(all) && failed[k] == nil; i += workers {
				failed[k] = s.figure(ctx, &all[i])
			}
		})
	}
	wait.Wait()
	return errors.Join(failed...)
}

func (s *Store) figure(ctx context.Context, o *outcome) error {
	if o.doc != "" {
		return json.Unmarshal([]byte(o.doc), &o.figured)
	}
	r, err := s.Revision(ctx, o.RevisionID)
	if errors.Is(err, catalog.ErrAltered) {
		o.figured.Altered = err.Error()
		return nil
	}
	if err != nil {
		return err
	}
	job, result, err := r.Open()
	if err != nil {
		return fmt.Errorf("quote %s: %w", o.Number, err)
	}
	o.figured = catalog.FiguredOf(o.Outcome, job, result)
	return nil
}
