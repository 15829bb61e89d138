package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"

	"pressworth/catalog"
)

// MergeCustomers gives everything of one customer to another who is the same, in one transaction: quotes with their
// payments, designs, and what lies on the shelf. Fields that the kept one lacks are taken over; the other one is gone.
// It gives the way back.
func (s *Store) MergeCustomers(ctx context.Context, keep, gone int64) (back func(context.Context) error, err error) {
	if keep == gone {
		return nil, errors.New("merge customers: choose two different ones")
	}
	m := merged{had: map[string][]int64{}}
	if m.kept, err = s.Customer(ctx, keep); err != nil {
		return nil, err
	}
	if m.gone, err = s.Customer(ctx, gone); err != nil {
		return nil, err
	}
	m.became = filled(m.kept, m.gone)
	err = s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		m.merge(&w)
		return w.err
	})
	if err != nil {
		return nil, fmt.Errorf("merge customers %s and %s: %w", m.kept.Name, m.gone.Name, err)
	}
	return func(ctx context.Context) error {
		return s.change(ctx, func(tx *sql.Tx) error {
			w := writer{ctx: ctx, tx: tx}
			m.split(&w)
			return w.err
		})
	}, nil
}

// merged is two customers who were made one.
type merged struct {
	kept, gone, became catalog.Customer
	had                map[string][]int64 // rows of the one who is gone, by table
}

// ofCustomers are the tables whose rows belong to customers.
var ofCustomers = []string{"quote", "design", "shelf"}

func (m *merged) merge(w *writer) {
	for _, table := range ofCustomers {
		if w.err == nil {
			m.had[table], w.err = rows(w.ctx, w.tx, scanID, "SELECT id FROM "+table+" WHERE customer_id = ?", m.gone.ID)
		}
		w.do("UPDATE "+table+" SET customer_id = ? WHERE customer_id = ?", m.kept.ID, m.gone.ID)
	}
	w.do("DELETE FROM customer_words WHERE rowid = ?", m.gone.ID)
	w.do("DELETE FROM customer WHERE id = ?", m.gone.ID)
	writeWhole(w, m.became)
}

// split makes two customers again: what was the other one's goes back, the kept one is as before unless it was changed
// since.
func (m *merged) split(w *writer) {
	w.do("INSERT INTO customer (id, name, contact, email, phone, address) VALUES (?, ?, '', '', '', '')", m.gone.ID, m.gone.Name)
	for _, table := range ofCustomers {
		w.do("UPDATE "+table+" SET customer_id = ? WHERE customer_id = ? AND id IN (SELECT value FROM json_each(?))", m.gone.ID, m.kept.ID, asJSON(m.had[table]))
	}
	writeWhole(w, m.gone)
	if w.err != nil {
		return
	}
	now, err := one(w.ctx, w.tx, scanCustomer, "SELECT "+customerColumns+" FROM customer c WHERE c.id = ?", m.kept.ID)
	w.fail(err)
	if now == m.became {
		now = m.kept
	}
	writeWhole(w, now)
}

// filled is a customer with what is missing taken from another. Exemption is never taken over: it hangs on a
// certificate in one name.
func filled(c, from catalog.Customer) catalog.Customer {
	for _, f := range []struct {
		to   *string
		from string
	}{
		{&c.Contact, from.Contact},
		{&c.Email, from.Email},
		{&c.Phone, from.Phone},
		{&c.Address, from.Address},
		{&c.Level, from.Level},
		{&c.PONumber, from.PONumber},
	} {
		if strings.TrimSpace(*f.to) == "" {
			*f.to = f.from
		}
	}
	if from.Notes != "" && !strings.Contains(c.Notes, from.Notes) {
		c.Notes = strings.TrimSpace(c.Notes + "\n" + from.Notes)
	}
	return c
}

// DoubleCustomers finds customers that look like one: the same e-mail, the same digits of the phone, or the same letters
// of the name. Each set holds two or more, the one kept first in front.
func (s *Store) DoubleCustomers(ctx context.Context) ([][]catalog.Customer, error) {
	all, err := rows(ctx, s.read, scanCustomer, "SELECT "+customerColumns+" FROM customer c ORDER BY id")
	if err != nil {
		return nil, fmt.Errorf("double customers: %w", err)
	}
	set := make([]int, len(all)) // the first of each one's set
	first := make(map[string]int)
	for i, c := range all {
		set[i] = i
		for _, sign := range signs(c) {
			k, seen := first[sign]
			if !seen {
				first[sign] = i
				continue
			}
			join(set, k, i)
		}
	}
	groups := make(map[int][]catalog.Customer)
	var order []int
	for i, c := range all {
		root := rootOf(set, i)
		if len(groups[root]) == 0 {
			order = append(order, root)
		}
		groups[root] = append(groups[root], c)
	}
	var out [][]catalog.Customer
	for _, root := range order {
		if g := groups[root]; len(g) > 1 {
			out = append(out, g)
		}
	}
	return out, nil
}

func rootOf(set []int, i int) int {
	for set[i] != i {
		i = set[i]
	}
	return i
}

// join makes two sets one, its root the earlier of theirs.
func join(set []int, a, b int) {
	a, b = rootOf(set, a), rootOf(set, b)
	set[max(a, b)] = min(a, b)
}

// fewDigits is a phone number too short to tell people apart by.
const fewDigits = 7

// signs are what a customer is known by.
func signs(c catalog.Customer) (out []string) {
	if e := strings.ToLower(strings.TrimSpace(c.Email)); e != "" {
		out = append(out, "e "+e)
	}
	if p := only(c.Phone, unicode.IsDigit); len(p) >= fewDigits {
		out = append(out, "p "+p)
	}
	if n := only(strings.ToLower(c.Name), func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.IsMark(r) }); n != "" {
		out = append(out, "n "+n)
	}
	return slices.Compact(out)
}

// only keeps the characters of a text that are wanted.
func only(text string, wanted func(rune) bool) string {
	return strings.Map(func(r rune) rune {
		if wanted(r) {
			return r
		}
		return -1
	}, text)
}
