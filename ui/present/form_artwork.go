package present

import (
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
)

func (c *Counter) artwork(v *View) []ArtRow {
	out := make([]ArtRow, 0, len(c.draft.Placements))
	for i, p := range c.draft.Placements {
		r := ArtRow{
			Key: p.Key, Path: placementPath(i), Name: p.Name, Inches: typedInches(p.Width, p.Height), Inks: inksText(p),
			Chips: chips(p), FullColor: p.FullColor, On: c.onWords(p.On), OnKeys: p.On, Fixed: p.Method,
			Stitches: p.Stitches, NeedStitch: c.sews(), NoTurn: p.NoTurn, Variants: p.Variants, Picture: c.pictureView(p),
			Letters: p.Letters, CharWidth: p.CharWidth, ChargeEach: p.ChargeEach,
			ByDigit: p.ChargeBy != "", Untaxed: p.Untaxed,
		}
		r.Problems = artProblems(v, r.Path)
		c.methodWords(&r)
		out = append(out, r)
	}
	return out
}

func artProblems(v *View, path string) ArtProblems {
	p := ArtProblems{
		Name: v.Problem(path + ".name"), Inks: v.ProblemWithin(path + ".ink"), On: v.ProblemWithin(path + ".on"),
		Method: v.ProblemWithin(path + ".method"),
	}
	for _, name := range []string{".width", ".height"} {
		if p.Inches == "" {
			p.Inches = v.ProblemWithin(path + name)
		}
	}
	if p.Method == "" {
		p.Method = v.Problem(path)
	}
	if p == (ArtProblems{}) {
		p.Other = v.ProblemWithin(path + ".")
	}
	return p
}

func typedInches(w, h string) string {
	if w == "" && h == "" {
		return ""
	}
	if h == "" {
		return w
	}
	return w + " × " + h
}

func inksText(p catalog.DraftPlacement) string {
	if p.FullColor {
		return "full colour"
	}
	return p.Inks
}

// chips are the inks one by one, as they are shown while the field is not being typed in.
func chips(p catalog.DraftPlacement) []string {
	if p.FullColor {
		return []string{"full colour"}
	}
	if n := pieces(p.Inks); n > 0 {
		return []string{figures(n, "ink")}
	}
	var out []string
	for _, w := range strings.FieldsFunc(p.Inks, func(r rune) bool { return r == ',' || r == ';' }) {
		if w = strings.TrimSpace(w); w != "" && !contains(out, strings.ToLower(w)) {
			out = append(out, strings.ToLower(w))
		}
	}
	return out
}

// onWords says on which garments artwork goes.
func (c *Counter) onWords(keys []string) string {
	if keys == nil || len(c.draft.Garments) > 1 && len(keys) == len(c.draft.Garments) {
		return "everything"
	}
	var words []string
	for _, g := range c.draft.Garments {
		if contains(keys, g.Key) {
			if w := plural(2, c.nounFor(g)); !contains(words, w) {
				words = append(words, w)
			}
		}
	}
	if len(words) == 0 {
		return "no garment"
	}
	return list(words)
}

// noun is what a garment is called in a sentence, in the singular.
func (c *Counter) nounFor(g catalog.DraftGarment) string {
	if s, ok := c.book.Styles[g.StyleID]; ok && s.Category != "" {
		return lower(s.Category)
	}
	if g.Name != "" {
		return lower(g.Name)
	}
	return "piece"
}

func (c *Counter) methodWords(r *ArtRow) {
	r.Method = "–"
	if r.Fixed != "" {
		r.Method = c.cardName(r.Fixed)
	}
	if !c.priced {
		return
	}
	for _, m := range c.result.Methods {
		if m.Placement != r.Key {
			continue
		}
		if r.Fixed == "" {
			r.Method = c.cardName(m.Card)
		}
		if m.RunnerUp != "" && m.Difference != nil {
			r.Against = c.against(m)
		}
		if n := c.carrying(r.Key); n > 0 {
			r.Each = Amount(quote.PerPiece(m.Transfers, n))
		}
	}
}

func (c *Counter) against(m quote.Method) string {
	name := lower(c.cardName(m.RunnerUp))
	switch m.Difference.Sign() {
	case 0:
		return name + " costs the same"
	case -1:
		return name + " costs " + strings.TrimPrefix(Amount(*m.Difference), "−") + " less"
	}
	return name + " costs " + Amount(*m.Difference) + " more"
}

// carrying is how many garments of the job have the placement.
func (c *Counter) carrying(placement string) int {
	n := 0
	for _, p := range c.job.Placements {
		if p.ID != placement {
			continue
		}
		for _, g := range c.result.Garments {
			if p.On == nil || contains(p.On, g.ID) {
				n += g.Pieces
			}
		}
	}
	return n
}

func (c *Counter) cardName(id string) string {
	for _, k := range c.book.Cards {
		if k.Card.ID == id {
			return k.Card.Name
		}
	}
	return id
}

func (c *Counter) cardKind(id string) (kind string, place int) {
	for i, k := range c.book.Cards {
		if k.Card.ID == id {
			return k.Card.Kind, i
		}
	}
	return "", 0
}

// sews says whether the shop has a card priced by stitches.
func (c *Counter) sews() bool {
	for _, k := range c.book.Cards {
		if k.Card.By == "stitches" && k.Active {
			return true
		}
	}
	return false
}

// Methods are the choices of method for a row: automatic first.
func (c *Counter) Methods() []Option {
	out := []Option{{Name: "Automatic", Note: "the cheapest for the whole job"}}
	for _, k := range c.book.Cards {
		if k.ValidOn(c.draft.QuotedOn) {
			out = append(out, Option{Key: k.Card.ID, Name: k.Card.Name})
		}
	}
	return out
}

// GarmentOptions are the garment lines that artwork can go on.
func (c *Counter) GarmentOptions() []Option {
	var out []Option
	for i, g := range c.draft.Garments {
		out = append(out, Option{Key: g.Key, Name: c.lineName(i)})
	}
	return out
}
