package catalog

import "slices"

// MostOptions is how many options a quote may hold side by side.
const MostOptions = 4

// Option is one of several jobs offered in one quote: each is a draft of its own.
type Option struct {
	Position int    // 1 to MostOptions
	Name     string // like "good", "with back print"
	Draft    Draft
	Pieces   int
	Total    string // with the currency's places; empty where it could not be priced
	Margin   string // percent, one place
	Accepted bool   // at most one of a quote
}

// Copy is a draft that shares nothing with the one it was made of.
func (d Draft) Copy() Draft {
	d.Garments = slices.Clone(d.Garments)
	for i := range d.Garments {
		d.Garments[i].Sizes = slices.Clone(d.Garments[i].Sizes)
	}
	d.Placements = slices.Clone(d.Placements)
	for i, p := range d.Placements {
		d.Placements[i].On = slices.Clone(p.On)
		d.Placements[i].Variants = slices.Clone(p.Variants)
		d.Placements[i].Texts = slices.Clone(p.Texts)
	}
	d.Extras = slices.Clone(d.Extras)
	for i := range d.Extras {
		d.Extras[i].On = slices.Clone(d.Extras[i].On)
	}
	d.Roster = slices.Clone(d.Roster)
	return d
}
