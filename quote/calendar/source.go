package calendar

import (
	"fmt"
	"strings"
)

// Source is something that a job waits for: blanks from a supplier, or what is made on a rate card.
type Source struct {
	Key        string
	Name       string
	Calendar   Calendar // the days its supplier works and ships
	CutOff     Clock    // an order later in the day counts on the next working day
	Production int      // working days until it is sent
	Transit    int      // working days on the way
	SentOut    bool     // the shop's goods go there and come back; the way is counted twice
}

// Arrives is when an order is at the shop's door: production begins on the working day after the one it counts on.
func (s Source) Arrives(order Moment) Day {
	return s.arrives(s.Calendar.Counts(order, s.CutOff))
}

func (s Source) arrives(counts Day) Day {
	if s.SentOut {
		counts = s.Calendar.Add(counts, s.Transit)
	}
	return s.Calendar.Add(s.Calendar.Add(counts, s.Production), s.Transit)
}

// LatestOrder is the last day, up to the cut-off, on which an order still arrives by a day.
func (s Source) LatestOrder(by Day) Day {
	c := s.Calendar
	order := c.Subtract(c.Subtract(c.OnOrBefore(by), s.Transit), s.Production)
	if s.SentOut {
		order = c.Subtract(order, s.Transit)
	}
	return order
}

// takes says what the days between order and arrival are made of, like "3 working days to make, 2 on the way".
func (s Source) takes() string {
	var parts []string
	if s.Production > 0 {
		parts = append(parts, workingDays(s.Production)+" to make")
	}
	switch {
	case s.Transit > 0 && len(parts) == 0:
		parts = append(parts, workingDays(s.Transit)+" on the way")
	case s.Transit > 0:
		parts = append(parts, fmt.Sprintf("%d on the way", s.Transit))
	}
	if s.SentOut && s.Transit > 0 {
		parts = append(parts, "there and back")
	}
	if len(parts) == 0 {
		return "at hand the same day"
	}
	return strings.Join(parts, ", ")
}

func workingDays(n int) string {
	if n == 1 {
		return "1 working day"
	}
	return fmt.Sprintf("%d working days", n)
}
