package quote

import (
	"fmt"

	"pressworth/quote/money"
)

func (c *checker) rateCards() {
	c.ids("rate_cards", cardIDs(c.job))
	for i, r := range c.job.RateCards {
		at := fmt.Sprintf("rate_cards[%d]", i)
		if r.Supplier != "" {
			c.known(at+".supplier", r.Supplier, "supplier", supplierIDs(c.job))
		}
		c.count(at+".max_inks", r.MaxInks)
		c.count(at+".minimum", r.Minimum)
		c.notNegative(at+".setup_per_design", r.SetupPerDesign)
		c.notNegative(at+".setup_per_ink", r.SetupPerInk)
		c.notNegative(at+".minimum_each", r.MinimumEach)
		c.notNegative(at+".max_width", r.MaxWidth)
		c.notNegative(at+".max_height", r.MaxHeight)
		c.press(at, r.Press)
		switch r.Kind {
		case AreaCard:
			c.breaks(at+".rates", r.Rates)
		case SheetCard:
			c.sheetSizes(at, r.Sizes)
		case RollCard:
			c.roll(at, r)
		case PieceCard:
			c.pieceRows(at, r)
		default:
			c.oneOf(at+".kind", r.Kind, AreaCard, SheetCard, RollCard, PieceCard)
		}
	}
}

func (c *checker) press(at string, p *Press) {
	if p == nil {
		return
	}
	for _, f := range []struct {
		name string
		n    money.Number
	}{
		{"prep_s", p.Prep},
		{"place_s", p.Place},
		{"dwell_s", p.Dwell},
		{"peel_s", p.Peel},
		{"second_s", p.Second},
		{"prep_min", p.PrepMin},
	} {
		c.notNegative(at+".press."+f.name, f.n)
	}
}

func (c *checker) border(at string, edge, gap, width money.Number) {
	c.notNegative(at+".edge", edge)
	c.notNegative(at+".gap", gap)
	if edge.Sign() > 0 && times(edge.Rat(), rat(2)).Cmp(width.Rat()) >= 0 {
		c.say("the edges leave nothing to print on: enter less than half the width", "%s.edge", at)
	}
}

func (c *checker) sheetSizes(at string, sizes []SheetSize) {
	if len(sizes) == 0 {
		c.say("enter a sheet size", "%s.sizes", at)
	}
	seen := map[string]bool{}
	for i, s := range sizes {
		at := fmt.Sprintf("%s.sizes[%d]", at, i)
		if s.Name == "" || seen[s.Name] {
			c.say("give each sheet size its own name", "%s.name", at)
		}
		seen[s.Name] = true
		c.positive(at+".width", s.Width)
		c.positive(at+".height", s.Height)
		c.border(at, s.Edge, s.Gap, s.Width)
		c.count(at+".minimum", s.Minimum)
		if len(s.Prices) == 0 {
			c.say("enter a price", "%s.prices", at)
		}
		for j, row := range s.Prices {
			at := fmt.Sprintf("%s.prices[%d]", at, j)
			c.count(at+".inks", row.Inks)
			if j > 0 && row.Inks <= s.Prices[j-1].Inks {
				c.say("ink rows are out of order: each is for more inks than the one before", "%s.inks", at)
			}
			c.breaks(at+".each", row.Each)
		}
	}
}

func (c *checker) roll(at string, r RateCard) {
	c.positive(at+".width", r.Width)
	c.border(at, r.Edge, r.Gap, r.Width)
	if len(r.Lengths) == 0 {
		c.say("enter a length that can be bought", "%s.lengths", at)
	}
	seen := map[string]bool{}
	for i, l := range r.Lengths {
		at := fmt.Sprintf("%s.lengths[%d]", at, i)
		c.positive(at+".length", l.Length)
		c.notNegative(at+".each", l.Each)
		if seen[l.Length.String()] {
			c.say("this length is listed twice", "%s.length", at)
		}
		seen[l.Length.String()] = true
	}
}

func (c *checker) pieceRows(at string, r RateCard) {
	c.oneOf(at+".by", r.By, "", byInks, byStitches, byArea, byCharacter)
	if len(r.Prices) == 0 && len(r.FullColorEach) == 0 {
		c.say("enter a price", "%s.prices", at)
	}
	for i, row := range r.Prices {
		at := fmt.Sprintf("%s.prices[%d]", at, i)
		c.notNegative(at+".upto", row.Upto)
		if i > 0 && row.Upto.Cmp(r.Prices[i-1].Upto) <= 0 {
			c.say("rows are out of order: each reaches further than the one before", "%s.upto", at)
		}
		c.breaks(at+".each", row.Each)
	}
	if len(r.FullColorEach) > 0 {
		c.breaks(at+".full_color_each", r.FullColorEach)
	}
}

// What a piece card counts.
const (
	byInks      = "inks"
	byStitches  = "stitches"
	byArea      = "area"
	byCharacter = "character"
)
