package export

import (
	"slices"
	"strings"

	"pressworth/assets/drawing"
	"pressworth/quote"
	"pressworth/quote/sizes"
)

// extremes are, for names and numbers, the smallest and the largest size of the list, each with the longest and with the shortest
// name over the widest number.
func extremes(job quote.Job) (vs []view) {
	bags := bySize(job, roster(job))
	if len(bags) == 0 {
		return nil
	}
	small, large := bags[0], bags[len(bags)-1]
	for i, on := range []bag{small, large} {
		if i > 0 && on.garment.ID == small.garment.ID && on.size == small.size {
			break
		}
		last := ""
		for _, name := range []func(quote.Placement) string{longest, shortest} {
			arts, words := lettersOn(job, on, name)
			if words == last {
				continue
			}
			last = words
			g := on.garment
			for _, side := range drawing.Sides(kindOf(g), arts) {
				p := drawing.Draw(drawing.Garment{Category: kindOf(g), Size: on.size, Side: side, Color: hexOf(g)}, arts)
				vs = append(vs, view{words + " on " + captionOf(g, side, on.size), p, nil})
			}
		}
	}
	return vs
}

// lettersOn are the names and numbers on a garment size, and in words; a number is always the widest there is.
func lettersOn(job quote.Job, on bag, name func(quote.Placement) string) (arts []drawing.Art, words string) {
	var texts []string
	for _, p := range personal(job) {
		if !lettersSize(p, on.garment.ID, on.size) {
			continue
		}
		text := name(p)
		if numbersOnly(p) {
			text = longest(p)
		}
		arts, texts = append(arts, artOf(job, p, text, on.size)), append(texts, text)
	}
	return arts, strings.Join(texts, ", ")
}

// lettersSize says whether names or numbers go on a size of a garment: others of the same age have them.
func lettersSize(p quote.Placement, garment, size string) bool {
	return slices.ContainsFunc(p.Texts, func(t quote.Text) bool {
		return t.Garment == garment && sizes.Child(t.Size) == sizes.Child(size)
	})
}

func numbersOnly(p quote.Placement) bool {
	return !slices.ContainsFunc(p.Texts, func(t quote.Text) bool { return strings.Trim(t.Text, "0123456789") != "" })
}

func shortest(p quote.Placement) (text string) {
	for i, t := range p.Texts {
		if i == 0 || len([]rune(t.Text)) < len([]rune(text)) {
			text = t.Text
		}
	}
	return text
}
