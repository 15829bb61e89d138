package present

import (
	"fmt"
	"strings"

	"pressworth/catalog"
)

func (c *Counter) form(v *View) Form {
	d := c.draft
	f := Form{
		Customer: d.Customer, Title: d.Title, NeededBy: ShowDate(d.NeededBy, c.shop.Now()), Away: away(d.NeededBy, c.shop.Now()),
		Level: d.Level, Exempt: d.TaxExempt, Pieces: figures(d.Pieces(), "piece"),
		ArtMinutes: d.ArtMinutes, ArtCharge: d.ArtCharge, Rush: d.RushPercent, Off: d.Discount,
		DelivCost: d.DeliveryCost, DelivPrice: d.DeliveryCharge, Ladder: d.Ladder, Notes: d.Notes,
		Blocks: c.blocks(v), Artwork: c.artwork(v), Extras: c.extras(v), Roster: c.roster(),
	}
	if d.DiscountPercent != "" {
		f.Off = d.DiscountPercent + " %"
	}
	for _, l := range c.book.Shop.Levels {
		f.Levels = append(f.Levels, l.Name)
	}
	if f.Level == "" && len(f.Levels) > 0 {
		f.Level = f.Levels[0]
	}
	return f
}

// blocks gathers the garment lines by style.
func (c *Counter) blocks(v *View) []Block {
	var out []Block
	for i, g := range c.draft.Garments {
		n := len(out)
		if n == 0 || g.StyleID == 0 || out[n-1].StyleID != g.StyleID {
			out = append(out, c.block(g))
			n++
		}
		b := &out[n-1]
		for _, s := range g.Sizes {
			b.Sizes = addSize(b.Sizes, s.Size)
		}
		b.Rows = append(b.Rows, c.blockRow(v, i, g))
	}
	for i := range out {
		out[i].align()
		out[i].Note = c.blockNote(out[i])
	}
	return out
}

func addSize(run []string, size string) []string {
	for _, s := range run {
		if s == size {
			return run
		}
	}
	return append(run, size)
}

func (c *Counter) block(g catalog.DraftGarment) Block {
	s, ok := c.book.Styles[g.StyleID]
	if g.StyleID == 0 || !ok {
		return Block{StyleID: g.StyleID, Name: "Customer's own", Own: g.FromCustomer}
	}
	return Block{StyleID: s.ID, Number: s.Number, Name: s.Name, Colors: s.Colors}
}

func (c *Counter) blockRow(v *View, i int, g catalog.DraftGarment) BlockRow {
	r := BlockRow{Key: g.Key, Path: garmentPath(i), Color: g.Color}
	if g.FromCustomer {
		r.Own, r.Color = g, g.Name
	}
	color := colorOf(c.book.Styles[g.StyleID], g.Color)
	r.Hex = color.Hex
	total := 0
	for j, s := range g.Sizes {
		cell := Cell{Size: s.Size, Qty: s.Qty, Absent: color.Sizes != nil && !contains(color.Sizes, s.Size)}
		cell.Problem = v.ProblemWithin(fmt.Sprintf("%s.sizes[%d].", r.Path, j))
		r.Cells = append(r.Cells, cell)
		total += pieces(s.Qty)
	}
	r.Total = quantity(total)
	r.Problem = c.rowProblems[g.Key]
	if r.Problem == "" {
		r.Problem = v.lineProblem(r.Path)
	}
	return r
}

// align gives every row of the block a cell for every size of the block, in the block's order.
func (b *Block) align() {
	for i := range b.Rows {
		cells := make([]Cell, len(b.Sizes))
		for j, size := range b.Sizes {
			cells[j] = Cell{Size: size}
			for _, have := range b.Rows[i].Cells {
				if have.Size == size {
					cells[j] = have
				}
			}
		}
		b.Rows[i].Cells = cells
	}
}

// blockNote says that the colours of one style share a price, where they do.
func (c *Counter) blockNote(b Block) string {
	if len(b.Rows) < 2 || !c.priced {
		return ""
	}
	first := c.groupOf(b.Rows[0].Key)
	for _, r := range b.Rows[1:] {
		if !contains(first, r.Key) {
			return ""
		}
	}
	if len(b.Rows) == 2 {
		return "one price for both colours"
	}
	return fmt.Sprintf("one price for all %s colours", number(len(b.Rows)))
}

func (c *Counter) extras(v *View) []ExtraRow {
	var out []ExtraRow
	for i, e := range c.draft.Extras {
		r := ExtraRow{Key: e.Key, Path: extraPath(i), Name: e.Name, Unit: "each", Charge: e.Charge}
		if e.PerOrder {
			r.Unit = "once"
		}
		r.Problem = v.ProblemWithin(r.Path + ".")
		out = append(out, r)
	}
	return out
}

func colorOf(s catalog.Style, name string) catalog.Color {
	for _, c := range s.Colors {
		if c.Name == name {
			return c
		}
	}
	return catalog.Color{Name: name}
}

// pieces counts what a cell holds, as far as it is a quantity.
func pieces(text string) int {
	return catalog.Draft{Garments: []catalog.DraftGarment{{Sizes: []catalog.DraftSize{{Qty: text}}}}}.Pieces()
}

func contains(all []string, one string) bool {
	for _, s := range all {
		if s == one {
			return true
		}
	}
	return false
}

// ColorsLeft are the colours of a style that the draft does not have yet.
func (c *Counter) ColorsLeft(styleID int64) []catalog.Color {
	var out []catalog.Color
	for _, k := range c.book.Styles[styleID].Colors {
		taken := false
		for _, g := range c.draft.Garments {
			taken = taken || g.StyleID == styleID && strings.EqualFold(g.Color, k.Name)
		}
		if !taken && !k.Retired {
			out = append(out, k)
		}
	}
	return out
}
