package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"strings"

	"pressworth/catalog"
)

// Style reads a style with the prices in force today.
func (s *Store) Style(ctx context.Context, id int64) (catalog.Style, error) {
	return s.styleOn(ctx, id, s.today())
}

const styleColumns = `SELECT s.id, s.supplier_id, u.key, s.number, s.name, s.mill, s.category, s.fabric, s.weight, s.tags, s.heat_limit,
	s.caution, s.handling, s.clothing, s.usual, s.retired, s.printable FROM style s JOIN supplier u ON u.id = s.supplier_id`

func scanStyle(r *sql.Rows) (x catalog.Style, err error) {
	var clothing bool
	err = r.Scan(&x.ID, &x.SupplierID, &x.Supplier, &x.Number, &x.Name, &x.Mill, &x.Category, &x.Fabric, text(&x.Weight), jsonOf{&x.Tags},
		&x.HeatLimit, &x.Caution, numberOrNull{&x.Handling}, &clothing, &x.Usual, &x.Retired, jsonOf{&x.Printable})
	x.NotClothing = !clothing
	return x, err
}

func (s *Store) styleOn(ctx context.Context, id int64, on string) (catalog.Style, error) {
	x, err := one(ctx, s.read, scanStyle, styleColumns+" WHERE s.id = ?", id)
	if err != nil {
		return x, fmt.Errorf("style %d: %w", id, err)
	}
	if x.Colors, err = rows(ctx, s.read, scanColor, "SELECT name, hex, shade, sizes, retired FROM color WHERE style_id = ? ORDER BY pos", id); err != nil {
		return x, fmt.Errorf("colours of style %d: %w", id, err)
	}
	entries, err := s.Prices(ctx, id)
	if err != nil {
		return x, err
	}
	whole, err := s.lastWhole(ctx, x.SupplierID, on)
	if err != nil {
		return x, err
	}
	x.SetPrices(catalog.InForce(entries, on), whole)
	return x, nil
}

func scanColor(r *sql.Rows) (c catalog.Color, err error) {
	var sizes string
	err = r.Scan(&c.Name, &c.Hex, &c.Shade, &sizes, &c.Retired)
	if sizes != "" {
		c.Sizes = strings.Fields(sizes)
	}
	return c, err
}

// Prices reads every price entry a style ever had, in the order they were made.
func (s *Store) Prices(ctx context.Context, style int64) ([]catalog.Price, error) {
	all, err := rows(ctx, s.read, scanPrice, priceColumns+" WHERE p.style_id = ? ORDER BY p.seq", style)
	if err != nil {
		return nil, fmt.Errorf("prices of style %d: %w", style, err)
	}
	return all, nil
}

const priceColumns = `SELECT p.style_id, p.seq, p.color, p.size, p.kind, p.breaks, p.valid_from, p.valid_to, f.id, f.supplier_id, f.name, f.source,
	f.valid_from, f.taken_at FROM price p JOIN price_file f ON f.id = p.file_id`

func scanPrice(r *sql.Rows) (p catalog.Price, err error) {
	var breaks string
	err = r.Scan(&p.StyleID, &p.Seq, &p.Color, &p.Size, &p.Kind, &breaks, &p.From, &p.Until, &p.File.ID, &p.File.SupplierID, &p.File.Name,
		&p.File.Source, &p.File.ValidFrom, &p.File.TakenAt)
	if err != nil {
		return p, err
	}
	p.Each, err = catalog.ReadBreaks(breaks)
	return p, err
}

// lastWhole is the day of the last price file, valid on a day, that listed all the supplier has; empty for none.
func (s *Store) lastWhole(ctx context.Context, supplier int64, on string) (day string, err error) {
	err = s.read.QueryRowContext(ctx, `SELECT coalesce(max(valid_from), '') FROM price_file
		WHERE supplier_id = ? AND whole = 1 AND undone = 0 AND valid_from <= ?`, supplier, on).Scan(&day)
	return day, err
}

// Book reads what Freeze needs beside a draft: the prices in force on a day.
func (s *Store) Book(ctx context.Context, d catalog.Draft, on string) (b catalog.Book, err error) {
	if b.Shop, err = s.Shop(ctx); err != nil {
		return b, err
	}
	if b.Suppliers, err = s.Suppliers(ctx); err != nil {
		return b, err
	}
	if b.Cards, err = s.RateCards(ctx, on); err != nil {
		return b, err
	}
	if b.Lettering, err = s.Lettering(ctx); err != nil {
		return b, err
	}
	times, err := s.Times(ctx)
	if err != nil {
		return b, err
	}
	b.Times = &times
	b.Styles = make(map[int64]catalog.Style)
	for _, g := range d.Garments {
		if g.StyleID == 0 || b.Styles[g.StyleID].ID != 0 {
			continue
		}
		x, err := s.styleOn(ctx, g.StyleID, on)
		if errors.Is(err, ErrNotFound) {
			continue // Freeze says so beside the garment
		}
		if err != nil {
			return b, err
		}
		b.Styles[x.ID] = x
	}
	return b, nil
}
