package catalog

import (
	"fmt"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

func (f *freezer) garments() []quote.Garment {
	if len(f.draft.Garments) == 0 {
		f.say("garments", "add a garment")
		return nil
	}
	before, pieces := len(f.problems), 0
	garments := make([]quote.Garment, len(f.draft.Garments))
	for i, g := range f.draft.Garments {
		garments[i] = f.garment(fmt.Sprintf("garments[%d]", i), g)
		for _, s := range garments[i].Sizes {
			pieces += s.Qty
		}
	}
	if pieces == 0 && len(f.problems) == before {
		f.say("garments[0].sizes", "enter how many pieces of each size")
	}
	return garments
}

func (f *freezer) garment(path string, d DraftGarment) quote.Garment {
	g := quote.Garment{ID: d.Key, FromCustomer: d.FromCustomer}
	style, known := f.book.Styles[d.StyleID]
	switch {
	case d.StyleID == 0:
		f.own(path, d, &g)
	case !known:
		f.say(path+".style", "this garment is not in the catalog any more: choose another")
	default:
		f.fromStyle(path, d, style, &g)
	}
	if d.FromCustomer {
		g.ValueEach = f.amount(path+".value_each", d.ValueEach)
	}
	if strings.TrimSpace(d.Price) != "" {
		price := f.amount(path+".price", d.Price)
		g.Price = &price
	}
	g.Sizes = f.sizes(path, d, style)
	return g
}

// own fills in a customer's own garment. Its name stands for the style, so that different things never share a price.
func (f *freezer) own(path string, d DraftGarment, g *quote.Garment) {
	g.Name, g.Color, g.Shade = strings.TrimSpace(d.Name), strings.TrimSpace(d.Color), strings.TrimSpace(d.Shade)
	g.Style, g.Tags = g.Name, list(d.Tags)
	if !d.FromCustomer {
		f.say(path+".style", "choose a garment from the catalog, or mark it as the customer's own")
	} else if g.Name == "" {
		f.say(path+".name", "say what the customer brings, like hoodie")
	}
}

func (f *freezer) fromStyle(path string, d DraftGarment, s Style, g *quote.Garment) {
	g.Supplier, g.Style, g.Name, g.Tags, g.Handling = s.Supplier, s.Number, s.Name, s.Tags, s.Handling
	g.Color, g.NotClothing = d.Color, s.NotClothing
	if byCategory, ok := f.book.Shop.Handling[s.Category]; ok && g.Handling == nil {
		g.Handling = &byCategory
	}
	g.Info = quote.Info{Category: s.Category, PricedOn: s.PricedOn}
	for _, c := range s.Colors {
		if c.Name == d.Color {
			g.Shade, g.Info.Hex = c.Shade, c.Hex
			return
		}
	}
	switch {
	case len(s.Colors) == 0: // a price list without colours
	case d.Color == "":
		f.say(path+".color", "choose a colour")
	default:
		f.say(path+".color", fmt.Sprintf("%s does not come in %s: choose another colour", s.Number, d.Color))
	}
}

func (f *freezer) sizes(path string, d DraftGarment, s Style) []quote.Size {
	sizes := make([]quote.Size, 0, len(d.Sizes))
	for i, row := range d.Sizes {
		at := fmt.Sprintf("%s.sizes[%d]", path, i)
		size := quote.Size{Size: row.Size, Qty: f.count(at+".qty", row.Qty)}
		if !d.FromCustomer {
			size.Each = s.EachOf(d.Color, row.Size)
			if size.Each == nil && size.Qty == 0 {
				continue // an empty cell of a size that the style does not have
			}
			if size.Each == nil && d.StyleID != 0 {
				f.say(at+".size", fmt.Sprintf("%s has no price for %s", s.Number, row.Size))
			}
		}
		sizes = append(sizes, size)
	}
	return sizes
}

// EachOf returns the prices in force of a size in a colour, nil where there are none, or where the colour does not come
// in the size.
func (s Style) EachOf(color, size string) []quote.Break {
	for _, c := range s.Colors {
		if c.Name == color && c.Sizes != nil && !contains(c.Sizes, size) {
			return nil
		}
	}
	for _, z := range s.ByColor[color] {
		if z.Size == size {
			return z.Each
		}
	}
	for _, z := range s.Sizes {
		if z.Size == size {
			return z.Each
		}
	}
	return nil
}

func (f *freezer) extras() []quote.Extra {
	extras := make([]quote.Extra, len(f.draft.Extras))
	for i, d := range f.draft.Extras {
		at := fmt.Sprintf("extras[%d]", i)
		extras[i] = quote.Extra{
			ID: d.Key, Name: d.Name, PerOrder: d.PerOrder, Taxable: d.Taxable,
			On:      f.garmentsNamed(at+".on", d.On),
			Cost:    f.amount(at+".cost", d.Cost),
			Seconds: f.number(at+".seconds", d.Seconds),
			Charge:  f.amount(at+".charge", d.Charge),
		}
	}
	return extras
}

// From returns the lowest price each of the style's sizes, at the first break.
func (s Style) From() (lowest money.Amount) {
	for i, z := range s.Sizes {
		if len(z.Each) > 0 && (i == 0 || z.Each[0].Each.Cmp(lowest) < 0) {
			lowest = z.Each[0].Each
		}
	}
	return lowest
}
