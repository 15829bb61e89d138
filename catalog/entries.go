package catalog

import (
	"math/big"
	"regexp"
	"strconv"
	"strings"
	"time"

	"pressworth/quote"
	"pressworth/quote/money"
)

// entries reads what a person typed, and gathers what is wrong with it.
type entries struct{ problems []quote.Problem }

func (e *entries) say(path, problem string) {
	e.problems = append(e.problems, quote.Problem{Path: path, Problem: problem})
}

// number reads 0 or more; an empty field is 0.
func (e *entries) number(path, text string) money.Number {
	n, ok := typed(text)
	if !ok || n.Sign() < 0 {
		e.say(path, "enter a number of 0 or more, like 2.5")
		return money.Number{}
	}
	return n
}

// length reads more than 0 inches; an empty field is a problem.
func (e *entries) length(path, text string) money.Number {
	n, ok := typed(strings.TrimRight(strings.TrimSpace(text), "\"″ "))
	if !ok || n.Sign() <= 0 {
		e.say(path, "enter inches, like 3.5 or 3 1/2")
		return money.Number{}
	}
	return n
}

// amount reads money of 0 or more; an empty field is 0.
func (e *entries) amount(path, text string) money.Amount {
	a, ok := typedAmount(strings.TrimPrefix(strings.TrimSpace(text), "$"))
	if !ok || a.Sign() < 0 {
		e.say(path, "enter an amount of 0 or more, like 12.50")
		return money.Amount{}
	}
	return a
}

// maxCount is the most pieces a job may have, by the rules of the engine.
const maxCount = 100_000

// count reads whole pieces; an empty field is 0.
func (e *entries) count(path, text string) int {
	text = strings.TrimSpace(text)
	if text == "" {
		return 0
	}
	n, err := strconv.ParseUint(text, 10, 32)
	if err != nil {
		e.say(path, "enter a whole number of pieces")
		return 0
	}
	if n > maxCount {
		e.say(path, "enter at most 100000 pieces")
		return 0
	}
	return int(n)
}

// date reads 2006-01-02 or nothing.
func (e *entries) date(path, text string) {
	text = strings.TrimSpace(text)
	if text == "" {
		return
	}
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		e.say(path, "enter a date as year-month-day, like 2026-05-31")
	}
}

// day reads 2006-01-02, which must be there.
func (e *entries) day(path, text string) {
	if strings.TrimSpace(text) == "" {
		e.say(path, "enter a date as year-month-day, like 2026-05-31")
		return
	}
	e.date(path, text)
}

var (
	thousands = regexp.MustCompile(`^-?[0-9]{1,3}(,[0-9]{3})+(\.[0-9]*)?$`)
	fraction  = regexp.MustCompile(`^(?:([0-9]{1,6})[ -])?([0-9]{1,4})/([0-9]{1,4})$`)
)

// plain writes a number as people type it (12.50, .5, 1,250.00, 3 1/2) in the form of a job file. Empty is 0.
func plain(text string) (string, bool) {
	text = strings.TrimSpace(text)
	if text == "" {
		return "0", true
	}
	if m := fraction.FindStringSubmatch(text); m != nil {
		return mixed(m[1], m[2], m[3])
	}
	if thousands.MatchString(text) {
		text = strings.ReplaceAll(text, ",", "")
	}
	if strings.HasPrefix(text, ".") {
		text = "0" + text
	}
	return strings.TrimSuffix(text, "."), true
}

func typed(text string) (money.Number, bool) {
	s, ok := plain(text)
	if !ok {
		return money.Number{}, false
	}
	n, err := money.ParseNumber(s)
	return n, err == nil
}

func typedAmount(text string) (money.Amount, bool) {
	s, ok := plain(text)
	if !ok {
		return money.Amount{}, false
	}
	a, err := money.ParseAmount(s)
	return a, err == nil
}

// mixed is whole + over/under, where that is a decimal of at most 8 places.
func mixed(whole, over, under string) (string, bool) {
	sum, ok := new(big.Rat).SetString(over + "/" + under)
	if !ok {
		return "", false
	}
	if whole != "" {
		w, _ := new(big.Rat).SetString(whole)
		sum.Add(sum, w)
	}
	places, exact := sum.FloatPrec()
	return sum.FloatString(places), exact && places <= 8
}

// words divides a text at spaces, commas and slashes.
func words(text string) []string {
	return strings.FieldsFunc(text, func(r rune) bool { return strings.ContainsRune(" ,;/\t\n", r) })
}

// list divides a text at commas; entries lose their outer spaces, empty ones are dropped.
func list(text string) []string {
	var out []string
	for _, s := range strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }) {
		if s = strings.Join(strings.Fields(s), " "); s != "" {
			out = append(out, s)
		}
	}
	return out
}
