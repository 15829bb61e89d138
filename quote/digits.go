package quote

import (
	"maps"
	"slices"
	"unicode"
)

// characters are what a placement of names and numbers needs of each character, where the card sells them one by one, and
// with the spares that the shop's rule adds to each.
func (r *report) characters(c, p int) (out []CharacterCount) {
	cd, pl := &r.cards[c], &r.placements[p]
	if !pl.Personal || cd.Kind != PieceCard || cd.By != byCharacter {
		return nil
	}
	count := map[rune]int{}
	for _, t := range pl.Texts {
		for _, x := range t.Text {
			if !unicode.IsSpace(x) {
				count[x]++
			}
		}
	}
	rule := r.job.Shop.Spares
	spare := newExact(percent(rule.DigitPercent))
	for _, x := range slices.Sorted(maps.Keys(count)) {
		n := count[x]
		out = append(out, CharacterCount{Placement: pl.ID, Character: string(x), Needed: n, Qty: n + max(spare.ceil(n), rule.DigitAtLeast)})
	}
	return out
}
