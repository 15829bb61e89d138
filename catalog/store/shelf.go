package store

import (
	"context"
	"database/sql"
	"fmt"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
)

const shelfColumns = "id, kind, qty, since, from_quote, note, supplier, style, color, size, coalesce(customer_id, 0), name, width, height, inks, card"

func scanShelf(r *sql.Rows) (x catalog.ShelfItem, err error) {
	return x, r.Scan(&x.ID, &x.Kind, &x.Qty, &x.On, &x.From, &x.Note, &x.Supplier, &x.Style, &x.Color, &x.Size, &x.CustomerID, &x.Name,
		&x.Width, &x.Height, &x.Inks, &x.Card)
}

// Shelf lists what is left over and kept, blanks first.
func (s *Store) Shelf(ctx context.Context) ([]catalog.ShelfItem, error) {
	all, err := rows(ctx, s.read, scanShelf, "SELECT "+shelfColumns+" FROM shelf WHERE qty > 0 ORDER BY kind, style, color, id")
	if err != nil {
		return nil, fmt.Errorf("shelf: %w", err)
	}
	return all, nil
}

// SaveShelfItem keeps a thing on the shelf; a new one gets its id.
func (s *Store) SaveShelfItem(ctx context.Context, x catalog.ShelfItem) (catalog.ShelfItem, error) {
	if p := x.Check(); len(p) > 0 {
		return x, quote.Problems(p)
	}
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		s.keepOnShelf(&w, &x)
		return w.err
	})
	if err != nil {
		return x, fmt.Errorf("shelf: %w", err)
	}
	return x, nil
}

func (s *Store) keepOnShelf(w *writer, x *catalog.ShelfItem) {
	if x.On == "" {
		x.On = s.today()
	}
	if x.ID == 0 {
		x.ID = w.do("INSERT INTO shelf (kind, qty, since, from_quote, note, supplier, style, color, size, name, width, height, inks, card)" +
			" VALUES ('blank', 0, '', '', '', '', '', '', '', '', '', '', '', '')")
	}
	w.do(`UPDATE shelf SET kind = ?, qty = ?, since = ?, from_quote = ?, note = ?, supplier = ?, style = ?, color = ?, size = ?, customer_id = ?,
		name = ?, width = ?, height = ?, inks = ?, card = ? WHERE id = ?`, x.Kind, x.Qty, x.On, x.From, x.Note, x.Supplier, x.Style, x.Color, x.Size,
		nullable(x.CustomerID), x.Name, x.Width, x.Height, x.Inks, x.Card, x.ID)
}

// RemoveShelfItem takes a thing off the shelf for good.
func (s *Store) RemoveShelfItem(ctx context.Context, id int64) error {
	return s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		w.do("DELETE FROM shelf WHERE id = ?", id)
		return w.err
	})
}

// UseFromShelf takes n of a thing off the shelf for an accepted quote, which then needs so many fewer bought, and gives
// the way back.
func (s *Store) UseFromShelf(ctx context.Context, itemID, quoteID int64, n int) (back func(context.Context) error, err error) {
	var bought []need
	taken := fmt.Sprintf("%d from the shelf", n)
	err = s.book(ctx, quoteID, func(w *writer) {
		x, err := one(w.ctx, w.tx, scanShelf, "SELECT "+shelfColumns+" FROM shelf WHERE id = ?", itemID)
		w.fail(err)
		if w.err == nil && (n < 1 || n > x.Qty) {
			w.fail(quote.Problems{{Path: "qty", Problem: fmt.Sprintf("enter 1 to %d: so many are on the shelf", x.Qty)}})
		}
		w.do("UPDATE shelf SET qty = qty - ? WHERE id = ?", n, itemID)
		bought = wanted(w, x, quoteID)
		for _, p := range bought {
			w.do("UPDATE purchase SET needed = ?, note = ? WHERE id = ?", max(p.needed-n, 0), taken, p.id)
		}
	})
	return func(ctx context.Context) error {
		return s.book(ctx, quoteID, func(w *writer) {
			if w.count("SELECT count(*) FROM shelf WHERE id = ?", itemID) == 0 {
				w.fail(fmt.Errorf("shelf: %w", ErrNotFound))
			}
			w.do("UPDATE shelf SET qty = qty + ? WHERE id = ?", n, itemID)
			for _, p := range bought { // what was noted since stays
				w.do("UPDATE purchase SET needed = ? WHERE id = ?", p.needed, p.id)
				w.do("UPDATE purchase SET note = ? WHERE id = ? AND note = ?", p.note, p.id, taken)
			}
		})
	}, err
}

