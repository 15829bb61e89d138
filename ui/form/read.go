package form

import (
	"strconv"
	"strings"
	"time"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Reader reads text by path into exact values and gathers what is wrong with it.
type Reader struct {
	Get      func(path string) string
	Problems []quote.Problem
}

// Say adds a problem.
func (r *Reader) Say(path, problem string) {
	r.Problems = append(r.Problems, quote.Problem{Path: path, Problem: problem})
}

// Text is the text at a path without blanks around it.
func (r *Reader) Text(path string) string { return strings.TrimSpace(r.Get(path)) }

// Need is Text that must not be empty.
func (r *Reader) Need(path, what string) string {
	text := r.Text(path)
	if text == "" {
		r.Say(path, "give "+what)
	}
	return text
}

// plain takes away what people write around a number: blanks, a dollar or percent sign, commas between thousands.
func plain(text string) string {
	text = strings.TrimSpace(strings.TrimRight(strings.TrimLeft(strings.TrimSpace(text), "$"), "%"))
	if strings.HasPrefix(text, ".") {
		text = "0" + text
	}
	if whole, _, _ := strings.Cut(text, "."); commasFit(whole) {
		text = strings.ReplaceAll(text, ",", "")
	}
	return text
}

// commasFit tells whether commas stand only between thousands.
func commasFit(whole string) bool {
	groups := strings.Split(strings.TrimLeft(whole, "-"), ",")
	for i, g := range groups {
		if i > 0 && len(g) != 3 || i == 0 && len(groups) > 1 && (len(g) < 1 || len(g) > 3) {
			return false
		}
	}
	return true
}

// Amount reads money of 0 or more; an empty field is 0.
func (r *Reader) Amount(path string) money.Amount {
	text := r.Text(path)
	if text == "" {
		return money.Amount{}
	}
	a, err := money.ParseAmount(plain(text))
	if err != nil || a.Sign() < 0 {
		r.Say(path, "enter an amount of 0 or more, like 12.50")
	}
	return a
}

// Number reads a number of 0 or more; an empty field is 0.
func (r *Reader) Number(path string) money.Number {
	text := r.Text(path)
	if text == "" {
		return money.Number{}
	}
	n, err := money.ParseNumber(plain(text))
	if err != nil || n.Sign() < 0 {
		r.Say(path, "enter a number of 0 or more, like 2.5")
	}
	return n
}

// Percent reads a percentage from 0 to below limit.
func (r *Reader) Percent(path string, limit int64) money.Number {
	n := r.Number(path)
	if n.Cmp(money.Int(limit)) >= 0 {
		r.Say(path, "enter a percentage below "+strconv.FormatInt(limit, 10))
	}
	return n
}

// Length reads more than 0 inches.
func (r *Reader) Length(path string) money.Number {
	n, err := money.ParseNumber(plain(strings.TrimRight(r.Text(path), "\"″ ")))
	if err != nil || n.Sign() <= 0 {
		r.Say(path, "enter inches, like 3.5")
	}
	return n
}

// Count reads a whole number of 0 or more; an empty field is 0.
func (r *Reader) Count(path string) int {
	text := plain(r.Text(path))
	if text == "" {
		return 0
	}
	n, err := strconv.ParseUint(text, 10, 31)
	if err != nil {
		r.Say(path, "enter a whole number")
	}
	return int(n)
}

// Date reads a day as 2006-01-02, or nothing.
func (r *Reader) Date(path string) string {
	text := r.Text(path)
	if text == "" {
		return ""
	}
	if _, err := time.Parse(time.DateOnly, text); err != nil {
		r.Say(path, "enter a date as year-month-day, like 2026-05-31")
	}
	return text
}

// Words reads words divided by commas.
func (r *Reader) Words(path string) []string {
	var words []string
	for _, w := range strings.Split(r.Get(path), ",") {
		if w = strings.TrimSpace(w); w != "" {
			words = append(words, w)
		}
	}
	return words
}
