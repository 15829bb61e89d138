package calendar

import (
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
)

// ruleKind is the form of a rule for closed days.
type ruleKind int

const (
	span       ruleKind = iota // from a day to a day
	yearly                     // a day of every year
	nthWeekday                 // a weekday of a month
	weekly                     // a weekday of every week
)

// rule closes days.
type rule struct {
	kind     ruleKind
	from, to Day
	month    time.Month
	day      int
	nth      int // 1 to 5, or lastOne
	weekday  time.Weekday
	shift    int // days after the one that the rule finds
}

// lastOne is the last of its weekday in the month.
const lastOne = -1

// closes says whether the rule closes a day.
func (r rule) closes(d Day, w wall) bool {
	if r.shift > 0 {
		w = (d - Day(r.shift)).wall()
	}
	switch r.kind {
	case span:
		return r.from <= d && d <= r.to
	case yearly:
		return w.month == r.month && w.day == r.day
	case nthWeekday:
		return w.month == r.month && w.weekday == r.weekday && r.counts(w)
	}
	return w.weekday == r.weekday
}

// counts says whether a day of the right weekday and month is the one that the rule counts to.
func (r rule) counts(w wall) bool {
	if r.nth == lastOne {
		return w.last
	}
	return (w.day-1)/7+1 == r.nth
}

var errRule = errors.New("write a day like 2026-12-24 or 24 dec, a span like 2026-12-24..2027-01-01, " +
	"or a weekday like last mon may, 4 thu nov, every mon")

// mostShift is how many days after its own a rule may close; longestSpan how many days a span may hold.
const (
	mostShift   = 30
	longestSpan = 366
)

// parseRule reads one entry of Settings.Closed.
func parseRule(text string) (rule, error) {
	if from, to, ok := strings.Cut(text, ".."); ok {
		return parseSpan(from, to)
	}
	if d, err := Parse(text); err == nil {
		return rule{kind: span, from: d, to: d}, nil
	}
	words := strings.Fields(strings.ToLower(text))
	var r rule
	var err error
	shift := 0
	if n := len(words); n > 1 && strings.HasPrefix(words[n-1], "+") {
		shift, err = strconv.Atoi(words[n-1][1:])
		if err != nil || shift < 1 || shift > mostShift {
			return r, fmt.Errorf("enter +1 to +%d for the days after", mostShift)
		}
		words = words[:n-1]
	}
	switch len(words) {
	case 2:
		r, err = parseTwo(words[0], words[1])
	case 3:
		r, err = parseThree(words[0], words[1], words[2])
	default:
		err = errRule
	}
	if r.kind == weekly && shift > 0 {
		return r, errRule
	}
	r.shift = shift
	return r, err
}

func parseSpan(from, to string) (rule, error) {
	a, err := Parse(from)
	if err != nil {
		return rule{}, err
	}
	b, err := Parse(to)
	switch {
	case err != nil:
		return rule{}, err
	case b < a:
		return rule{}, errors.New("its last day comes before its first: turn them round")
	case int(b-a) >= longestSpan:
		return rule{}, fmt.Errorf("it is longer than %d days: enter a shorter one", longestSpan)
	}
	return rule{kind: span, from: a, to: b}, nil
}

// parseTwo reads 24 dec, dec 24 and every mon.
func parseTwo(a, b string) (rule, error) {
	if a == "every" {
		w, ok := parseWeekday(b)
		if !ok {
			return rule{}, errRule
		}
		return rule{kind: weekly, weekday: w}, nil
	}
	day, month := a, b
	if _, ok := parseMonth(a); ok {
		day, month = b, a
	}
	m, ok := parseMonth(month)
	n, err := strconv.Atoi(day)
	if !ok || err != nil {
		return rule{}, errRule
	}
	if last := time.Date(2000, m+1, 0, 0, 0, 0, 0, time.UTC).Day(); n < 1 || n > last {
		return rule{}, fmt.Errorf("%s has 1 to %d days", m, last)
	}
	return rule{kind: yearly, month: m, day: n}, nil
}

// parseThree reads 4 thu nov and last mon may.
func parseThree(nth, weekday, month string) (rule, error) {
	n := slices.Index([]string{"last", "first", "second", "third", "fourth", "fifth"}, nth)
	switch {
	case n == 0:
		n = lastOne
	case n < 0 && len(nth) == 1:
		n = int(nth[0] - '0')
	}
	w, okW := parseWeekday(weekday)
	m, okM := parseMonth(month)
	if !okW || !okM || n != lastOne && (n < 1 || n > 5) {
		return rule{}, errRule
	}
	return nthOf(n, w, m), nil
}

func parseWeekday(s string) (time.Weekday, bool) {
	for w := time.Sunday; w <= time.Saturday; w++ {
		if abbreviates(s, w.String()) {
			return w, true
		}
	}
	return 0, false
}

func parseMonth(s string) (time.Month, bool) {
	for m := time.January; m <= time.December; m++ {
		if abbreviates(s, m.String()) {
			return m, true
		}
	}
	return 0, false
}

// abbreviates says whether s is at least three letters of a name's beginning.
func abbreviates(s, name string) bool {
	return len(s) >= 3 && strings.HasPrefix(strings.ToLower(name), s)
}
