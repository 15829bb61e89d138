package store

import (
	"context"
	"database/sql"
	"fmt"

	"pressworth/catalog"
)

// FindCustomers finds customers by the beginnings of words in name, contact, e-mail and phone, best first; where nothing is typed,
// those kept last.
func (s *Store) FindCustomers(ctx context.Context, words string, limit int) ([]catalog.DraftCustomer, error) {
	query, args := `SELECT c.id, c.name, c.contact, c.email, c.phone, c.address FROM customer_words w JOIN customer c ON c.id = w.rowid
		WHERE customer_words MATCH ? ORDER BY w.rank, c.name LIMIT ?`, []any{match(words), limit}
	if len(tokens(words)) == 0 {
		query, args = "SELECT id, name, contact, email, phone, address FROM customer ORDER BY id DESC LIMIT ?", []any{limit}
	}
	all, err := rows(ctx, s.read, func(r *sql.Rows) (c catalog.DraftCustomer, err error) {
		return c, r.Scan(&c.ID, &c.Name, &c.Contact, &c.Email, &c.Phone, &c.Address)
	}, query, args...)
	if err != nil {
		return nil, fmt.Errorf("find customer: %w", err)
	}
	return all, nil
}

// saveCustomer keeps a customer who has a name. One that is typed in again, same name and e-mail, is the same one.
func saveCustomer(w *writer, c *catalog.DraftCustomer) {
	if c.Name == "" || w.err != nil {
		return
	}
	if c.ID == 0 {
		err := w.tx.QueryRowContext(w.ctx, "SELECT id FROM customer WHERE name = ? AND email = ?", c.Name, c.Email).Scan(&c.ID)
		if err != nil && err != sql.ErrNoRows {
			w.err = err
		}
	}
	if c.ID == 0 {
		c.ID = w.do("INSERT INTO customer (name, contact, email, phone, address) VALUES (?, ?, ?, ?, ?)", c.Name, c.Contact, c.Email, c.Phone, c.Address)
	} else {
		w.do("UPDATE customer SET name = ?, contact = ?, email = ?, phone = ?, address = ? WHERE id = ?", c.Name, c.Contact, c.Email, c.Phone, c.Address, c.ID)
		w.do("DELETE FROM customer_words WHERE rowid = ?", c.ID)
	}
	w.do("INSERT INTO customer_words (rowid, name, contact, email, phone) VALUES (?, ?, ?, ?, ?)", c.ID, c.Name, c.Contact, c.Email, c.Phone)
}
