package present

import (
	"time"

	"pressworth/catalog"
	"pressworth/quote/calendar"
)

// Dates are by when the job can be ready, and by when each thing has to be ordered for the day it is needed.
type Dates struct {
	Line  string // "Ready by Fri 11 Dec, needed by Fri 18 Dec"; empty: nothing is reckoned
	Basis string // how the day came about
	Late  bool   // the day needed cannot be kept
	Rows  []DateRow
}

// DateRow is when one thing has to be ordered, or arrives where no day is needed.
type DateRow struct {
	Name  string // "Blanks from Northgate Blanks"
	When  string // "order by Mon 14 Dec 14:00"
	Basis string
	Late  bool // the day has passed
}

// promise reckons the days of the last good figures.
func (c *Counter) promise() (catalog.Promise, bool) {
	if !c.priced {
		return catalog.Promise{}, false
	}
	return catalog.Reckon(c.draft, c.book, c.job, c.result)
}

// addDates puts the days, and what they warn of, into the panel.
func (c *Counter) addDates(p *Panel) {
	promise, ok := c.promise()
	if !ok {
		return
	}
	p.Dates = datesOf(promise)
	notes := make([]Note, 0, len(p.Notes)+len(promise.Warnings)+len(promise.Notes))
	for _, text := range promise.Warnings {
		notes = append(notes, Note{Text: text, Path: "needed_by", Warning: true})
	}
	for _, text := range promise.Notes {
		notes = append(notes, Note{Text: text, Path: "needed_by"})
	}
	p.Notes = append(notes, p.Notes...)
}

func datesOf(p catalog.Promise) Dates {
	d := Dates{Line: "Ready by " + p.Ready.Short(), Basis: p.Basis, Late: !p.Kept}
	if p.Needed != 0 {
		d.Line += ", needed by " + p.Needed.Short()
	}
	for _, o := range p.Orders {
		r := DateRow{Name: o.Source.Name, When: "here " + o.Arrives.Short(), Basis: o.Basis, Late: o.Late}
		if by := o.By(); by != "" {
			r.When, r.Basis = "order by "+by, o.LatestBasis
			if o.Source.SentOut {
				r.When = "send out by " + by
			}
		}
		d.Rows = append(d.Rows, r)
	}
	return d
}

// spoken is a day in full, as it is said to a customer.
func spoken(d calendar.Day) string { return d.Time().Format("Monday 2 January") }

// frontDate says to the customer by when the goods are ready and needed.
func (c *Counter) frontDate() string {
	needed, err := time.Parse(iso, c.draft.NeededBy)
	p, ok := c.promise()
	switch {
	case ok && err != nil:
		return "Ready by " + spoken(p.Ready) + "."
	case ok && p.Kept:
		return "Ready by " + spoken(p.Ready) + ", in time for " + needed.Format("Monday 2 January") + "."
	case ok:
		return "Ready by " + spoken(p.Ready) + "; needed by " + needed.Format("Monday 2 January") + "."
	case err == nil:
		return "Needed by " + needed.Format("Monday 2 January") + "."
	}
	return ""
}
