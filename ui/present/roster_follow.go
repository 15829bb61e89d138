package present

import (
	"slices"

	"pressworth/catalog"
)

// editRoster changes the roster. The size run of a garment that says what the roster said follows it; one that was typed
// otherwise stays, and the difference is told.
func (c *Counter) editRoster(path string, change func(d *catalog.Draft)) {
	c.edit(path, func(d *catalog.Draft) {
		following := inStep(*d)
		change(d)
		counted := countRoster(*d)
		for i := range d.Garments {
			if g := &d.Garments[i]; slices.Contains(following, g.Key) {
				takeSizes(g, counted[g.Key])
			}
		}
	})
}

// inStep are the garments whose size run is what the roster says, or empty like it.
func inStep(d catalog.Draft) []string {
	counted := countRoster(d)
	var keys []string
	for _, g := range d.Garments {
		same := true
		for _, s := range g.Sizes {
			same = same && pieces(s.Qty) == counted[g.Key][s.Size]
		}
		if same {
			keys = append(keys, g.Key)
		}
	}
	return keys
}

func takeSizes(g *catalog.DraftGarment, counted map[string]int) {
	for k := range g.Sizes {
		if s := &g.Sizes[k]; pieces(s.Qty) != counted[s.Size] {
			s.Qty = quantity(counted[s.Size])
		}
	}
}

// SizesFromRoster makes the size run of every garment that is on the roster what the roster says; a size the garment does
// not come in is left to be mended on the roster.
func (c *Counter) SizesFromRoster() {
	c.edit("", func(d *catalog.Draft) {
		counted := countRoster(*d)
		for i := range d.Garments {
			if g := &d.Garments[i]; counted[g.Key] != nil {
				takeSizes(g, counted[g.Key])
			}
		}
	})
}
