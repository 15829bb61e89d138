package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"

	"pressworth/catalog"
	"pressworth/quote"
)

const designColumns = `id, customer_id, name, file, sizes, inks, full_color, stitches, card, settings, last_run, last_quote, runs, charge_again, notes`

func scanDesign(r *sql.Rows) (d catalog.Design, err error) {
	return d, r.Scan(&d.ID, &d.CustomerID, &d.Name, &d.File, jsonOf{&d.Sizes}, &d.Inks, &d.FullColor, &d.Stitches, &d.Card, &d.Settings,
		&d.LastRun, &d.LastQuote, &d.Runs, &d.ChargeAgain, &d.Notes)
}

// Designs lists a customer's artwork on file, what was pressed last first.
func (s *Store) Designs(ctx context.Context, customerID int64) ([]catalog.Design, error) {
	all, err := designs(ctx, s.read, customerID)
	if err != nil {
		return nil, fmt.Errorf("designs: %w", err)
	}
	return all, nil
}

func designs(ctx context.Context, db querier, customerID int64) ([]catalog.Design, error) {
	return rows(ctx, db, scanDesign, "SELECT "+designColumns+" FROM design WHERE customer_id = ? ORDER BY last_run DESC, id DESC", customerID)
}

// SaveDesign keeps a design; a new one gets its id.
func (s *Store) SaveDesign(ctx context.Context, d catalog.Design) (catalog.Design, error) {
	if p := d.Check(); len(p) > 0 {
		return d, quote.Problems(p)
	}
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		writeDesign(&w, &d)
		return w.err
	})
	if err != nil {
		return d, fmt.Errorf("design %s: %w", d.Name, err)
	}
	return d, nil
}

func writeDesign(w *writer, d *catalog.Design) {
	if d.ID == 0 {
		d.ID = w.do(`INSERT INTO design (customer_id, name, file, sizes, inks, full_color, stitches, card, settings, last_run, last_quote, runs,
			charge_again, notes) VALUES (?, ?, '', '[]', '', 0, '', '', '', '', '', 0, 0, '')`, d.CustomerID, d.Name)
	}
	w.do(`UPDATE design SET customer_id = ?, name = ?, file = ?, sizes = ?, inks = ?, full_color = ?, stitches = ?, card = ?, settings = ?,
		last_run = ?, last_quote = ?, runs = ?, charge_again = ?, notes = ? WHERE id = ?`, d.CustomerID, d.Name, d.File, asJSON(d.Sizes), d.Inks,
		d.FullColor, d.Stitches, d.Card, d.Settings, d.LastRun, d.LastQuote, d.Runs, d.ChargeAgain, d.Notes, d.ID)
}

// RemoveDesign takes a design off the file.
func (s *Store) RemoveDesign(ctx context.Context, id int64) error {
	return s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		w.do("DELETE FROM design WHERE id = ?", id)
		return w.err
	})
}

// ErrNobody is artwork that cannot be kept on file, because it belongs to no customer.
var ErrNobody = errors.New("the quote has no customer: give it one first")

// KeepArtwork keeps the artwork of an accepted quote on file, before its job is finished, and gives the way back.
func (s *Store) KeepArtwork(ctx context.Context, id int64) (kept []catalog.Design, back func(context.Context) error, err error) {
	var known []catalog.Design
	err = s.book(ctx, id, func(w *writer) {
		d, err := one(w.ctx, w.tx, scanDraft, "SELECT id, state, draft FROM quote WHERE id = ?", id)
		w.fail(err)
		if w.err == nil && d.Customer.ID == 0 {
			w.fail(ErrNobody)
		}
		revision := w.count("SELECT coalesce(accepted_id, 0) FROM quote WHERE id = ?", id)
		if w.err == nil && revision == 0 {
			w.fail(errors.New("it has not been accepted yet"))
		}
		_, job, result := w.frozen(revision)
		known, kept = fileDesigns(w, d, job, result, s.today())
	})
	return kept, func(ctx context.Context) error { return s.unfile(ctx, known, kept) }, err
}

// unfile takes designs off the file that were not known before, and makes the others what they were.
func (s *Store) unfile(ctx context.Context, known, kept []catalog.Design) error {
	return s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		for _, x := range kept {
			k := slices.IndexFunc(known, func(d catalog.Design) bool { return d.ID == x.ID })
			if k < 0 {
				w.do("DELETE FROM design WHERE id = ?", x.ID)
				continue
			}
			writeDesign(&w, &known[k])
		}
		return w.err
	})
}

// fileDesigns keeps the artwork of a job on file for its customer. It returns what was on file before, and what was kept.
func fileDesigns(w *writer, d catalog.Draft, job quote.Job, result quote.Result, on string) (known, kept []catalog.Design) {
	if d.Customer.ID == 0 || w.err != nil {
		return nil, nil
	}
	known, err := designs(w.ctx, w.tx, d.Customer.ID)
	w.fail(err)
	for _, x := range catalog.DesignsOf(job, result, known, d.Customer.ID, d.Number, on) {
		writeDesign(w, &x)
		kept = append(kept, x)
	}
	return known, kept
}

// Duplicate makes a new draft of a quote, not saved yet: the same again, at another number of pieces where one is given.
// Artwork on file costs no set-up and no art again.
func (s *Store) Duplicate(ctx context.Context, id int64, pieces int) (catalog.Draft, error) {
	d, err := s.Draft(ctx, id)
	if err != nil {
		return d, err
	}
	known, err := s.Designs(ctx, d.Customer.ID)
	if err != nil {
		return d, err
	}
	return catalog.Repeat(catalog.SameAgain(d, pieces, s.today()), known), nil
}
