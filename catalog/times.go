package catalog

import (
	"math"
	"slices"
	"time"

	"pressworth/quote/calendar"
	"pressworth/quote/money"
)

// Times is what promising a day needs beside the prices: now, the shop's week, and what is promised already.
type Times struct {
	Now    time.Time
	Shop   ShopCalendar
	Booked []Booked // accepted quotes that are not pressed yet
}

// Booked is a job that is promised and not pressed yet.
type Booked struct {
	QuoteID  int64
	Number   string
	Customer string
	Title    string
	NeededBy string // 2006-01-02 or empty
	Hours    money.Number
}

// Press is the shop's week with what is promised in it, but for one quote.
func (t Times) Press(except int64) (calendar.Press, error) {
	days, err := t.Shop.Open()
	if err != nil {
		return calendar.Press{}, err
	}
	p := calendar.Press{Calendar: days, Receives: t.Shop.Receiving, Spare: t.Shop.Spare}
	for w, hours := range t.Shop.Hours {
		p.Minutes[w] = int(math.Round(60 * number(hours)))
	}
	var jobs []calendar.Booked
	for _, b := range t.Booked {
		if b.QuoteID != except || except == 0 {
			due, _ := calendar.Parse(b.NeededBy) // one without a day is pressed when there is room
			jobs = append(jobs, calendar.Booked{Due: due, Minutes: minutesOf(number(b.Hours))})
		}
	}
	p.Promised = p.Promise(calendar.Of(t.Now), jobs)
	return p, nil
}

// number is an exact number for estimates of time, which are rounded to minutes in the end.
func number(n money.Number) float64 {
	f, _ := n.Rat().Float64()
	return f
}

// longest bounds what counts as one job's time: a hundred years of minutes, so that no sum overflows.
const longest = 100 * 366 * 24 * 60

// minutesOf rounds hours up to minutes.
func minutesOf(hours float64) int { return int(math.Ceil(min(max(60*hours, 0), longest))) }

// schedule reckons the days of one draft.
type schedule struct {
	draft  Draft
	book   *Book
	press  calendar.Press
	now    calendar.Moment
	needed calendar.Day // 0: no day was said
}

// newSchedule is nil where the book has no times, or a calendar that cannot be read: then no day is promised.
func newSchedule(d Draft, b *Book) *schedule {
	if b.Times == nil {
		return nil
	}
	press, err := b.Times.Press(d.ID)
	if err != nil {
		return nil
	}
	s := &schedule{draft: d, book: b, press: press, now: calendar.Moment{Day: calendar.Of(b.Times.Now), Clock: calendar.ClockOf(b.Times.Now)}}
	s.needed, _ = calendar.Parse(d.NeededBy)
	return s
}

// open says whether goods are still to be ordered: of an accepted job they are, and its prices hold.
func (s *schedule) open() bool {
	return s.draft.State == "" || s.draft.State == Drafted || s.draft.State == Sent
}

// source is what a supplier sends. One that is not known sends at once; a calendar or cut-off that cannot be read is
// taken for the plain one.
func (s *schedule) source(supplier string) calendar.Source {
	x := calendar.Source{Key: supplier, Name: supplier, CutOff: calendar.EndOfDay}
	for _, u := range s.book.Suppliers {
		if u.Key == supplier {
			x.Name, x.Transit = u.Name, max(u.TransitDays, 0)
			x.Calendar, _ = calendar.New(u.Calendar)
			if at, err := calendar.ParseClock(u.CutOff); err == nil {
				x.CutOff = at
			}
		}
	}
	return x
}

// blanks are the suppliers of the draft's garments.
func (s *schedule) blanks() []calendar.Source {
	var out []calendar.Source
	for _, g := range s.draft.Garments {
		style, ok := s.book.Styles[g.StyleID]
		if ok && !g.FromCustomer && !slices.ContainsFunc(out, func(x calendar.Source) bool { return x.Key == style.Supplier }) {
			out = append(out, s.source(style.Supplier))
		}
	}
	return out
}

// ofCard is what is made on a card, by a tier of its terms; nil is the usual one.
func (s *schedule) ofCard(c RateCard, tier *Rush) calendar.Source {
	x := s.source(c.Card.Supplier)
	x.Name, x.Production, x.SentOut = c.Card.Name, max(c.Terms.ProductionDays, 0), c.Card.Press == nil
	if tier != nil {
		x.Production = max(tier.Days, 0)
	}
	x.Key = c.Card.ID
	return x
}

// estimate is how long the job takes at the press if all of its artwork goes on one card, to see whether the card can
// keep a day before anything is priced.
func (s *schedule) estimate(c RateCard) int {
	shop, pieces, placements := s.book.Shop.Rates, float64(s.draft.Pieces()), float64(len(s.draft.Placements))
	each, once := number(shop.Handling), number(shop.JobSetupMin)
	if p := c.Card.Press; p != nil {
		each += placements * (number(p.Prep) + number(p.Place) + number(p.Dwell) + number(p.Peel) + number(p.Second))
		once += placements * (number(shop.DesignSetupMin) + number(p.PrepMin))
	}
	minutes := (once + pieces*each/60) * (1 + number(shop.AllowancePercent)/100)
	return minutesOf(minutes / 60)
}

// keeps says whether a card keeps the day, and by which tier: the usual one if it does, else the cheapest that does.
func (s *schedule) keeps(c RateCard) (tier *Rush, kept bool) {
	tiers := []*Rush{nil}
	for i := range c.Terms.Rush {
		tiers = append(tiers, &c.Terms.Rush[i])
	}
	slices.SortStableFunc(tiers[1:], func(a, b *Rush) int { return a.Percent.Cmp(b.Percent) })
	for _, t := range tiers {
		plan := calendar.Schedule(calendar.Ask{
			Now: s.now, Needed: s.needed, Minutes: s.estimate(c), Press: s.press, Sources: append(s.blanks(), s.ofCard(c, t)),
		})
		if plan.Kept {
			return t, true
		}
	}
	return nil, false
}
