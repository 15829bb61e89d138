package store

import (
	"context"
	"database/sql"
	"fmt"
	"strings"

	"pressworth/catalog"
)

// Listing is the catalog in rows, a style in a colour each, my usual first. It holds only which rows there are; what
// stands in them is read when they are shown.
type Listing struct {
	s    *Store
	keys []rowKey
}

// rowKey is a style with the place of a colour in it, -1 for a style without colours.
type rowKey struct {
	style int64
	pos   int32
}

// List finds the rows that a filter lets through.
func (s *Store) List(ctx context.Context, f catalog.StyleFilter) (*Listing, error) {
	l := &Listing{s: s}
	query, err := s.blankQuery(ctx, f.Words)
	if err != nil {
		return nil, fmt.Errorf("list blanks: %w", err)
	}
	if query == "" && len(tokens(f.Words)) > 0 {
		return l, nil
	}
	for _, usual := range []int{1, 0} {
		where, args := conditions(f, query)
		keys, err := rows(ctx, s.read, func(r *sql.Rows) (k rowKey, err error) { return k, r.Scan(&k.style, &k.pos) },
			`SELECT s.id, coalesce(c.pos, -1) FROM style s LEFT JOIN color c ON c.style_id = s.id AND c.retired = 0
			WHERE s.usual = ?`+where+" ORDER BY s.id, c.pos", append([]any{usual}, args...)...)
		if err != nil {
			return nil, fmt.Errorf("list blanks: %w", err)
		}
		l.keys = append(l.keys, keys...)
	}
	if f.AtMost != nil || f.Size != "" {
		if err := l.keep(ctx, f); err != nil {
			return nil, fmt.Errorf("list blanks: %w", err)
		}
	}
	return l, nil
}

func conditions(f catalog.StyleFilter, query string) (where string, args []any) {
	var b strings.Builder
	b.WriteString(" AND s.retired = ?")
	args = append(args, f.Retired)
	add := func(condition string, arg any) {
		b.WriteString(" AND " + condition)
		args = append(args, arg)
	}
	if query != "" {
		add("s.id IN (SELECT rowid FROM style_words WHERE style_words MATCH ?)", query)
	}
	if f.SupplierID != 0 {
		add("s.supplier_id = ?", f.SupplierID)
	}
	if f.Category != "" {
		add("s.category = ?", f.Category)
	}
	if f.Shade != "" {
		add("c.shade = ?", f.Shade)
	}
	if f.Size != "" {
		add("EXISTS (SELECT 1 FROM price p WHERE p.style_id = s.id AND p.size = ? AND p.kind <> 'gone')", f.Size)
	}
	return b.String(), args
}

// keep looks at the prices in force, which decide about a size and a price.
func (l *Listing) keep(ctx context.Context, f catalog.StyleFilter) error {
	kept := l.keys[:0]
	for from := 0; from < len(l.keys); from += atOnce {
		part := l.keys[from:min(from+atOnce, len(l.keys))]
		styles, err := l.s.priced(ctx, stylesIn(part), l.s.today())
		if err != nil {
			return err
		}
		for _, k := range part {
			x := styles[k.style]
			if f.AtMost != nil && (len(x.Sizes)+len(x.ByColor) == 0 || x.From().Cmp(*f.AtMost) > 0) {
				continue
			}
			if f.Size != "" && x.EachOf(colorAt(x, k.pos).Name, f.Size) == nil {
				continue
			}
			kept = append(kept, k)
		}
	}
	l.keys = kept
	return nil
}

func stylesIn(keys []rowKey) []int64 {
	var ids []int64
	for i, k := range keys {
		if i == 0 || keys[i-1].style != k.style {
			ids = append(ids, k.style)
		}
	}
	return ids
}

// colorAt finds a colour by its place, the zero colour where the style has none.
func colorAt(x catalog.Style, pos int32) catalog.Color {
	for i, p := range x.ColorPlaces {
		if p == int(pos) {
			return x.Colors[i]
		}
	}
	return catalog.Color{}
}

// Len is the number of rows.
func (l *Listing) Len() int { return len(l.keys) }

// Rows reads n rows from the given one on, fewer at the end.
func (l *Listing) Rows(ctx context.Context, from, n int) ([]catalog.StyleRow, error) {
	from = min(max(from, 0), len(l.keys))
	part := l.keys[from:min(from+max(n, 0), len(l.keys))]
	ids := stylesIn(part)
	heads, err := l.s.heads(ctx, ids)
	if err != nil {
		return nil, err
	}
	styles, err := l.s.priced(ctx, ids, l.s.today())
	if err != nil {
		return nil, err
	}
	at := make(map[int64]catalog.StyleRow, len(heads))
	for _, h := range heads {
		h.fill(styles[h.StyleID])
		at[h.StyleID] = h.StyleRow
	}
	out := make([]catalog.StyleRow, 0, len(part))
	for _, k := range part {
		r := at[k.style]
		if c := colorAt(styles[k.style], k.pos); c.Name != "" {
			r.Color, r.Colors = c, 1
		}
		out = append(out, r)
	}
	return out, nil
}
