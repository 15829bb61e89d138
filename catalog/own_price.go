package catalog

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/quote"
)

// CheckOwn says what keeps net and sale prices from being added to a style, by the path of the row each stands in. today is
// the first day on which a new price may hold; those in was are there already.
func CheckOwn(s Style, now, was []Price, today string) []quote.Problem {
	var e entries
	for i, p := range now {
		if !slices.ContainsFunc(was, p.SaysAs) {
			e.own(i, p, s, today)
		}
		if slices.ContainsFunc(now[:i], p.Replaces) {
			e.say(fmt.Sprintf("own[%d]", i), fmt.Sprintf("there is a %s price of %s already", p.Kind, p.Size))
		}
	}
	return e.problems
}

// SaysAs tells whether two entries say the same about the same size and days.
func (p Price) SaysAs(q Price) bool {
	return p.Kind == q.Kind && p.Color == q.Color && p.Size == q.Size && p.From == q.From && p.Until == q.Until &&
		WriteBreaks(p.Each) == WriteBreaks(q.Each)
}

// Replaces tells whether two entries are of the same kind, for the same size and colour.
func (p Price) Replaces(q Price) bool {
	return p.Kind == q.Kind && p.Color == q.Color && p.Size == q.Size
}

func (e *entries) own(i int, p Price, s Style, today string) {
	at := fmt.Sprintf("own[%d]", i)
	say := func(problem string) { e.say(at, problem) }
	switch {
	case p.Kind != NetPrice && p.Kind != SalePrice:
		say("choose net or sale")
	case p.Kind == SalePrice && p.Until == "":
		say("enter the last day of the sale")
	}
	if p.Color != "" && !slices.ContainsFunc(s.Colors, func(c Color) bool { return c.Name == p.Color }) {
		say(p.Color + " is no colour of this style")
	}
	if !s.hasSize(p.Size) {
		say(fmt.Sprintf("%q is no size of this style", p.Size))
	}
	if len(p.Each) == 0 {
		say("enter a price")
	}
	for k, b := range p.Each {
		if b.Each.Sign() <= 0 || b.From < 1 || k > 0 && b.From <= p.Each[k-1].From {
			say("enter prices above 0, like 4.10, or 4.10 72:3.80 for less from 72 on")
			break
		}
	}
	e.span(at, p, today)
}

// span checks the days between which a price holds.
func (e *entries) span(at string, p Price, today string) {
	for _, day := range []string{p.From, p.Until} {
		if _, err := time.Parse(time.DateOnly, day); err != nil && day != "" {
			e.say(at, "enter days as year-month-day, like 2026-05-31")
			return
		}
	}
	switch {
	case p.From != "" && p.From < today:
		e.say(at, "a new price holds from today on or later")
	case p.Until != "" && (p.Until < today || p.Until < p.From):
		e.say(at, "the last day is before the first")
	}
}

func (s Style) hasSize(size string) bool {
	has := func(all []StyleSize) bool {
		return slices.ContainsFunc(all, func(z StyleSize) bool { return strings.EqualFold(z.Size, size) })
	}
	for _, own := range s.ByColor {
		if has(own) {
			return true
		}
	}
	return has(s.Sizes)
}
