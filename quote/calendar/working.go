package calendar

// OnOrAfter is the day itself if it is a working day, else the next one.
func (c Calendar) OnOrAfter(d Day) Day {
	for !c.Open(d) && d < Last {
		d++
	}
	return d
}

// OnOrBefore is the day itself if it is a working day, else the one before.
func (c Calendar) OnOrBefore(d Day) Day {
	for !c.Open(d) && d > First {
		d--
	}
	return d
}

// Add is the n-th working day after a day; n = 0 is OnOrAfter.
func (c Calendar) Add(d Day, n int) Day {
	if n <= 0 {
		return c.OnOrAfter(d)
	}
	for ; n > 0 && d < Last; n-- {
		d = c.OnOrAfter(d + 1)
	}
	return d
}

// Subtract is the n-th working day before a day; n = 0 is OnOrBefore.
func (c Calendar) Subtract(d Day, n int) Day {
	if n <= 0 {
		return c.OnOrBefore(d)
	}
	for ; n > 0 && d > First; n-- {
		d = c.OnOrBefore(d - 1)
	}
	return d
}

// Between counts the working days after one day up to and with another; the other way round it is negative.
func (c Calendar) Between(from, to Day) int {
	if to < from {
		return -c.Between(to, from)
	}
	n := 0
	for d := from + 1; d <= to; d++ {
		if c.Open(d) {
			n++
		}
	}
	return n
}

// Moment is a time on a day.
type Moment struct {
	Day   Day
	Clock Clock
}

// Counts is the working day that an order counts on: the day itself up to the cut-off, else the next.
func (c Calendar) Counts(order Moment, cutOff Clock) Day {
	if c.Open(order.Day) && order.Clock > cutOff {
		return c.Add(order.Day, 1)
	}
	return c.OnOrAfter(order.Day)
}
