package store

import (
	"context"
	"database/sql"
	"strings"

	"pressworth/catalog"
)

// withPrices fills in colours, sizes and prices of found styles, and divides those found by a colour.
func (s *Store) withPrices(ctx context.Context, found []catalog.StyleRow, words []string) ([]catalog.StyleRow, error) {
	ids := make([]int64, len(found))
	for i, r := range found {
		ids[i] = r.StyleID
	}
	styles, err := s.priced(ctx, ids, s.today())
	if err != nil {
		return nil, err
	}
	var out []catalog.StyleRow
	for _, r := range found {
		x := styles[r.StyleID]
		h := hit{StyleRow: r}
		h.fill(x)
		out = append(out, byColor(h.StyleRow, x.Colors, words)...)
	}
	return out, nil
}

// byColor gives one row for each colour that a word is about, and not the style's other words; else the row itself.
func byColor(r catalog.StyleRow, colors []catalog.Color, words []string) []catalog.StyleRow {
	var about []string
	for _, w := range words {
		if !begins(r.Number, w) && !strings.HasPrefix(squeeze(strings.ToLower(r.Number)), w) && !begins(r.Name, w) && !begins(r.Category, w) && !begins(r.Mill, w) {
			about = append(about, w)
		}
	}
	if len(about) == 0 {
		return []catalog.StyleRow{r}
	}
	var out []catalog.StyleRow
	for _, c := range colors {
		if fits(c.Name, about) {
			one := r
			one.Color, one.Colors = c, 1
			out = append(out, one)
		}
	}
	if out == nil { // its words stand in several colours
		return []catalog.StyleRow{r}
	}
	return out
}

func fits(color string, words []string) bool {
	for _, w := range words {
		if !begins(color, w) {
			return false
		}
	}
	return true
}

// priced reads colours and prices in force of several styles at once.
func (s *Store) priced(ctx context.Context, ids []int64, on string) (map[int64]catalog.Style, error) {
	list := jsonIDs(ids)
	styles := make(map[int64]catalog.Style, len(ids))
	type colorOf struct {
		style int64
		pos   int
		sizes string
		catalog.Color
	}
	colors, err := rows(ctx, s.read, func(r *sql.Rows) (c colorOf, err error) {
		return c, r.Scan(&c.style, &c.pos, &c.Name, &c.Hex, &c.Shade, &c.sizes)
	}, "SELECT c.style_id, c.pos, c.name, c.hex, c.shade, c.sizes FROM json_each(?) j JOIN color c ON c.style_id = j.value WHERE c.retired = 0", list)
	if err != nil {
		return nil, err
	}
	for _, c := range colors {
		x := styles[c.style]
		if c.sizes != "" {
			c.Color.Sizes = strings.Fields(c.sizes)
		}
		x.Colors, x.ColorPlaces = append(x.Colors, c.Color), append(x.ColorPlaces, c.pos)
		styles[c.style] = x
	}
	prices, err := rows(ctx, s.read, scanPrice, `SELECT p.style_id, p.seq, p.color, p.size, p.kind, p.breaks, p.valid_from, p.valid_to, f.id,
		f.supplier_id, f.name, f.source, f.valid_from, f.taken_at
		FROM json_each(?) j JOIN price p ON p.style_id = j.value JOIN price_file f ON f.id = p.file_id ORDER BY p.style_id, p.seq`, list)
	if err != nil {
		return nil, err
	}
	whole, err := s.wholeBySupplier(ctx, on)
	if err != nil {
		return nil, err
	}
	for len(prices) > 0 {
		n := 1
		for n < len(prices) && prices[n].StyleID == prices[0].StyleID {
			n++
		}
		x := styles[prices[0].StyleID]
		x.SetPrices(catalog.InForce(prices[:n], on), whole[prices[0].File.SupplierID])
		styles[prices[0].StyleID] = x
		prices = prices[n:]
	}
	return styles, nil
}

// wholeBySupplier is lastWhole for every supplier.
func (s *Store) wholeBySupplier(ctx context.Context, on string) (map[int64]string, error) {
	type day struct {
		supplier int64
		day      string
	}
	days, err := rows(ctx, s.read, func(r *sql.Rows) (d day, err error) { return d, r.Scan(&d.supplier, &d.day) },
		"SELECT supplier_id, max(valid_from) FROM price_file WHERE whole = 1 AND undone = 0 AND valid_from <= ? GROUP BY supplier_id", on)
	out := make(map[int64]string, len(days))
	for _, d := range days {
		out[d.supplier] = d.day
	}
	return out, err
}

// Styles reads a page of the catalog in the order of ids: those after the given one, all colours in one row.
func (s *Store) Styles(ctx context.Context, after int64, limit int) ([]catalog.StyleRow, error) {
	found, err := rows(ctx, s.read, func(r *sql.Rows) (x catalog.StyleRow, err error) {
		return x, r.Scan(&x.StyleID, &x.Supplier, &x.Number, &x.Name, &x.Mill, &x.Category, &x.Usual)
	}, `SELECT s.id, u.name, s.number, s.name, s.mill, s.category, s.usual FROM style s JOIN supplier u ON u.id = s.supplier_id
		WHERE s.id > ? AND s.retired = 0 ORDER BY s.id LIMIT ?`, after, limit)
	if err != nil {
		return nil, err
	}
	return s.withPrices(ctx, found, nil)
}
