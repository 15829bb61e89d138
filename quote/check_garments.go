package quote

import (
	"fmt"

	"pressworth/quote/sizes"
)

func (c *checker) garments() {
	c.ids("garments", garmentIDs(c.job))
	total := 0
	for i, g := range c.job.Garments {
		at := fmt.Sprintf("garments[%d]", i)
		if !g.FromCustomer && g.Supplier != "" {
			c.known(at+".supplier", g.Supplier, "supplier", supplierIDs(c.job))
		}
		if g.Handling != nil {
			c.notNegative(at+".handling_s", *g.Handling)
		}
		if g.Price != nil {
			c.charge(at+".price", *g.Price)
		}
		c.notNegative(at+".value_each", g.ValueEach)
		total = min(total+c.sizeRun(at, g), 2*MaxPieces)
	}
	switch {
	case total == 0:
		c.say("enter at least one piece", "garments")
	case total > MaxPieces:
		c.say(fmt.Sprintf("enter at most %d pieces in all", MaxPieces), "garments")
	}
	c.mixedGroups()
}

// sizeRun checks the sizes of one garment line and returns its pieces.
func (c *checker) sizeRun(at string, g Garment) (pieces int) {
	seen := map[string]bool{}
	for j, s := range g.Sizes {
		at := fmt.Sprintf("%s.sizes[%d]", at, j)
		switch {
		case s.Size == "":
			c.say("enter a size", "%s.size", at)
		case seen[s.Size]:
			c.say(fmt.Sprintf("size %q is listed twice: put its pieces together", s.Size), "%s.size", at)
		}
		seen[s.Size] = true
		c.count(at+".qty", s.Qty)
		if !g.FromCustomer && (s.Qty > 0 || len(s.Each) > 0) {
			c.breaks(at+".each", s.Each)
		}
		pieces += min(max(s.Qty, 0), MaxPieces+1)
	}
	return pieces
}

func (c *checker) mixedGroups() {
	first := map[string]bool{}
	for i, g := range c.job.Garments {
		if g.Group == "" {
			continue
		}
		from, seen := first[g.Group]
		if seen && from != g.FromCustomer {
			c.say("a group cannot hold the shop's and the customer's garments: name two groups", "garments[%d].group", i)
		}
		first[g.Group] = g.FromCustomer
	}
}

func (c *checker) placements() {
	c.ids("placements", idsOf(c.job.Placements, func(p Placement) string { return p.ID }))
	for i, p := range c.job.Placements {
		at := fmt.Sprintf("placements[%d]", i)
		c.positive(at+".width", p.Width)
		c.positive(at+".height", p.Height)
		c.inks(at, p)
		c.notNegative(at+".stitches", p.Stitches)
		c.on(at, p.On)
		if p.Method != "" && p.Method != "auto" {
			c.known(at+".method", p.Method, "rate card", cardIDs(c.job))
		}
		c.variants(at, p)
		if p.Personal {
			c.texts(at, p)
		}
	}
}

func (c *checker) inks(at string, p Placement) {
	c.count(at+".ink_count", p.InkCount)
	if len(p.Inks) == 0 && p.InkCount == 0 && !p.FullColor {
		c.say("name the inks, or say how many, or full colour", "%s.inks", at)
	}
	if len(p.Inks) > 0 && p.InkCount != 0 && p.InkCount != len(inkSet(p.Inks)) {
		c.say(fmt.Sprintf("%d inks are named: leave the count out", len(inkSet(p.Inks))), "%s.ink_count", at)
	}
	for k, ink := range p.Inks {
		if ink == "" {
			c.say("name the ink", "%s.inks[%d]", at, k)
		}
	}
}

func (c *checker) variants(at string, p Placement) {
	seen := map[string]bool{}
	for k, v := range p.Variants {
		at := fmt.Sprintf("%s.variants[%d]", at, k)
		c.positive(at+".width", v.Width)
		c.positive(at+".height", v.Height)
		if len(v.Sizes) == 0 {
			c.say("name the sizes it is for", "%s.sizes", at)
		}
		for n, size := range v.Sizes {
			if seen[size] {
				c.say(fmt.Sprintf("size %q has two variants", size), "%s.sizes[%d]", at, n)
			} else if !c.hasSize(p, size) && !sizes.Known(size) {
				// a usual size may be named before it is ordered: a youth variant stands ready for youth sizes
				c.say(fmt.Sprintf("no garment of this placement comes in size %q", size), "%s.sizes[%d]", at, n)
			}
			seen[size] = true
		}
	}
}

func (c *checker) hasSize(p Placement, size string) bool {
	for _, g := range c.job.Garments {
		for _, s := range g.Sizes {
			if s.Size == size && isOn(p.On, g.ID) {
				return true
			}
		}
	}
	return false
}
