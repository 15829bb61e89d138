package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"

	"pressworth/catalog"
	"pressworth/quote"
)

// Names under which settings are kept.
const (
	calendarKey  = "calendar"
	numberingKey = "numbering"
	letteringKey = "lettering"
	logoKey      = "logo"
	unitsKey     = "units"
	letterKey    = "letter"
)

// Settings reads what the shop sets apart from its rates; what was never saved is as in a new shop.
func (s *Store) Settings(ctx context.Context) (x catalog.Settings, err error) {
	if x.Calendar, err = s.ShopCalendar(ctx); err != nil {
		return x, err
	}
	if x.Numbering, err = s.Numbering(ctx); err != nil {
		return x, err
	}
	if x.Lettering, err = s.Lettering(ctx); err != nil {
		return x, err
	}
	if x.Logo, err = s.Logo(ctx); err != nil {
		return x, err
	}
	if x.Units, err = s.Units(ctx); err != nil {
		return x, err
	}
	x.Letter, err = s.Letter(ctx)
	return x, err
}

// SaveSettings keeps settings in place of the former ones; bad input is quote.Problems.
func (s *Store) SaveSettings(ctx context.Context, x catalog.Settings) error {
	return s.keepSettings(ctx, x, func(*sql.Tx) error { return nil })
}

// SaveRules keeps the shop's rates and its settings, both or neither.
func (s *Store) SaveRules(ctx context.Context, shop catalog.Shop, x catalog.Settings) error {
	return s.keepSettings(ctx, x, func(tx *sql.Tx) error { return saveShop(ctx, tx, shop) })
}

func (s *Store) keepSettings(ctx context.Context, x catalog.Settings, with func(*sql.Tx) error) error {
	if problems := x.Check(); len(problems) > 0 {
		return fmt.Errorf("save settings: %w", quote.Problems(problems))
	}
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		saveSetting(&w, calendarKey, x.Calendar)
		saveSetting(&w, numberingKey, x.Numbering)
		saveSetting(&w, letteringKey, x.Lettering)
		saveSetting(&w, logoKey, x.Logo)
		saveSetting(&w, unitsKey, x.Units)
		saveSetting(&w, letterKey, x.Letter)
		if w.err != nil {
			return w.err
		}
		return with(tx)
	})
	if err != nil {
		return fmt.Errorf("save settings: %w", err)
	}
	return nil
}

// ShopCalendar reads when the shop is open.
func (s *Store) ShopCalendar(ctx context.Context) (catalog.ShopCalendar, error) {
	return setting(ctx, s.read, calendarKey, catalog.DefaultShopCalendar())
}

// Numbering reads how quotes are numbered.
func (s *Store) Numbering(ctx context.Context) (catalog.Numbering, error) {
	return setting(ctx, s.read, numberingKey, catalog.DefaultNumbering())
}

// Lettering reads how names and numbers are set.
func (s *Store) Lettering(ctx context.Context) (catalog.Lettering, error) {
	return setting(ctx, s.read, letteringKey, catalog.DefaultLettering())
}

// Logo reads the picture of the letterhead; one without bytes where there is none.
func (s *Store) Logo(ctx context.Context) (catalog.Logo, error) {
	return setting(ctx, s.read, logoKey, catalog.Logo{})
}

// Units reads how measures are shown.
func (s *Store) Units(ctx context.Context) (catalog.Units, error) {
	return setting(ctx, s.read, unitsKey, catalog.DefaultSettings().Units)
}

// Letter reads how the shop writes when it sends a quote by e-mail.
func (s *Store) Letter(ctx context.Context) (catalog.Letter, error) {
	return setting(ctx, s.read, letterKey, catalog.DefaultLetter())
}

// rowQuerier is a database or a transaction.
type rowQuerier interface {
	QueryRowContext(ctx context.Context, query string, args ...any) *sql.Row
}

// setting reads a record; usual where none was saved.
func setting[T any](ctx context.Context, db rowQuerier, key string, usual T) (T, error) {
	var doc string
	err := db.QueryRowContext(ctx, "SELECT value FROM setting WHERE key = ?", key).Scan(&doc)
	if errors.Is(err, sql.ErrNoRows) {
		return usual, nil
	}
	var kept T
	if err == nil {
		err = json.Unmarshal([]byte(doc), &kept)
	}
	if err != nil {
		return usual, fmt.Errorf("setting %s: %w", key, translate(err))
	}
	return kept, nil
}

func saveSetting(w *writer, key string, value any) {
	w.do("INSERT INTO setting (key, value) VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET value = excluded.value", key, asJSON(value))
}
