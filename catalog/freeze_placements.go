package catalog

import (
	"fmt"
	"strconv"
	"strings"

	"pressworth/quote"
)

func (f *freezer) placements() []quote.Placement {
	placements := make([]quote.Placement, len(f.draft.Placements))
	for i, d := range f.draft.Placements {
		placements[i] = f.placement(fmt.Sprintf("placements[%d]", i), d)
	}
	return placements
}

func (f *freezer) placement(path string, d DraftPlacement) quote.Placement {
	p := quote.Placement{
		ID: d.Key, Name: strings.TrimSpace(d.Name), FullColor: d.FullColor, NoTurn: d.NoTurn,
		Width:    f.length(path+".width", d.Width),
		Height:   f.length(path+".height", d.Height),
		On:       f.garmentsNamed(path+".on", d.On),
		Method:   f.method(path+".method", d.Method),
		Stitches: f.number(path+".stitches", d.Stitches),
		Info:     quote.Info{Position: d.Position, Artwork: d.Artwork},
	}
	if !d.FullColor {
		p.Inks, p.InkCount = f.inks(path+".inks", d.Inks)
	}
	for k, v := range d.Variants {
		at := fmt.Sprintf("%s.variants[%d]", path, k)
		p.Variants = append(p.Variants, quote.Variant{
			Sizes:  f.variantSizes(at+".sizes", v.Sizes),
			Width:  f.length(at+".width", v.Width),
			Height: f.length(at+".height", v.Height),
		})
	}
	if d.Personal {
		f.personal(path, d, &p)
	}
	return p
}

// maxInkCount is more than any press prints; a larger count is a slip of the hand.
const maxInkCount = 24

// inks reads names divided by commas, or a count. Names are compared without regard to case.
func (f *freezer) inks(path, text string) (names []string, count int) {
	text = strings.TrimSpace(text)
	if n, err := strconv.Atoi(text); err == nil {
		if n < 1 || n > maxInkCount {
			f.say(path, fmt.Sprintf("enter 1 to %d inks, or their names like white, gold", maxInkCount))
			return nil, 0
		}
		return nil, n
	}
	for _, name := range list(strings.ToLower(text)) {
		if !contains(names, name) {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		f.say(path, "name the inks, like white, gold, or enter their number, or choose full colour")
	}
	return names, 0
}

func (f *freezer) method(path, key string) string {
	if key == "" || key == "auto" {
		return ""
	}
	for _, c := range f.book.Cards {
		if c.Card.ID == key && c.ValidOn(f.on) {
			return key
		}
	}
	f.say(path, fmt.Sprintf("the rate card %q does not hold on %s: choose another, or automatic", key, f.on))
	return key
}

// variantSizes reads sizes in the spelling the garments have.
func (f *freezer) variantSizes(path, text string) []string {
	sizes := words(text)
	for i, s := range sizes {
		sizes[i] = f.spelled(s)
	}
	if len(sizes) == 0 {
		f.say(path, "name the garment sizes it is for, like YS YM")
	}
	return sizes
}

func (f *freezer) spelled(size string) string {
	for _, g := range f.draft.Garments {
		for _, z := range g.Sizes {
			if strings.EqualFold(z.Size, size) {
				return z.Size
			}
		}
	}
	return strings.ToUpper(size)
}

func (f *freezer) personal(path string, d DraftPlacement, p *quote.Placement) {
	p.Personal = true
	p.CharWidth = f.length(path+".char_width", d.CharWidth)
	p.ChargeEach, p.ChargeBy, p.Untaxed = f.amount(path+".charge_each", d.ChargeEach), d.ChargeBy, d.Untaxed
	for _, t := range d.Texts {
		p.Texts = append(p.Texts, quote.Text(t))
	}
}

func contains(all []string, one string) bool {
	for _, s := range all {
		if s == one {
			return true
		}
	}
	return false
}
