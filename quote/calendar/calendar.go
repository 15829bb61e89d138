// Package calendar counts working days: which days a shop, a supplier or a carrier works, what day an order counts on,
// when goods are here, when a job can be ready, and by when each thing must be ordered. Times are arguments.
//
// Not in this package: a clock, time zones (every day is the one on the wall of who keeps the calendar), what rush
// costs, the shop's records.
package calendar

import (
	"errors"
	"fmt"
	"time"
)

// Settings describe a calendar in the words they are kept in. The zero value works from Monday to Friday, all year.
type Settings struct {
	Saturday bool `json:"saturday,omitempty"` // Saturday is a working day
	Federal  bool `json:"federal,omitempty"`  // closed on United States federal holidays
	// SaturdayStays leaves a federal holiday that falls on a Saturday where it is, as banks do; else the Friday before is
	// closed as well, unless Saturday is a working day.
	SaturdayStays bool `json:"saturday_stays,omitempty"`
	// Closed are further closed days: a day (2026-12-24), a span (2026-12-24..2027-01-01), a day of every year (24 dec), a
	// weekday of a month (last mon may, 4 thu nov, 4 thu nov +1 for the day after) or of every week (every mon).
	Closed []string `json:"closed,omitempty"`
}

// mostClosed bounds the entries of a calendar, so that there is always a working day to be found.
const mostClosed = 100

// Calendar tells working days from closed ones. The zero value works from Monday to Friday, all year.
type Calendar struct {
	saturday, federal, stays bool
	rules                    []rule
}

// New reads settings; the error names every entry that cannot be read.
func New(s Settings) (Calendar, error) {
	c := Calendar{saturday: s.Saturday, federal: s.Federal, stays: s.SaturdayStays}
	if len(s.Closed) > mostClosed {
		return Calendar{}, fmt.Errorf("%d closed days: enter at most %d lines, a span counts as one", len(s.Closed), mostClosed)
	}
	var wrong []error
	for i, text := range s.Closed {
		r, err := parseRule(text)
		if err != nil {
			wrong = append(wrong, fmt.Errorf("closed day %d, %q: %w", i+1, text, err))
			continue
		}
		c.rules = append(c.rules, r)
	}
	if len(wrong) == 0 && !c.worksSome() {
		wrong = append(wrong, errors.New("every day of the week is closed: leave one to work on"))
	}
	if len(wrong) > 0 {
		return Calendar{}, errors.Join(wrong...)
	}
	return c, nil
}

// worksSome says whether a week without holidays has a working day.
func (c Calendar) worksSome() bool {
	for w := time.Monday; w <= time.Saturday; w++ {
		if c.works(w) {
			return true
		}
	}
	return false
}

// works says whether a weekday is worked on when there is nothing else.
func (c Calendar) works(w time.Weekday) bool {
	if w == time.Sunday || w == time.Saturday && !c.saturday {
		return false
	}
	for _, r := range c.rules {
		if r.kind == weekly && r.weekday == w {
			return false
		}
	}
	return true
}

// Open says whether a day is a working day.
func (c Calendar) Open(d Day) bool {
	if !c.works(d.Weekday()) {
		return false
	}
	if c.federal && c.holiday(d) {
		return false
	}
	if len(c.rules) == 0 {
		return true
	}
	w := d.wall()
	for _, r := range c.rules {
		if r.closes(d, w) {
			return false
		}
	}
	return true
}

// holiday says whether a federal holiday is kept on a day: the day itself, or the one that stands for it.
func (c Calendar) holiday(d Day) bool {
	if Federal(d) != "" {
		return true
	}
	switch d.Weekday() {
	case time.Monday:
		return Federal(d-1) != ""
	case time.Friday:
		return !c.stays && !c.saturday && Federal(d+1) != ""
	}
	return false
}
