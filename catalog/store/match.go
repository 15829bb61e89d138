package store

import (
	"strings"
	"unicode"
)

// maxWords bounds what one search asks for.
const maxWords = 8

// match writes a full-text query in which every word is the beginning of one that is there; "" where nothing was typed.
func match(typed string) string {
	var b strings.Builder
	for i, word := range tokens(typed) {
		if i == maxWords {
			break
		}
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(`"` + word + `"*`)
	}
	return b.String()
}

// tokens divides a text as the full-text tables do: at everything that is neither letter, digit nor a mark on one.
func tokens(s string) []string {
	return strings.FieldsFunc(strings.ToLower(s), func(r rune) bool {
		return !unicode.In(r, unicode.L, unicode.N, unicode.Co, unicode.M)
	})
}
