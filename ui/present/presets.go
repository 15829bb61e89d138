package present

import (
	"slices"
	"strings"

	"pressworth/catalog"
)

// Presets finds placements by what is typed: the start of a word, or the words' first letters ("fb" for Full back).
// The shop's order is kept; placements already on the job come last.
func (c *Counter) Presets(query string) []catalog.Preset {
	var first, last []catalog.Preset
	for _, p := range c.book.Shop.Presets {
		if !Matches(p.Name, query) {
			continue
		}
		if c.taken(p.Name) {
			last = append(last, p)
			continue
		}
		first = append(first, p)
	}
	return append(first, last...)
}

func (c *Counter) taken(name string) bool {
	return slices.ContainsFunc(c.draft.Placements, func(p catalog.DraftPlacement) bool { return p.Name == name })
}

// Matches says whether every word of the query starts a word of the name, or the query is the start of its initials.
func Matches(name, query string) bool {
	words := strings.Fields(strings.ToLower(name))
	query = strings.ToLower(strings.TrimSpace(query))
	initials := ""
	for _, w := range words {
		initials += w[:1]
	}
	if len(query) > 1 && strings.HasPrefix(initials, query) {
		return true
	}
	for _, q := range strings.Fields(query) {
		if !slices.ContainsFunc(words, func(w string) bool { return strings.HasPrefix(w, q) }) {
			return false
		}
	}
	return true
}

func (c *Counter) applyPreset(p *catalog.DraftPlacement, name string) {
	p.Name = name
	for _, s := range c.book.Shop.Presets {
		if s.Name == name {
			p.Width, p.Height, p.Position = s.Width.String(), s.Height.String(), s.Position
		}
	}
}

// usualGarments is where artwork of a preset goes in a job that has caps and other garments; nil: everywhere.
func (c *Counter) usualGarments(d catalog.Draft, name string) []string {
	var caps, others []string
	for _, g := range d.Garments {
		if c.isCap(g) {
			caps = append(caps, g.Key)
		} else {
			others = append(others, g.Key)
		}
	}
	if len(caps) == 0 || len(others) == 0 {
		return nil
	}
	if strings.Contains(strings.ToLower(name), "cap") {
		return caps
	}
	return others
}

func (c *Counter) isCap(g catalog.DraftGarment) bool {
	if g.FromCustomer {
		return strings.Contains(strings.ToLower(g.Name+" "+g.Tags), "cap")
	}
	return strings.Contains(strings.ToLower(c.book.Styles[g.StyleID].Category), "cap")
}
