package present

import (
	"regexp"
	"strconv"
	"strings"
	"time"
)

const iso = "2006-01-02"

var (
	inDays   = regexp.MustCompile(`^\+\s*(\d{1,3})$`)
	numeric  = regexp.MustCompile(`^(\d{1,2})[/.](\d{1,2})(?:[/.](\d{2}|\d{4}))?$`)
	dayMonth = regexp.MustCompile(`^(\d{1,2})\s*([a-z]{3,9})\.?(?:\s+(\d{4}))?$`)
	monthDay = regexp.MustCompile(`^([a-z]{3,9})\.?\s*(\d{1,2})(?:,?\s+(\d{4}))?$`)
)

// ParseDate reads a day as it is said at a counter: "18 dec", "dec 18", "12/18" (month first), "+10" (in ten days),
// "fri" (the next Friday), "2026-12-18". A day without a year is the next one from today on.
func ParseDate(s string, today time.Time) (time.Time, bool) {
	s = strings.TrimSpace(s)
	for _, form := range []string{iso, shown} {
		if t, err := time.Parse(form, s); err == nil {
			return t, true
		}
	}
	if t, err := time.Parse(near, s); err == nil {
		return day(strconv.Itoa(t.Day()), t.Month(), "", today)
	}
	s = strings.ToLower(s)
	if m := inDays.FindStringSubmatch(s); m != nil {
		n, _ := strconv.Atoi(m[1])
		return midnight(today).AddDate(0, 0, n), true
	}
	if m := numeric.FindStringSubmatch(s); m != nil {
		month, _ := strconv.Atoi(m[1])
		return day(m[2], time.Month(month), m[3], today)
	}
	if m := dayMonth.FindStringSubmatch(s); m != nil {
		return day(m[1], monthOf(m[2]), m[3], today)
	}
	if m := monthDay.FindStringSubmatch(s); m != nil {
		return day(m[2], monthOf(m[1]), m[3], today)
	}
	return weekday(s, today)
}

// shown is how a day stands in the form, near how a day of the coming months does.
const (
	shown = "Mon 2 Jan 2006"
	near  = "Mon 2 Jan"
)

// ShowDate writes a day kept as 2006-01-02 the way the form shows it, a day of the coming half year without its year;
// anything else is returned as it is.
func ShowDate(s string, today time.Time) string {
	t, err := time.Parse(iso, s)
	if err != nil {
		return s
	}
	if d := t.Sub(midnight(today)).Hours() / 24; d >= 0 && d < 180 {
		return t.Format(near)
	}
	return t.Format(shown)
}

func midnight(t time.Time) time.Time {
	return time.Date(t.Year(), t.Month(), t.Day(), 0, 0, 0, 0, time.UTC)
}

func day(d string, m time.Month, y string, today time.Time) (time.Time, bool) {
	n, _ := strconv.Atoi(d)
	year := today.Year()
	if y != "" {
		year, _ = strconv.Atoi(y)
		if len(y) == 2 {
			year += 2000
		}
	}
	t := time.Date(year, m, n, 0, 0, 0, 0, time.UTC)
	if t.Day() != n || t.Month() != m {
		return t, false
	}
	if y == "" && t.Before(midnight(today)) {
		t = t.AddDate(1, 0, 0)
	}
	return t, true
}

func monthOf(s string) time.Month {
	for m := time.January; m <= time.December; m++ {
		if strings.HasPrefix(strings.ToLower(m.String()), s) || strings.HasPrefix(s, strings.ToLower(m.String()[:3])) {
			return m
		}
	}
	return 0
}

func weekday(s string, today time.Time) (time.Time, bool) {
	if len(s) < 3 {
		return time.Time{}, false
	}
	for i := 1; i <= 7; i++ {
		t := midnight(today).AddDate(0, 0, i)
		if strings.HasPrefix(strings.ToLower(t.Weekday().String()), s) {
			return t, true
		}
	}
	return time.Time{}, false
}

// away says how far off a day is: "16 days", "tomorrow", "3 days ago".
func away(s string, today time.Time) string {
	t, err := time.Parse(iso, s)
	if err != nil {
		return ""
	}
	n := int(t.Sub(midnight(today)).Hours() / 24)
	switch {
	case n == 0:
		return "today"
	case n == 1:
		return "tomorrow"
	case n < 0:
		return figures(-n, "day") + " ago"
	}
	return figures(n, "day")
}
