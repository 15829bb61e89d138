package present

import (
	"strconv"
	"strings"
)

var small = []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}

// count writes a number and its noun: "one ink", "two inks", "38 sheets".
func count(n int, noun string) string { return number(n) + " " + plural(n, noun) }

// number writes numbers up to twelve in words.
func number(n int) string {
	if n >= 0 && n < len(small) {
		return small[n]
	}
	return Grouped(strconv.Itoa(n))
}

// figures writes a number in figures with its noun: "2 copies".
func figures(n int, noun string) string { return Grouped(strconv.Itoa(n)) + " " + plural(n, noun) }

// plural gives the noun its plural where n is not 1.
func plural(n int, noun string) string {
	if n == 1 || noun == "" {
		return noun
	}
	switch {
	case strings.HasSuffix(noun, "y") && !strings.HasSuffix(noun, "ay") && !strings.HasSuffix(noun, "ey"):
		return noun[:len(noun)-1] + "ies"
	case strings.HasSuffix(noun, "ch"), strings.HasSuffix(noun, "s"):
		return noun + "es"
	}
	return noun + "s"
}

// list joins words with commas and a last "and".
func list(words []string) string {
	switch len(words) {
	case 0:
		return ""
	case 1:
		return words[0]
	}
	return strings.Join(words[:len(words)-1], ", ") + " and " + words[len(words)-1]
}

// lower makes the first letter small, for a name inside a sentence, unless the word is an abbreviation.
func lower(s string) string {
	if len(s) > 1 && s[1] >= 'A' && s[1] <= 'Z' {
		return s
	}
	if s == "" {
		return s
	}
	return strings.ToLower(s[:1]) + s[1:]
}