// need is what a quote is to buy of a thing.
type need struct {
	id     int64
	needed int
	note   string
}

// wanted is what a quote buys of a thing on the shelf.
func wanted(w *writer, x catalog.ShelfItem, quoteID int64) []need {
	which := "kind = 'blank' AND supplier = ? AND style = ? COLLATE NOCASE AND color = ? COLLATE NOCASE AND size = ? COLLATE NOCASE"
	args := []any{quoteID, x.Supplier, x.Style, x.Color, x.Size}
	if x.Kind == catalog.ShelfTransfer {
		which, args = "kind = 'transfer' AND card = ? AND what = ? COLLATE NOCASE", []any{quoteID, x.Card, x.Name}
	}
	if w.err != nil {
		return nil
	}
	all, err := rows(w.ctx, w.tx, func(r *sql.Rows) (p need, err error) { return p, r.Scan(&p.id, &p.needed, &p.note) },
		"SELECT id, needed, note FROM purchase WHERE quote_id = ? AND "+which, args...)
	w.fail(err)
	return all
}

// ShelfOffers are the things on the shelf that a draft could use: blanks of the same style, colour and size, and
// transfers of the same customer's artwork by the same name and size.
func (s *Store) ShelfOffers(ctx context.Context, d catalog.Draft) ([]catalog.ShelfOffer, error) {
	items, err := s.Shelf(ctx)
	if err != nil || len(items) == 0 {
		return nil, err
	}
	var ids []int64
	for _, g := range d.Garments {
		ids = append(ids, g.StyleID)
	}
	styles, err := rows(ctx, s.read, func(r *sql.Rows) (x catalog.Style, err error) { return x, r.Scan(&x.ID, &x.Number, &x.Supplier) },
		"SELECT s.id, s.number, u.key FROM json_each(?) j JOIN style s ON s.id = j.value JOIN supplier u ON u.id = s.supplier_id", jsonIDs(ids))
	if err != nil {
		return nil, fmt.Errorf("shelf: %w", err)
	}
	byID := make(map[int64]catalog.Style)
	for _, x := range styles {
		byID[x.ID] = x
	}
	var out []catalog.ShelfOffer
	for _, x := range items {
		out = append(out, offersOf(x, d, byID)...)
	}
	return out, nil
}

func offersOf(x catalog.ShelfItem, d catalog.Draft, styles map[int64]catalog.Style) (out []catalog.ShelfOffer) {
	if x.Kind == catalog.ShelfTransfer {
		return transferOffers(x, d)
	}
	for i, g := range d.Garments {
		y := styles[g.StyleID]
		if g.FromCustomer || y.Supplier != x.Supplier || !strings.EqualFold(y.Number, x.Style) || !strings.EqualFold(g.Color, x.Color) {
			continue
		}
		for k, z := range g.Sizes {
			qty, _ := strconv.Atoi(strings.TrimSpace(z.Qty))
			if use := min(qty, x.Qty); use > 0 && strings.EqualFold(z.Size, x.Size) {
				out = append(out, catalog.ShelfOffer{
					Item: x, Path: fmt.Sprintf("garments[%d].sizes[%d]", i, k), Use: use,
					Text: fmt.Sprintf("%d of %s %s %s on the shelf", x.Qty, x.Style, x.Color, x.Size),
				})
			}
		}
	}
	return out
}

func transferOffers(x catalog.ShelfItem, d catalog.Draft) (out []catalog.ShelfOffer) {
	if x.CustomerID != d.Customer.ID || x.CustomerID == 0 {
		return nil
	}
	for i, p := range d.Placements {
		if !strings.EqualFold(strings.TrimSpace(p.Name), x.Name) || !sameSize(p, x) {
			continue
		}
		if use := min(x.Qty, d.Pieces()); use > 0 {
			out = append(out, catalog.ShelfOffer{
				Item: x, Path: fmt.Sprintf("placements[%d]", i), Use: use,
				Text: fmt.Sprintf("%d transfers %s × %s on the shelf from quote %s", x.Qty, x.Width, x.Height, x.From),
			})
		}
	}
	return out
}

// sameSize compares inches as they were typed, whatever zeros stand behind the point.
func sameSize(p catalog.DraftPlacement, x catalog.ShelfItem) bool {
	same := func(a, b string) bool {
		x, errA := strconv.ParseFloat(strings.TrimSpace(a), 64)
		y, errB := strconv.ParseFloat(strings.TrimSpace(b), 64)
		return strings.TrimSpace(a) == strings.TrimSpace(b) || errA == nil && errB == nil && x == y
	}
	return same(p.Width, x.Width) && same(p.Height, x.Height)
}
