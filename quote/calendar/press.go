package calendar

import "time"

// Press is the shop's own week: the days it works, takes goods in and presses, and what is promised already. Minutes and
// Receives are by day of the week, Sunday first.
type Press struct {
	Calendar Calendar
	Minutes  [7]int
	Receives [7]bool
	Spare    int         // working days kept in hand before the day needed
	Promised map[Day]int // minutes of pressing, by day
}

// Booked is a job that is promised: how long it takes, and the day it is needed; 0: no day was said.
type Booked struct {
	Due     Day
	Minutes int
}

// presses says whether any working day has minutes of pressing; else how long pressing takes is not known.
func (p Press) presses() bool {
	return p.somewhere(func(w time.Weekday) bool { return p.Minutes[w] > 0 })
}

func (p Press) somewhere(f func(time.Weekday) bool) bool {
	for w := time.Sunday; w <= time.Saturday; w++ {
		if p.Calendar.works(w) && f(w) {
			return true
		}
	}
	return false
}

// takesIn says whether goods are taken in on a day. A shop that takes goods in on closed days only takes them on any
// day that it works.
func (p Press) takesIn(d Day) bool {
	if !p.Calendar.Open(d) {
		return false
	}
	return p.Receives[d.Weekday()] || !p.somewhere(func(w time.Weekday) bool { return p.Receives[w] })
}

// TakenIn is the day on which goods that arrive are taken in.
func (p Press) TakenIn(arrive Day) Day {
	for !p.takesIn(arrive) && arrive < Last {
		arrive++
	}
	return arrive
}

// lastTakenIn is the last day up to another on which goods are taken in.
func (p Press) lastTakenIn(by Day) Day {
	for !p.takesIn(by) && by > First {
		by--
	}
	return by
}

// Capacity is the minutes of pressing that a day has.
func (p Press) Capacity(d Day) int {
	if !p.Calendar.Open(d) {
		return 0
	}
	return max(p.Minutes[d.Weekday()], 0)
}

// Free is what of a day's minutes is not promised yet.
func (p Press) Free(d Day) int { return max(p.Capacity(d)-p.Promised[d], 0) }

// Finish is the day on which so many minutes of pressing are done that begin on a day.
func (p Press) Finish(from Day, minutes int) Day {
	d := p.Calendar.OnOrAfter(from)
	if minutes <= 0 || !p.presses() {
		return d
	}
	for ; d < Last; d++ {
		if minutes -= p.Free(d); minutes <= 0 {
			break
		}
	}
	return d
}

// LatestStart is the last day on which pressing may begin to be done by a day.
func (p Press) LatestStart(by Day, minutes int) Day {
	d := p.Calendar.OnOrBefore(by)
	if minutes <= 0 || !p.presses() {
		return d
	}
	for ; d > First; d-- {
		if minutes -= p.Free(d); minutes <= 0 {
			break
		}
	}
	return d
}

// Promise lays the minutes of promised jobs on days from today on: each as late as its day allows, those due last first,
// which keeps every day that can be kept and leaves the next days free (the schedule by earliest due date, read
// backwards). What does not fit before its day, and what has no day, goes to the first days that are free.
func (p Press) Promise(today Day, jobs []Booked) map[Day]int {
	promised := make(map[Day]int)
	p.Promised = promised
	if !p.presses() {
		return promised
	}
	left, due, last := 0, make(map[Day]int), Day(0)
	for _, j := range jobs {
		if j.Due == 0 {
			left += max(j.Minutes, 0)
			continue
		}
		due[min(j.Due, Last)] += max(j.Minutes, 0)
	}
	by := make(map[Day]int, len(due))
	for d, minutes := range due {
		d = p.Calendar.Subtract(d, p.Spare)
		by[max(d, today-1)] += minutes
		last = max(last, d)
	}
	rest := 0
	for d := last; d >= today; d-- {
		rest += by[d]
		rest -= p.put(d, rest)
	}
	left += rest + by[today-1]
	for d := today; d < Last && left > 0; d++ {
		left -= p.put(d, left)
	}
	return promised
}

// put promises what a day still takes of some minutes, and says how much that is.
func (p Press) put(d Day, minutes int) int {
	n := min(p.Free(d), minutes)
	if n > 0 {
		p.Promised[d] += n
	}
	return n
}

// Week is what is promised in one week.
type Week struct {
	Monday   Day
	Capacity int // minutes of pressing
	Promised int
	Days     [7]WeekDay // Monday first
}

// WeekDay is what is promised on one day.
type WeekDay struct {
	Day                Day
	Open               bool
	Capacity, Promised int
}

// Weeks sums up what is promised in so many weeks from the one of a day on.
func (p Press) Weeks(from Day, count int) []Week {
	weeks := make([]Week, 0, max(count, 0))
	for i := range max(count, 0) {
		w := Week{Monday: from.Monday() + Day(7*i)}
		for j := range w.Days {
			d := w.Monday + Day(j)
			w.Days[j] = WeekDay{Day: d, Open: p.Calendar.Open(d), Capacity: p.Capacity(d), Promised: p.Promised[d]}
			w.Capacity += w.Days[j].Capacity
			w.Promised += w.Days[j].Promised
		}
		weeks = append(weeks, w)
	}
	return weeks
}
