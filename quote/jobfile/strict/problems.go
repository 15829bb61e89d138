package strict

import (
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"pressworth/quote"
)

// problems are found in any order and listed as they stand in the file.
type problems []found

type found struct {
	at int64
	quote.Problem
}

func (p *problems) add(at int64, path, problem string) {
	*p = append(*p, found{at, quote.Problem{Path: path, Problem: problem}})
}

func (p problems) err() error {
	if len(p) == 0 {
		return nil
	}
	slices.SortStableFunc(p, func(a, b found) int { return int(a.at - b.at) })
	var all quote.Problems
	for _, f := range p {
		all = append(all, f.Problem)
	}
	return all
}

const unknownKey = "unknown key: "

// Unknown tells whether a problem is a key that the file should not have; nothing is missing because of it.
func Unknown(p quote.Problem) bool { return strings.HasPrefix(p.Problem, unknownKey) }

// plainKey tells whether a key needs no quotes in a path.
func plainKey(key string) bool {
	n := utf8.RuneCountInString(key)
	return n > 0 && n <= 60 && !strings.ContainsFunc(key, func(r rune) bool {
		return r != '_' && r != '-' && !unicode.IsLetter(r) && !unicode.IsNumber(r)
	})
}

// join gives the path of a key: shop.spares, or upcharges["2 XL"] where the key is not a plain word.
func join(path, key string) string {
	if !plainKey(key) {
		return path + "[" + strconv.Quote(clip(key)) + "]"
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

func clip(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
