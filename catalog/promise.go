package catalog

import (
	"fmt"
	"strings"

	"pressworth/quote"
	"pressworth/quote/calendar"
)

// Promise is by when a priced draft can be ready, and what that asks for.
type Promise struct {
	calendar.Plan
	Needed   calendar.Day // 0: no day was said
	Warnings []string     // the day cannot be kept, and what would help
	Notes    []string     // cards left out because of the day, and rush that is reckoned with
}

// Reckon works out the days of a draft that was frozen with a book as a job and priced; false where the book has no
// times, or nothing is to be ordered any more.
func Reckon(d Draft, b Book, job quote.Job, r quote.Result) (Promise, bool) {
	s := newSchedule(d, &b)
	if s == nil || !s.open() {
		return Promise{}, false
	}
	x := reckoner{schedule: s, job: &job, result: &r, minutes: s.minutes(r)}
	p := Promise{Needed: s.needed}
	p.Plan = x.plan(func(c RateCard) *Rush { return x.tier(c) })
	if s.needed != 0 {
		x.warn(&p)
		x.note(&p)
	}
	return p, true
}

// minutes of pressing, as the result says.
func (s *schedule) minutes(r quote.Result) int {
	var h float64
	if _, err := fmt.Sscan(r.Hours, &h); err != nil {
		return 0
	}
	return minutesOf(h)
}

// reckoner reckons the days of a job that is priced.
type reckoner struct {
	*schedule
	job     *quote.Job
	result  *quote.Result
	minutes int
}

// plan reckons with what the job buys, each card by the tier that is chosen for it.
func (x *reckoner) plan(tier func(RateCard) *Rush) calendar.Plan {
	ask := calendar.Ask{Now: x.now, Needed: x.needed, Minutes: x.minutes, Press: x.press}
	seen := map[string]bool{}
	for _, b := range x.result.Purchases.Blanks {
		if !seen[b.Supplier] {
			seen[b.Supplier] = true
			source := x.source(b.Supplier)
			source.Name = "Blanks from " + source.Name
			ask.Sources = append(ask.Sources, source)
		}
	}
	for _, c := range x.cards() {
		ask.Sources = append(ask.Sources, x.ofCard(c, tier(c)))
	}
	return calendar.Schedule(ask)
}

// cards are the shop's records of the cards that the job buys on.
func (x *reckoner) cards() []RateCard {
	var out []RateCard
	seen := map[string]bool{}
	for _, t := range x.result.Purchases.Transfers {
		key := PaidCard(t.Card)
		for _, c := range x.book.Cards {
			if c.Card.ID == key && !seen[key] {
				seen[key] = true
				out = append(out, c)
			}
		}
	}
	return out
}

// tier is the rush that the job was frozen with, which the card's name in it tells.
func (x *reckoner) tier(c RateCard) *Rush {
	for i, t := range c.Terms.Rush {
		for _, have := range x.job.RateCards {
			if PaidCard(have.ID) == c.Card.ID && strings.Contains(have.Name, t.words()) {
				return &c.Terms.Rush[i]
			}
		}
	}
	return nil
}

// fastest is the quickest tier of a card; nil where the usual one is as quick.
func fastest(c RateCard) (quickest *Rush) {
	for i, t := range c.Terms.Rush {
		if t.Days < c.Terms.ProductionDays && (quickest == nil || t.Days < quickest.Days) {
			quickest = &c.Terms.Rush[i]
		}
	}
	return quickest
}

func (x *reckoner) warn(p *Promise) {
	if p.Kept {
		return
	}
	if x.needed < x.now.Day {
		p.Warnings = append(p.Warnings, fmt.Sprintf("The day needed, %s, has passed.", x.needed.Short()))
		return
	}
	text := fmt.Sprintf("%s cannot be kept: ready %s at the earliest.", x.needed.Short(), p.Ready.Short())
	if p.Due != x.press.Calendar.OnOrBefore(x.needed) {
		text = fmt.Sprintf("%s cannot be kept with the days in hand: ready %s, due %s.", x.needed.Short(), p.Ready.Short(), p.Due.Short())
	}
	p.Warnings = append(p.Warnings, text)
	for _, o := range p.Orders {
		if o.Late {
			p.Warnings = append(p.Warnings, fmt.Sprintf("%s: was to be ordered by %s (%s).", o.Source.Name, o.By(), o.LatestBasis))
		}
	}
	if text := x.help(p); text != "" {
		p.Warnings = append(p.Warnings, text)
	}
}

// help suggests what would make the job ready sooner: another card where one is fixed, else rush.
func (x *reckoner) help(p *Promise) string {
	for _, pl := range x.draft.Placements {
		for _, c := range x.book.Cards {
			if c.Card.ID != pl.Method || !c.ValidOn(x.draft.QuotedOn) {
				continue
			}
			if _, ok := x.keeps(c); !ok && len(x.inTime()) > 0 {
				return fmt.Sprintf("%s is fixed on %s; %s could keep the day.", pl.Name, c.Card.Name, either(x.inTime()))
			}
		}
	}
	var words []string
	for _, c := range x.cards() {
		if t := fastest(c); t != nil && x.tier(c) == nil {
			words = append(words, c.Card.Name+t.words())
		}
	}
	if quick := x.plan(fastest); len(words) > 0 && quick.Ready < p.Ready {
		return fmt.Sprintf("With %s it would be ready %s.", strings.Join(words, " and "), quick.Ready.Short())
	}
	return ""
}

// inTime are the names of the cards that keep the day.
func (x *reckoner) inTime() (names []string) {
	for _, c := range x.book.Cards {
		if c.ValidOn(x.draft.QuotedOn) {
			if _, ok := x.keeps(c); ok {
				names = append(names, c.Card.Name)
			}
		}
	}
	return names
}

func either(names []string) string {
	if len(names) == 1 {
		return names[0]
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

// note tells of the cards that the day leaves out, and of rush that is in the cost.
func (x *reckoner) note(p *Promise) {
	var out []string
	for _, c := range x.book.Cards {
		if c.ValidOn(x.draft.QuotedOn) && placeOf(x.job.RateCards, c.Card.ID) < 0 {
			out = append(out, c.Card.Name)
		}
	}
	if len(out) > 0 {
		p.Notes = append(p.Notes, "Too late for "+x.needed.Short()+", so left out of the choice: "+strings.Join(out, ", ")+".")
	}
	for _, c := range x.cards() {
		if t := x.tier(c); t != nil {
			p.Notes = append(p.Notes, fmt.Sprintf("To keep %s, the cost holds rush for %s: %s, %s %% more.", x.needed.Short(), c.Card.Name, days(t.Days), t.Percent))
		}
	}
}
