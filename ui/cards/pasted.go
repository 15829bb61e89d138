package cards

import (
	"regexp"
	"strings"
)

// placed says where a pasted range belongs: one that brings its own line of titles goes over the titles, and in a table
// whose titles are not typed it loses them.
func placed(row, col int, cells [][]string, steps bool) (int, int, [][]string) {
	titled := len(cells) > 1 && len(cells[0]) > 1 && col == 0 && row <= 1 && !strings.ContainsAny(cells[0][0], "0123456789")
	switch {
	case titled && steps:
		return 0, 0, cells
	case titled:
		return row, col, cells[1:]
	}
	return row, col, cells
}

var (
	span     = regexp.MustCompile(`^([0-9][0-9,]*)\s*(?:\+|(?:-|–|—|to)\s*[0-9][0-9,]*|(?:and|or) (?:up|more))(?:\s*(?:pcs|pieces|sheets))?$`)
	counted  = regexp.MustCompile(`^(?:up to )?([0-9]+)\s*-?\s*(?:inks?|colou?rs?|c|spot|pcs|pieces|sheets|in|")\.?$`)
	fullWord = regexp.MustCompile(`^full[ -]?colou?r( process)?$`)
)

// tidy takes off a pasted cell what lists write around a number: 12–23, 12+, 2 colors, $4.35.
func tidy(text string) string {
	text = strings.TrimSpace(text)
	small := strings.ToLower(text)
	if fullWord.MatchString(small) {
		return fullColor
	}
	if m := span.FindStringSubmatch(small); m != nil {
		return strings.ReplaceAll(m[1], ",", "")
	}
	if m := counted.FindStringSubmatch(small); m != nil {
		return m[1]
	}
	if small == "-" || small == "–" || small == "n/a" || small == "call" {
		return ""
	}
	return strings.TrimSpace(strings.TrimPrefix(text, "$"))
}
