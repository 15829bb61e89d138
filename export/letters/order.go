package letters

import (
	"unicode"

	"github.com/go-text/typesetting/di"
	"github.com/go-text/typesetting/shaping"
)

// visual gives the order from left to right of parts that stand in reading order (rule L2 of the Unicode bidirectional
// algorithm, over the levels 0 to 2 that remain without embeddings).
func visual(parts []shaping.Input, rtl bool) []int {
	levels := levelsOf(parts, rtl)
	order := make([]int, len(parts))
	for i := range order {
		order[i] = i
	}
	for level := 2; level >= 1; level-- {
		for i := 0; i < len(order); i++ {
			j := i
			for j < len(order) && levels[order[j]] >= level {
				j++
			}
			for a, b := i, j-1; a < b; a, b = a+1, b-1 {
				order[a], order[b] = order[b], order[a]
			}
			if j > i {
				i = j - 1
			}
		}
	}
	return order
}

func levelsOf(parts []shaping.Input, rtl bool) []int {
	levels := make([]int, len(parts))
	afterRTL := rtl
	for i, p := range parts {
		letters, digits := false, false
		for _, r := range p.Text[p.RunStart:p.RunEnd] {
			letters = letters || unicode.IsLetter(r)
			digits = digits || unicode.IsDigit(r)
		}
		switch {
		case p.Direction == di.DirectionRTL:
			levels[i], afterRTL = 1, true
		case rtl || afterRTL && digits && !letters:
			levels[i] = 2 // a figure between words that read from right to left
		default:
			afterRTL = false
		}
	}
	return levels
}
