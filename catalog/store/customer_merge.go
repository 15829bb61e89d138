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
func (s *Store) MergeCustomers(ctx context.Context, keep, gone int64) error {
	if keep == gone {
		return errors.New("merge customers: choose two different ones")
	}
	kept, err := s.Customer(ctx, keep)
	if err != nil {
		return err
	}
	other, err := s.Customer(ctx, gone)
	if err != nil {
		return err
	}
	err = s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		for _, table := range []string{"quote", "design", "shelf"} {
			w.do("UPDATE "+table+" SET customer_id = ? WHERE customer_id = ?", keep, gone)
		}
		w.do("DELETE FROM customer_words WHERE rowid = ?", gone)
		w.do("DELETE FROM customer WHERE id = ?", gone)
		c := filled(kept, other)
		d := c.ForDraft()
		writeCustomer(&w, &d)
		w.do("UPDATE customer SET level = ?, po_number = ?, notes = ? WHERE id = ?", c.Level, c.PONumber, c.Notes, keep)
		renameOnQuotes(&w, d)
		return w.err
	})
	if err != nil {
		return fmt.Errorf("merge customers %s and %s: %w", kept.Name, other.Name, err)
	}
	return nil
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
