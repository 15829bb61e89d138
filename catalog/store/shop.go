package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/jobfile"
	"pressworth/quote/money"
)

// Shop reads the shop's rates and rules; ErrNotFound where none were saved yet.
func (s *Store) Shop(ctx context.Context) (catalog.Shop, error) {
	var doc string
	var shop catalog.Shop
	err := s.read.QueryRowContext(ctx, "SELECT doc, stale_days, handling FROM shop").Scan(&doc, &shop.StaleDays, jsonOf{&shop.Handling})
	if err != nil {
		return catalog.Shop{}, fmt.Errorf("shop: %w", translate(err))
	}
	job, err := jobfile.Decode([]byte(doc))
	if err != nil {
		return catalog.Shop{}, fmt.Errorf("shop: %w", err)
	}
	shop.Currency, shop.Rates, shop.ArtPerHour, shop.Ladder = job.Currency, job.Shop, job.Art.PerHour, job.Ladder
	if p := job.Paper; p != nil {
		shop.Letterhead, shop.ValidDays, shop.Terms, shop.Demo = p.Shop, p.ValidDays, p.Terms, p.Demo
	}
	if shop.Levels, err = s.levels(ctx); err != nil {
		return catalog.Shop{}, err
	}
	if shop.Extras, err = s.extras(ctx); err != nil {
		return catalog.Shop{}, err
	}
	shop.Presets, err = s.presets(ctx)
	return shop, err
}

func (s *Store) levels(ctx context.Context) ([]catalog.Level, error) {
	return rows(ctx, s.read, func(r *sql.Rows) (l catalog.Level, err error) {
		var doc string
		if err = r.Scan(&l.Name, &doc); err != nil {
			return l, err
		}
		job, err := jobfile.Decode([]byte(doc))
		l.Pricing = job.Pricing
		return l, err
	}, "SELECT name, doc FROM price_level ORDER BY pos")
}

func (s *Store) extras(ctx context.Context) ([]catalog.Extra, error) {
	return rows(ctx, s.read, func(r *sql.Rows) (x catalog.Extra, err error) {
		var doc string
		if err = r.Scan(&x.Key, &x.Usual, &doc); err != nil {
			return x, err
		}
		job, err := jobfile.Decode([]byte(doc))
		if len(job.Extras) > 0 {
			x.Extra = job.Extras[0]
		}
		return x, err
	}, "SELECT key, usual, doc FROM extra ORDER BY pos")
}

func (s *Store) presets(ctx context.Context) ([]catalog.Preset, error) {
	return rows(ctx, s.read, func(r *sql.Rows) (p catalog.Preset, err error) {
		return p, r.Scan(&p.Name, text(&p.Width), text(&p.Height), &p.Position, &p.Side)
	}, "SELECT name, width, height, position, side FROM preset ORDER BY pos")
}

// SaveShop keeps the shop's rates and rules in place of the former ones.
func (s *Store) SaveShop(ctx context.Context, shop catalog.Shop) error {
	err := s.change(ctx, func(tx *sql.Tx) error { return saveShop(ctx, tx, shop) })
	if err != nil {
		return fmt.Errorf("save shop: %w", err)
	}
	return nil
}

func saveShop(ctx context.Context, tx *sql.Tx, shop catalog.Shop) error {
	doc := jobfile.Encode(quote.Job{
		Currency: shop.Currency, Shop: shop.Rates, Art: quote.Art{PerHour: shop.ArtPerHour}, Ladder: shop.Ladder,
		Paper: &quote.Paper{Shop: shop.Letterhead, ValidDays: shop.ValidDays, Terms: shop.Terms, Demo: shop.Demo},
	})
	w := writer{ctx: ctx, tx: tx}
	w.do("INSERT INTO shop (id, doc, stale_days, handling) VALUES (1, ?, ?, ?)"+
		" ON CONFLICT (id) DO UPDATE SET doc = excluded.doc, stale_days = excluded.stale_days, handling = excluded.handling",
		string(doc), shop.StaleDays, asJSON(orEmpty(shop.Handling)))
	w.do("DELETE FROM price_level")
	for i, l := range shop.Levels {
		w.do("INSERT INTO price_level (pos, name, doc) VALUES (?, ?, ?)", i, l.Name, string(jobfile.Encode(quote.Job{Pricing: l.Pricing})))
	}
	w.do("DELETE FROM extra")
	for i, x := range shop.Extras {
		w.do("INSERT INTO extra (pos, key, usual, doc) VALUES (?, ?, ?, ?)", i, x.Key, x.Usual,
			string(jobfile.Encode(quote.Job{Extras: []quote.Extra{x.Extra}})))
	}
	w.do("DELETE FROM preset")
	for i, p := range shop.Presets {
		w.do("INSERT INTO preset (pos, name, width, height, position, side) VALUES (?, ?, ?, ?, ?, ?)",
			i, p.Name, p.Width.String(), p.Height.String(), p.Position, p.Side)
	}
	return w.err
}

