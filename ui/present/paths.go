package present

import (
	"fmt"
	"strconv"
	"strings"
)

func garmentPath(i int) string   { return fmt.Sprintf("garments[%d]", i) }
func placementPath(i int) string { return fmt.Sprintf("placements[%d]", i) }
func extraPath(i int) string     { return fmt.Sprintf("extras[%d]", i) }

// where names the line of the form that a path is about: "Full back: ", or nothing.
func (c *Counter) where(path string) string {
	if i, ok := indexIn(path, "garments"); ok && i < len(c.draft.Garments) {
		return c.lineName(i) + ": "
	}
	if i, ok := indexIn(path, "placements"); ok && i < len(c.draft.Placements) && c.draft.Placements[i].Name != "" {
		return c.draft.Placements[i].Name + ": "
	}
	if i, ok := indexIn(path, "extras"); ok && i < len(c.draft.Extras) {
		return c.draft.Extras[i].Name + ": "
	}
	return ""
}

// indexIn reads the index of a path like garments[2].price.
func indexIn(path, name string) (int, bool) {
	rest, ok := strings.CutPrefix(path, name+"[")
	if !ok {
		return 0, false
	}
	digits, _, ok := strings.Cut(rest, "]")
	i, err := strconv.Atoi(digits)
	return i, ok && err == nil
}

// lineName is a garment line in words: "Long-sleeve tee, Navy".
func (c *Counter) lineName(i int) string {
	g := c.draft.Garments[i]
	name := g.Name
	if s, ok := c.book.Styles[g.StyleID]; ok && g.StyleID != 0 {
		name = s.Name
	}
	if g.Color != "" {
		return name + ", " + g.Color
	}
	if name == "" {
		return "a customer's garment"
	}
	return name
}
