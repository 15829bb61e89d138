package calendar

import (
	"fmt"
	"strings"
	"time"
)

// Day is a day of the calendar, counted from 1 January 1970. 0 stands for no day.
type Day int

// The days that calendars know. Holidays and rules are not meant for others.
var (
	First = On(2000, time.January, 1)
	Last  = On(2199, time.December, 31)
)

const secondsPerDay = 24 * 60 * 60

// On is the day of a date; days beyond the month's end count on, as package time has it.
func On(year int, month time.Month, day int) Day {
	return Day(time.Date(year, month, day, 0, 0, 0, 0, time.UTC).Unix() / secondsPerDay)
}

// Of is the day that a time shows on its own wall.
func Of(t time.Time) Day { return On(t.Date()) }

// Parse reads a day written as 2006-01-02, of the years 2000 to 2199.
func Parse(s string) (Day, error) {
	t, err := time.Parse(time.DateOnly, strings.TrimSpace(s))
	if err != nil {
		return 0, fmt.Errorf("%q is no day: write year-month-day, like 2026-12-24", s)
	}
	if d := Of(t); d >= First && d <= Last {
		return d, nil
	}
	return 0, fmt.Errorf("%s is too far off: enter a day of the years 2000 to 2199", s)
}

// Time is the day's midnight in UTC.
func (d Day) Time() time.Time { return time.Unix(int64(d)*secondsPerDay, 0).UTC() }

// Weekday is the day of the week: 1 January 1970 was a Thursday.
func (d Day) Weekday() time.Weekday { return time.Weekday(((int(d)+int(time.Thursday))%7 + 7) % 7) }

// wall is a day as rules look at it, worked out once for all of them.
type wall struct {
	year    int
	month   time.Month
	day     int
	weekday time.Weekday
	last    bool // there is no later one of its weekday in the month
}

func (d Day) wall() wall {
	t := d.Time()
	w := wall{weekday: d.Weekday()}
	w.year, w.month, w.day = t.Date()
	w.last = w.day > 21 && (d+7).Time().Month() != w.month
	return w
}

// String writes the day as 2006-01-02; no day is empty.
func (d Day) String() string {
	if d == 0 {
		return ""
	}
	return d.Time().Format(time.DateOnly)
}

// Short writes the day as it is said, like Tue 8 Dec.
func (d Day) Short() string { return d.Time().Format("Mon 2 Jan") }

// Monday is the first day of the day's week.
func (d Day) Monday() Day { return d - Day((int(d.Weekday())+6)%7) }

// Clock is a time of day, in minutes after midnight.
type Clock int

// ParseClock reads a time of day written as 14:00; an empty text is the end of the day.
func ParseClock(s string) (Clock, error) {
	s = strings.TrimSpace(s)
	if s == "" {
		return EndOfDay, nil
	}
	t, err := time.Parse("15:04", s)
	if err != nil {
		return 0, fmt.Errorf("%q is no time of day: write hours and minutes, like 14:00", s)
	}
	return ClockOf(t), nil
}

// EndOfDay is the cut-off of who takes orders all day.
const EndOfDay Clock = 24 * 60

// ClockOf is the time of day that a time shows on its own wall.
func ClockOf(t time.Time) Clock { return Clock(60*t.Hour() + t.Minute()) }

// String writes the time of day as 14:00; the end of the day is empty.
func (c Clock) String() string {
	if c >= EndOfDay {
		return ""
	}
	return fmt.Sprintf("%02d:%02d", c/60, c%60)
}