// writer runs statements until one fails. It prepares each once; they end with the transaction.
type writer struct {
	ctx      context.Context
	tx       *sql.Tx
	err      error
	prepared map[string]*sql.Stmt
}

// do runs a statement and returns the id of the row it inserted, if any.
func (w *writer) do(query string, args ...any) int64 {
	if w.err != nil {
		return 0
	}
	stmt := w.prepare(query) //nolint:sqlclosecheck // it ends with its transaction
	if w.err != nil {
		return 0
	}
	r, err := stmt.ExecContext(w.ctx, args...)
	if err != nil {
		w.err = err
		return 0
	}
	id, err := r.LastInsertId()
	w.err = err
	return id
}

func (w *writer) prepare(query string) *sql.Stmt {
	stmt, ok := w.prepared[query]
	if !ok {
		if stmt, w.err = w.tx.PrepareContext(w.ctx, query); w.err != nil {
			return nil
		}
		if w.prepared == nil {
			w.prepared = make(map[string]*sql.Stmt)
		}
		w.prepared[query] = stmt
	}
	return stmt
}

// querier is a database or a transaction.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

// rows reads every row of a query.
func rows[T any](ctx context.Context, db querier, scan func(*sql.Rows) (T, error), query string, args ...any) ([]T, error) {
	r, err := db.QueryContext(ctx, query, args...)
	if err != nil {
		return nil, translate(err)
	}
	defer r.Close()
	var out []T
	for r.Next() {
		one, err := scan(r)
		if err != nil {
			return nil, translate(err)
		}
		out = append(out, one)
	}
	return out, translate(r.Err())
}

// one reads the only row of a query; ErrNotFound where there is none.
func one[T any](ctx context.Context, db querier, scan func(*sql.Rows) (T, error), query string, args ...any) (T, error) {
	all, err := rows(ctx, db, scan, query, args...)
	var zero T
	switch {
	case err != nil:
		return zero, err
	case len(all) == 0:
		return zero, ErrNotFound
	}
	return all[0], nil
}

// textScanner reads an exact decimal from a TEXT column.
type textScanner struct {
	to interface{ UnmarshalText([]byte) error }
}

func text(to interface{ UnmarshalText([]byte) error }) sql.Scanner { return textScanner{to} }

// Scan implements sql.Scanner.
func (t textScanner) Scan(v any) error {
	s, ok := v.(string)
	if !ok {
		return fmt.Errorf("a decimal is kept as text, not as %T", v)
	}
	return t.to.UnmarshalText([]byte(s))
}

// jsonOf reads a JSON column; an empty list or object leaves what is there.
type jsonOf struct{ to any }

// Scan implements sql.Scanner.
func (j jsonOf) Scan(v any) error {
	s, _ := v.(string)
	if s == "[]" || s == "{}" {
		return nil
	}
	return json.Unmarshal([]byte(s), j.to)
}

// asJSON writes plain records, which always marshal; no list is an empty one.
func asJSON(v any) string {
	b, _ := json.Marshal(v)
	if string(b) == "null" {
		return "[]"
	}
	return string(b)
}

// orEmpty makes an object of no map.
func orEmpty(m map[string]money.Number) map[string]money.Number {
	if m == nil {
		return map[string]money.Number{}
	}
	return m
}

// numberOrNull reads a decimal column that may be NULL.
type numberOrNull struct{ to **money.Number }

// Scan implements sql.Scanner.
func (n numberOrNull) Scan(v any) error {
	s, ok := v.(string)
	if !ok {
		*n.to = nil
		return nil
	}
	number, err := money.ParseNumber(s)
	*n.to = &number
	return err
}
