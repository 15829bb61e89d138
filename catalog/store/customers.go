package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"pressworth/catalog"
	"pressworth/quote"
)

const customerColumns = `c.id, c.name, c.contact, c.email, c.phone, c.address, c.level, c.terms, c.net_days, c.po_number, c.tax_exempt,
	c.certificate, c.certificate_until, c.notes`

func scanCustomer(r *sql.Rows) (c catalog.Customer, err error) {
	return c, r.Scan(&c.ID, &c.Name, &c.Contact, &c.Email, &c.Phone, &c.Address, &c.Level, &c.Terms, &c.NetDays, &c.PONumber,
		&c.TaxExempt, &c.Certificate, &c.CertificateUntil, &c.Notes)
}

// Customers finds customers by the beginnings of words in name, contact, e-mail and phone, best first; where nothing is
// typed, those kept last.
func (s *Store) Customers(ctx context.Context, words string, limit int) ([]catalog.Customer, error) {
	query, args := "SELECT "+customerColumns+` FROM customer_words w JOIN customer c ON c.id = w.rowid
		WHERE customer_words MATCH ? ORDER BY w.rank, c.name LIMIT ?`, []any{match(words), limit}
	if len(tokens(words)) == 0 {
		query, args = "SELECT "+customerColumns+" FROM customer c ORDER BY id DESC LIMIT ?", []any{limit}
	}
	all, err := rows(ctx, s.read, scanCustomer, query, args...)
	if err != nil {
		return nil, fmt.Errorf("find customer: %w", err)
	}
	return all, nil
}

// FindCustomers is Customers as the Counter names them.
func (s *Store) FindCustomers(ctx context.Context, words string, limit int) ([]catalog.DraftCustomer, error) {
	found, err := s.Customers(ctx, words, limit)
	if err != nil {
		return nil, err
	}
	var out []catalog.DraftCustomer
	for _, c := range found {
		out = append(out, c.ForDraft())
	}
	return out, nil
}

// Customer reads one customer.
func (s *Store) Customer(ctx context.Context, id int64) (catalog.Customer, error) {
	c, err := one(ctx, s.read, scanCustomer, "SELECT "+customerColumns+" FROM customer c WHERE c.id = ?", id)
	if err != nil {
		return c, fmt.Errorf("customer %d: %w", id, err)
	}
	return c, nil
}

// SaveCustomer keeps a customer; a new one gets its id. Quotes show the new name from then on.
func (s *Store) SaveCustomer(ctx context.Context, c catalog.Customer) (catalog.Customer, error) {
	if p := c.Check(); len(p) > 0 {
		return c, quote.Problems(p)
	}
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		c.ID = writeWhole(&w, c)
		return w.err
	})
	if err != nil {
		return c, fmt.Errorf("save customer %s: %w", c.Name, err)
	}
	return c, nil
}

// writeWhole keeps all that is known of a customer, here and on quotes, and returns the id.
func writeWhole(w *writer, c catalog.Customer) int64 {
	d := c.ForDraft()
	writeCustomer(w, &d)
	w.do(`UPDATE customer SET level = ?, terms = ?, net_days = ?, po_number = ?, tax_exempt = ?, certificate = ?, certificate_until = ?, notes = ?
		WHERE id = ?`, c.Level, c.Terms, c.NetDays, c.PONumber, c.TaxExempt, c.Certificate, c.CertificateUntil, c.Notes, d.ID)
	renameOnQuotes(w, d)
	return d.ID
}

// renameOnQuotes puts a customer's name and ways to be reached into the quotes and their drafts. What has been frozen
// stays as it was sent.
func renameOnQuotes(w *writer, c catalog.DraftCustomer) {
	whole := asJSON(c)
	w.do("UPDATE quote SET customer = ?, draft = json_set(draft, '$.Customer', json(?)) WHERE customer_id = ?", c.Name, whole, c.ID)
	w.do(`UPDATE quote_option SET draft = json_set(draft, '$.Customer', json(?))
		WHERE quote_id IN (SELECT id FROM quote WHERE customer_id = ?)`, whole, c.ID)
	indexQuotes(w, "customer_id = ?", c.ID)
}

// keepCustomer keeps the customer of a draft who has a name. One that is typed in again, same name and e-mail, is the
// same one.
func keepCustomer(w *writer, c *catalog.DraftCustomer) {
	if c.Name == "" || w.err != nil {
		return
	}
	if c.ID == 0 {
		err := w.tx.QueryRowContext(w.ctx, "SELECT id FROM customer WHERE name = ? AND email = ?", c.Name, c.Email).Scan(&c.ID)
		if err != nil && !errors.Is(err, sql.ErrNoRows) {
			w.err = err
		}
	} else {
		// a draft may have been open while its customer was merged away
		c.ID = w.count("SELECT coalesce(max(id), 0) FROM customer WHERE id = ?", c.ID)
	}
	writeCustomer(w, c)
}

func writeCustomer(w *writer, c *catalog.DraftCustomer) {
	if c.ID == 0 {
		c.ID = w.do("INSERT INTO customer (name, contact, email, phone, address) VALUES (?, ?, ?, ?, ?)", c.Name, c.Contact, c.Email, c.Phone, c.Address)
	} else {
		w.do("UPDATE customer SET name = ?, contact = ?, email = ?, phone = ?, address = ? WHERE id = ?", c.Name, c.Contact, c.Email, c.Phone, c.Address, c.ID)
		w.do("DELETE FROM customer_words WHERE rowid = ?", c.ID)
	}
	w.do("INSERT INTO customer_words (rowid, name, contact, email, phone) VALUES (?, ?, ?, ?, ?)", c.ID, c.Name, c.Contact, c.Email, c.Phone)
}

// count reads one whole number within the transaction.
func (w *writer) count(query string, args ...any) (n int64) {
	if w.err == nil {
		w.err = w.tx.QueryRowContext(w.ctx, query, args...).Scan(&n)
	}
	return n
}

// word reads one text within the transaction.
func (w *writer) word(query string, args ...any) (text string) {
	if w.err == nil {
		w.err = w.tx.QueryRowContext(w.ctx, query, args...).Scan(&text)
	}
	return text
}
