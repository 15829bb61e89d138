package letters

import (
	"sort"
	"strings"

	"github.com/go-text/typesetting/segmenter"
)

// Wrap breaks text into lines no wider than width: at line feeds, at blanks, and inside a word (between what a reader sees as
// characters) only where the word alone is too wide. No text at all is no lines.
func Wrap(s string, w Weight, size, width float64) []string {
	if strings.TrimSpace(s) == "" {
		return nil
	}
	var lines []string
	s = strings.ReplaceAll(strings.ReplaceAll(s, "\r\n", "\n"), "\r", "\n")
	for _, paragraph := range strings.Split(s, "\n") {
		lines = append(lines, wrapParagraph(Clean(paragraph), w, size, width)...)
	}
	return lines
}

func wrapParagraph(s string, w Weight, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(s) {
		with := word
		if line != "" {
			with = line + " " + word
		}
		if Width(with, w, size) <= width {
			line = with
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		chunks := chop(word, w, size, width)
		lines = append(lines, chunks[:len(chunks)-1]...)
		line = chunks[len(chunks)-1]
	}
	return append(lines, line)
}

// chop divides a word into parts that each fit, one character at least.
func chop(word string, w Weight, size, width float64) []string {
	if Width(word, w, size) <= width {
		return []string{word}
	}
	var seg segmenter.Segmenter
	seg.Init([]rune(word))
	var parts []string
	part := ""
	for it := seg.GraphemeIterator(); it.Next(); {
		g := string(it.Grapheme().Text)
		if part != "" && Width(part+g, w, size) > width {
			parts = append(parts, part)
			part = ""
		}
		part += g
	}
	return append(parts, part)
}

// Clip cuts text to a width with an ellipsis.
func Clip(s string, w Weight, size, width float64) string {
	s = Clean(s)
	if Width(s, w, size) <= width {
		return s
	}
	runes := []rune(s)
	// The first length that is too long; measuring is dear, so halve the way to it.
	n := sort.Search(len(runes), func(n int) bool { return Width(string(runes[:n])+"…", w, size) > width })
	for n > 0 && Width(string(runes[:n])+"…", w, size) > width {
		n--
	}
	return strings.TrimRight(string(runes[:n]), " ") + "…"
}
