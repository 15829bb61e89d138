package present

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/quote/sizes"
)

// found is how many answers a search field shows.
const found = 40

// FindCustomers finds customers by words; an empty query gives the recent.
func (c *Counter) FindCustomers(query string) []catalog.DraftCustomer {
	return c.shop.FindCustomers(query, found)
}

// FindStyles finds blanks by words; an empty query gives the usual and the recent.
func (c *Counter) FindStyles(query string) []catalog.StyleRow { return c.shop.FindStyles(query, found) }

// OnOptions are the ways to say where artwork goes, besides naming lines one by one: everything, every kind of garment,
// every line.
func (c *Counter) OnOptions() []OnOption {
	out := []OnOption{{Name: "everything"}}
	seen := map[string]bool{}
	for _, g := range c.draft.Garments {
		noun := c.nounFor(g)
		if seen[noun] {
			continue
		}
		seen[noun] = true
		out = append(out, OnOption{Name: plural(2, noun), Keys: c.called(noun)})
	}
	if len(c.draft.Garments) > len(seen) {
		for i, g := range c.draft.Garments {
			out = append(out, OnOption{Name: c.lineName(i), Keys: []string{g.Key}})
		}
	}
	if len(out) == 2 {
		return out[:1]
	}
	return out
}

// OnOption is a set of garment lines; nil keys: every line.
type OnOption struct {
	Name string
	Keys []string
}

// called lists the lines whose garment is called so.
func (c *Counter) called(noun string) []string {
	var keys []string
	for _, g := range c.draft.Garments {
		if c.nounFor(g) == noun {
			keys = append(keys, g.Key)
		}
	}
	return keys
}

// TrySizes takes a size run while it is still being typed, where it can be read as it stands.
func (c *Counter) TrySizes(key, size, text string) {
	if g := garmentAt(&c.draft, key); g != nil {
		if counts, err := readSizes(*g, size, text); err == nil && len(counts) > 0 && hasSizes(*g, counts) {
			c.FillSizes(key, size, text)
		}
	}
}

func hasSizes(g catalog.DraftGarment, counts []sizes.Count) bool {
	for _, n := range counts {
		if !slices.ContainsFunc(g.Sizes, func(s catalog.DraftSize) bool { return s.Size == n.Size }) {
			return false
		}
	}
	return true
}

// Describe is a catalog row as a search field shows it.
func Describe(r catalog.StyleRow) (name, detail string) {
	name = strings.TrimSpace(r.Number + " " + r.Name)
	if r.Color.Name != "" {
		name += " · " + r.Color.Name
	}
	detail = r.Supplier
	if r.Color.Name == "" && r.Colors > 0 {
		detail = fmt.Sprintf("%s · %s", detail, figures(r.Colors, "colour"))
	}
	return name, detail + " · from " + Amount(r.From)
}

// FindColors finds colours of a style that the draft does not have yet, by the start of a word.
func (c *Counter) FindColors(styleID int64, query string) []catalog.Color {
	var out []catalog.Color
	for _, k := range c.ColorsLeft(styleID) {
		if Matches(k.Name, query) {
			out = append(out, k)
		}
	}
	return out
}

// Day is the day at the counter.
func (c *Counter) Day() time.Time { return c.shop.Now() }
