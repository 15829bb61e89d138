package store

import (
	"context"
	"database/sql"
	"fmt"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
)

// Pay records a payment. One above what is still owed is refused with catalog.OverBalance, which names the balance.
func (s *Store) Pay(ctx context.Context, p catalog.Payment) (catalog.Payment, error) {
	if problems := p.Check(); len(problems) > 0 {
		return p, quote.Problems(problems)
	}
	err := s.book(ctx, p.QuoteID, func(w *writer) {
		a, err := account(ctx, w.tx, p.QuoteID)
		w.fail(err)
		if w.err == nil && p.Amount.Cmp(a.Balance) > 0 {
			w.fail(catalog.OverBalance{Amount: p.Amount, Balance: a.Balance})
		}
		p.ID = w.do("INSERT INTO payment (quote_id, paid_on, way, amount, deposit, note) VALUES (?, ?, ?, ?, ?, ?)",
			p.QuoteID, p.On, p.Way, p.Amount.String(), p.Deposit, p.Note)
		s.addUp(w, p.QuoteID)
	})
	return p, err
}

// RemovePayment takes back a payment that was recorded by mistake.
func (s *Store) RemovePayment(ctx context.Context, paymentID int64) error {
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		id := w.count("SELECT quote_id FROM payment WHERE id = ?", paymentID)
		w.do("DELETE FROM payment WHERE id = ?", paymentID)
		s.addUp(&w, id)
		return w.err
	})
	if err != nil {
		return fmt.Errorf("payment %d: %w", paymentID, err)
	}
	return nil
}

// addUp writes what has been paid for a quote into its row.
func (s *Store) addUp(w *writer, id int64) {
	if w.err != nil {
		return
	}
	a, err := account(w.ctx, w.tx, id)
	w.fail(err)
	paid := ""
	if len(a.Payments) > 0 {
		paid = a.Paid.String()
	}
	w.do("UPDATE quote SET paid = ?, changed = ? WHERE id = ?", paid, s.stamp(), id)
}

// Account adds up what has been paid for a quote.
func (s *Store) Account(ctx context.Context, id int64) (catalog.Account, error) {
	a, err := account(ctx, s.read, id)
	if err != nil {
		return a, fmt.Errorf("account of quote %d: %w", id, err)
	}
	return a, nil
}

// owed is what a quote comes to, and the deposit asked for: as accepted, else as sent last (of several options the
// first), else as it stands.
const owed = `SELECT coalesce(r.total, q.total), coalesce(r.deposit, '') FROM quote q LEFT JOIN revision r ON r.id = coalesce(q.accepted_id,
	(SELECT id FROM revision WHERE quote_id = q.id ORDER BY number DESC, option LIMIT 1)) WHERE q.id = ?`

func account(ctx context.Context, db querier, id int64) (catalog.Account, error) {
	asked, err := one(ctx, db, func(r *sql.Rows) (a catalog.Account, err error) {
		return a, r.Scan(amountOrNone{&a.Total}, amountOrNone{&a.Deposit})
	}, owed, id)
	if err != nil {
		return asked, err
	}
	payments, err := rows(ctx, db, scanPayment, "SELECT id, quote_id, paid_on, way, amount, deposit, note FROM payment WHERE quote_id = ? ORDER BY paid_on, id", id)
	return catalog.NewAccount(asked.Total, asked.Deposit, payments), err
}

// amountOrNone reads an amount, which may be empty.
type amountOrNone struct{ to *money.Amount }

// Scan implements sql.Scanner.
func (a amountOrNone) Scan(v any) error {
	if v == "" {
		return nil
	}
	return text(a.to).Scan(v)
}

func scanPayment(r *sql.Rows) (p catalog.Payment, err error) {
	return p, r.Scan(&p.ID, &p.QuoteID, &p.On, &p.Way, text(&p.Amount), &p.Deposit, &p.Note)
}
