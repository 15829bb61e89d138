package strict

import (
	"regexp"
	"slices"
	"strconv"
	"strings"

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

var plainKey = regexp.MustCompile(`^[\pL\pN_-]{1,60}$`)

// join gives the path of a key: shop.spares, or upcharges["2 XL"] where the key is not a plain word.
func join(path, key string) string {
	if !plainKey.MatchString(key) {
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
