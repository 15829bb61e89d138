package store

import (
	"context"
	"database/sql"
	"strings"

	"pressworth/catalog"
)

// oldStyle is a style of the catalog as an import finds it.
type oldStyle struct {
	id      int64
	number  string
	attrs   oldAttrs
	edits   int
	retired bool
	said    int64
	colors  []oldColor
	list    map[listAt]string // list prices as they stand, by colour ("": every one) and size; "" where gone
	sales   map[listAt]oldSale
}

// oldAttrs is what an import may change about a style, and what undoing gives back.
type oldAttrs struct {
	Name, Mill, Category, Fabric, Weight, HeatLimit string
}

type oldColor struct {
	pos     int
	name    string
	sizes   string
	retired bool
}

type listAt struct{ color, size string }

type oldSale struct{ breaks, until string }

func (s *Store) oldStyles(ctx context.Context, ids []int64) (map[int64]*oldStyle, error) {
	list := jsonIDs(ids)
	olds := make(map[int64]*oldStyle, len(ids))
	_, err := rows(ctx, s.read, func(r *sql.Rows) (struct{}, error) {
		o := &oldStyle{list: make(map[listAt]string), sales: make(map[listAt]oldSale)}
		err := r.Scan(&o.id, &o.number, &o.attrs.Name, &o.attrs.Mill, &o.attrs.Category, &o.attrs.Fabric, &o.attrs.Weight, &o.attrs.HeatLimit,
			&o.edits, &o.retired, &o.said)
		olds[o.id] = o
		return struct{}{}, err
	}, `SELECT s.id, s.number, s.name, s.mill, s.category, s.fabric, s.weight, s.heat_limit, s.edits, s.retired, s.said
		FROM json_each(?) j JOIN style s ON s.id = j.value`, list)
	if err != nil {
		return nil, err
	}
	_, err = rows(ctx, s.read, func(r *sql.Rows) (struct{}, error) {
		var id int64
		var c oldColor
		err := r.Scan(&id, &c.pos, &c.name, &c.sizes, &c.retired)
		olds[id].colors = append(olds[id].colors, c)
		return struct{}{}, err
	}, "SELECT c.style_id, c.pos, c.name, c.sizes, c.retired FROM json_each(?) j JOIN color c ON c.style_id = j.value", list)
	if err != nil {
		return nil, err
	}
	_, err = rows(ctx, s.read, func(r *sql.Rows) (struct{}, error) {
		var id int64
		var at listAt
		var kind, breaks, until string
		err := r.Scan(&id, &at.color, &at.size, &kind, &breaks, &until)
		switch kind {
		case catalog.ListPrice, catalog.GonePrice:
			olds[id].list[at] = breaks
		case catalog.SalePrice:
			olds[id].sales[at] = oldSale{breaks, until}
		}
		return struct{}{}, err
	}, `SELECT p.style_id, p.color, p.size, p.kind, p.breaks, p.valid_to FROM json_each(?) j JOIN price p ON p.style_id = j.value
		ORDER BY p.style_id, p.valid_from, p.seq`, list)
	return olds, err
}

// price is the list price of a size in a colour; "" where it is not listed.
func (o *oldStyle) price(color, size string) string {
	if own := o.list[listAt{color, size}]; own != "" {
		return own
	}
	return o.list[listAt{"", size}]
}

// cells calls each with every size in every colour that is listed.
func (o *oldStyle) cells(each func(color, size, price string)) {
	if o.retired {
		return
	}
	colors := o.colors
	if len(colors) == 0 {
		colors = []oldColor{{}}
	}
	sizes := o.sizes()
	for _, c := range colors {
		if c.retired {
			continue
		}
		for _, size := range sizes {
			if c.sizes != "" && !hasWord(c.sizes, size) {
				continue
			}
			if p := o.price(c.name, size); p != "" {
				each(c.name, size, p)
			}
		}
	}
}

func (o *oldStyle) sizes() []string {
	seen := make(map[string]bool)
	var all []string
	for at := range o.list {
		if !seen[at.size] {
			seen[at.size] = true
			all = append(all, at.size)
		}
	}
	return all
}

func hasWord(list, word string) bool {
	for w := range strings.FieldsSeq(list) {
		if w == word {
			return true
		}
	}
	return false
}
