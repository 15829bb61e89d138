package present

import (
	"strings"

	"pressworth/quote"
)

// moreColumns is how many sizes with a price of their own get a column.
const moreColumns = 2

func (c *Counter) prices(v *View) PriceTable {
	var t PriceTable
	for _, g := range c.result.Groups {
		if g.Pieces > 0 {
			t.Rows = append(t.Rows, c.priceRow(v, g))
			for _, s := range c.dearer(g) {
				t.Columns = addSize(t.Columns, s.Size)
			}
		}
	}
	wide := len(t.Columns) > moreColumns
	if wide {
		t.Columns = nil
	}
	for i := range t.Rows {
		c.fillSizes(&t, &t.Rows[i], wide)
	}
	return t
}

// fillSizes puts prices that differ by size into the table's columns, or beside the row where they are too many.
func (c *Counter) fillSizes(t *PriceTable, r *PriceRow, wide bool) {
	r.More = make([]string, len(t.Columns))
	var words []string
	for _, g := range c.result.Groups {
		if !contains(g.Lines, r.Key) {
			continue
		}
		for _, s := range c.dearer(g) {
			for i, size := range t.Columns {
				if size == s.Size {
					r.More[i] = Amount(s.UnitPrice)
				}
			}
			words = append(words, s.Size+" "+Amount(s.UnitPrice))
		}
	}
	if wide {
		r.Other = strings.Join(words, " · ")
	}
}

// dearer lists the sizes of a group whose price is not the group's, each size once; only sizes with pieces.
func (c *Counter) dearer(g quote.Group) []quote.SizePrice {
	var out []quote.SizePrice
	seen := map[string]bool{}
	for _, l := range c.result.Garments {
		if !contains(g.Lines, l.ID) {
			continue
		}
		for _, s := range l.Sizes {
			if s.Qty > 0 && s.UnitPrice.Cmp(g.UnitPrice) != 0 && !seen[s.Size] {
				seen[s.Size] = true
				out = append(out, s)
			}
		}
	}
	return out
}

func (c *Counter) priceRow(v *View, g quote.Group) PriceRow {
	r := PriceRow{Key: g.Lines[0], Name: c.groupName(g), Each: g.UnitPrice.String(), CostEach: Amount(g.CostEach)}
	for i, d := range c.draft.Garments {
		if !contains(g.Lines, d.Key) {
			continue
		}
		if d.Price != "" && r.Typed == "" {
			r.Typed, r.Key = d.Price, d.Key
		}
		if p := v.Problem(garmentPath(i) + ".price"); p != "" {
			r.Problem = p
		}
	}
	if g.Typed {
		r.Computed = Amount(g.Computed)
	}
	r.Lines = append(r.Lines, Figure{Name: "price each", Basis: g.Basis, Amount: Amount(g.UnitPrice)})
	for _, s := range c.dearer(g) {
		r.Lines = append(r.Lines, Figure{Name: s.Size, Basis: "blank " + Amount(s.BlankEach), Amount: Amount(s.UnitPrice)})
	}
	return r
}

// groupName is a price group in words: the style's name, with the colour where another group has the same name.
func (c *Counter) groupName(g quote.Group) string {
	name, color := c.styleAndColor(g)
	for _, o := range c.result.Groups {
		if o.ID == g.ID || o.Pieces == 0 {
			continue
		}
		if n, _ := c.styleAndColor(o); n == name && color != "" {
			return name + ", " + color
		}
	}
	return name
}

func (c *Counter) styleAndColor(g quote.Group) (name, color string) {
	for _, l := range c.job.Garments {
		if l.ID == g.Lines[0] {
			return l.Name, l.Color
		}
	}
	return g.ID, ""
}

// groupNoun is what a piece of a group is called in a sentence.
func (c *Counter) groupNoun(g quote.Group) string {
	for _, d := range c.draft.Garments {
		if d.Key == g.Lines[0] {
			return c.nounFor(d)
		}
	}
	name, _ := c.styleAndColor(g)
	return lower(name)
}

func (c *Counter) group(id string) quote.Group {
	for _, g := range c.result.Groups {
		if g.ID == id {
			return g
		}
	}
	return quote.Group{}
}

// nextBreak is what the owner can read out: "26 more and each long sleeve drops 3.00."
func (c *Counter) nextBreak() string {
	d, ok := c.result.NextBreak()
	if !ok {
		return ""
	}
	each := "each"
	if c.groups() > 1 {
		each = "each " + c.groupNoun(c.group(d.Group))
	}
	return Grouped(quantity(d.More)) + " more and " + each + " drops " + Amount(d.Less) + "."
}

// groups counts the price groups that have pieces.
func (c *Counter) groups() int {
	n := 0
	for _, g := range c.result.Groups {
		if g.Pieces > 0 {
			n++
		}
	}
	return n
}
