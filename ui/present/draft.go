package present

import (
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
)

// clone copies a draft so deep that the copy can be changed.
func clone(d catalog.Draft) catalog.Draft {
	d.Garments = slices.Clone(d.Garments)
	for i := range d.Garments {
		d.Garments[i].Sizes = slices.Clone(d.Garments[i].Sizes)
	}
	d.Placements = slices.Clone(d.Placements)
	for i := range d.Placements {
		p := &d.Placements[i]
		p.On, p.Variants, p.Texts = slices.Clone(p.On), slices.Clone(p.Variants), slices.Clone(p.Texts)
	}
	d.Roster = slices.Clone(d.Roster)
	d.Extras = slices.Clone(d.Extras)
	for i := range d.Extras {
		d.Extras[i].On = slices.Clone(d.Extras[i].On)
	}
	return d
}

func styleIDs(d catalog.Draft) []int64 {
	var ids []int64
	for _, g := range d.Garments {
		if g.StyleID != 0 && !slices.Contains(ids, g.StyleID) {
			ids = append(ids, g.StyleID)
		}
	}
	return ids
}

// freshKey is a key with the prefix that none of the keys has.
func freshKey(prefix string, keys []string) string {
	high := 0
	for _, k := range keys {
		if n, err := strconv.Atoi(strings.TrimPrefix(k, prefix)); err == nil {
			high = max(high, n)
		}
	}
	return prefix + strconv.Itoa(high+1)
}

func garmentKeys(d catalog.Draft) []string {
	keys := make([]string, len(d.Garments))
	for i, g := range d.Garments {
		keys[i] = g.Key
	}
	return keys
}

func placementKeys(d catalog.Draft) []string {
	keys := make([]string, len(d.Placements))
	for i, p := range d.Placements {
		keys[i] = p.Key
	}
	return keys
}

func garmentAt(d *catalog.Draft, key string) *catalog.DraftGarment {
	for i := range d.Garments {
		if d.Garments[i].Key == key {
			return &d.Garments[i]
		}
	}
	return nil
}

func placementAt(d *catalog.Draft, key string) *catalog.DraftPlacement {
	for i := range d.Placements {
		if d.Placements[i].Key == key {
			return &d.Placements[i]
		}
	}
	return nil
}

func extraAt(d *catalog.Draft, key string) *catalog.DraftExtra {
	for i := range d.Extras {
		if d.Extras[i].Key == key {
			return &d.Extras[i]
		}
	}
	return nil
}

// withAllSizes gives every line of a style a cell for each of the style's sizes, in the style's order; quantities of
// sizes that the style has no more stay, at the end.
func (c *Counter) withAllSizes(d catalog.Draft) catalog.Draft {
	d = clone(d)
	for i := range d.Garments {
		g := &d.Garments[i]
		style, ok := c.book.Styles[g.StyleID]
		if g.StyleID == 0 || !ok {
			continue
		}
		typed := g.Sizes
		g.Sizes = make([]catalog.DraftSize, 0, len(style.Sizes))
		for _, s := range style.Sizes {
			g.Sizes = append(g.Sizes, catalog.DraftSize{Size: s.Size, Qty: qtyOf(typed, s.Size)})
		}
		for _, s := range typed {
			if s.Qty != "" && !hasSize(style, s.Size) {
				g.Sizes = append(g.Sizes, s)
			}
		}
	}
	return d
}

func qtyOf(sizes []catalog.DraftSize, size string) string {
	for _, s := range sizes {
		if s.Size == size {
			return s.Qty
		}
	}
	return ""
}

func hasSize(style catalog.Style, size string) bool {
	return slices.ContainsFunc(style.Sizes, func(s catalog.StyleSize) bool { return s.Size == size })
}
