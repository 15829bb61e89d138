package present

import (
	"slices"
	"strings"

	"pressworth/catalog"
)

// AddGarment puts a style in a colour on the draft, after the other colours of that style, and returns its key. A
// style that is there in that colour already is not added again.
func (c *Counter) AddGarment(styleID int64, color string) string {
	for _, g := range c.draft.Garments {
		if g.StyleID == styleID && g.Color == color && !g.FromCustomer {
			return g.Key
		}
	}
	if _, ok := c.book.Styles[styleID]; !ok {
		c.loadStyle(styleID)
	}
	key := freshKey("g", garmentKeys(c.draft))
	c.edit("", func(d *catalog.Draft) {
		g := catalog.DraftGarment{Key: key, StyleID: styleID, Color: color}
		for _, s := range c.book.Styles[styleID].Sizes {
			g.Sizes = append(g.Sizes, catalog.DraftSize{Size: s.Size})
		}
		joinArtwork(d, styleID, key)
		d.Garments = slices.Insert(d.Garments, placeFor(*d, styleID), g)
	})
	return key
}

// AddOwnGarment puts a garment the customer brings on the draft and returns its key.
func (c *Counter) AddOwnGarment(name string) string {
	key := freshKey("g", garmentKeys(c.draft))
	c.edit("", func(d *catalog.Draft) {
		g := catalog.DraftGarment{Key: key, FromCustomer: true, Name: name, Shade: "light"}
		for _, s := range ownSizes {
			g.Sizes = append(g.Sizes, catalog.DraftSize{Size: s})
		}
		d.Garments = append(d.Garments, g)
	})
	return key
}

// ownSizes are the size cells of a garment that no catalog knows; further sizes come in by shorthand.
var ownSizes = []string{"S", "M", "L", "XL", "2XL", "OS"}

// RemoveGarment takes a line off the draft and off the artwork that was on it.
func (c *Counter) RemoveGarment(key string) {
	c.edit("", func(d *catalog.Draft) {
		d.Garments = slices.DeleteFunc(d.Garments, func(g catalog.DraftGarment) bool { return g.Key == key })
		for i := range d.Placements {
			d.Placements[i].On = without(d.Placements[i].On, key)
		}
		for i := range d.Extras {
			d.Extras[i].On = without(d.Extras[i].On, key)
		}
	})
}

// SetColor changes the colour of a line.
func (c *Counter) SetColor(key, color string) {
	c.garment("", key, func(g *catalog.DraftGarment) { g.Color = color })
}

// SetSize takes the quantity typed for one size of a line.
func (c *Counter) SetSize(key, size, qty string) {
	c.garment("size "+key+size, key, func(g *catalog.DraftGarment) { setSize(g, size, strings.TrimSpace(qty)) })
}

// SetPrice takes the price each typed for the line's price group; empty: the computed price.
func (c *Counter) SetPrice(key, price string) {
	c.edit("price "+key, func(d *catalog.Draft) {
		for _, k := range c.groupOf(key) {
			if g := garmentAt(d, k); g != nil {
				g.Price = ""
			}
		}
		if g := garmentAt(d, key); g != nil {
			g.Price = strings.TrimSpace(price)
		}
	})
}

// SetOwn describes a customer's own garment: of own its name, shade, tags and declared worth each are taken.
func (c *Counter) SetOwn(key string, own catalog.DraftGarment) {
	c.garment("own "+key, key, func(g *catalog.DraftGarment) {
		g.Name, g.Shade, g.Tags, g.ValueEach = own.Name, own.Shade, own.Tags, strings.TrimSpace(own.ValueEach)
	})
}

func (c *Counter) garment(path, key string, change func(g *catalog.DraftGarment)) {
	c.edit(path, func(d *catalog.Draft) {
		if g := garmentAt(d, key); g != nil {
			change(g)
		}
	})
}

// groupOf lists the lines of the line's price group, as the engine grouped them last.
func (c *Counter) groupOf(key string) []string {
	for _, g := range c.result.Groups {
		if slices.Contains(g.Lines, key) {
			return g.Lines
		}
	}
	return []string{key}
}

// loadStyle takes a book that holds the style too.
func (c *Counter) loadStyle(id int64) {
	book, err := c.shop.Book(append(styleIDs(c.draft), id), c.draft.QuotedOn)
	if c.bookErr = err; err == nil {
		c.book = book
	}
}

func setSize(g *catalog.DraftGarment, size, qty string) {
	for i := range g.Sizes {
		if g.Sizes[i].Size == size {
			g.Sizes[i].Qty = qty
			return
		}
	}
	g.Sizes = append(g.Sizes, catalog.DraftSize{Size: size, Qty: qty})
}

// placeFor is where a line of the style goes: after the last line of that style, or at the end.
func placeFor(d catalog.Draft, styleID int64) int {
	for i := len(d.Garments) - 1; i >= 0; i-- {
		if d.Garments[i].StyleID == styleID && !d.Garments[i].FromCustomer {
			return i + 1
		}
	}
	return len(d.Garments)
}

// joinArtwork puts a new colour of a style on the artwork that is on every other colour of it.
func joinArtwork(d *catalog.Draft, styleID int64, key string) {
	var others []string
	for _, g := range d.Garments {
		if g.StyleID == styleID && !g.FromCustomer {
			others = append(others, g.Key)
		}
	}
	for i := range d.Placements {
		p := &d.Placements[i]
		if p.On != nil && len(others) > 0 && containsAll(p.On, others) {
			p.On = append(p.On, key)
		}
	}
}

func containsAll(have, want []string) bool {
	for _, w := range want {
		if !slices.Contains(have, w) {
			return false
		}
	}
	return true
}

// without drops a key from a list; nil, which means every garment, stays nil, and a list that runs empty stays a list.
func without(keys []string, key string) []string {
	if keys == nil {
		return nil
	}
	return slices.DeleteFunc(slices.Clone(keys), func(k string) bool { return k == key })
}
