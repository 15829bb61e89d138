package calendar_test

import (
	"slices"
	"testing"
	"time"

	"pressworth/quote/calendar"
)

// must makes a calendar of settings that are right.
func must(t testing.TB, s calendar.Settings) calendar.Calendar {
	t.Helper()
	c, err := calendar.New(s)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func day(t testing.TB, s string) calendar.Day {
	t.Helper()
	d, err := calendar.Parse(s)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// closedWeekdays are the days from Monday to Friday that are closed, from a day to another.
func closedWeekdays(c calendar.Calendar, from, to calendar.Day) (out []string) {
	for d := from; d <= to; d++ {
		if w := d.Weekday(); w != time.Saturday && w != time.Sunday && !c.Open(d) {
			out = append(out, d.String())
		}
	}
	return out
}

// Source: 5 U.S.C. 6103, and the holiday list of the Federal Reserve Bank of Richmond for 2026 and 2027. The day kept
// for 1 January 2028, a Saturday, is computed from the same rule.
func TestOutside_federalHolidays(t *testing.T) {
	c := must(t, calendar.Settings{Federal: true})
	for _, want := range []struct {
		from, to string
		closed   []string
	}{
		{"2026-01-01", "2026-12-31", []string{
			"2026-01-01", "2026-01-19", "2026-02-16", "2026-05-25", "2026-06-19",
			"2026-07-03", // 4 July is a Saturday
			"2026-09-07", "2026-10-12", "2026-11-11", "2026-11-26", "2026-12-25",
		}},
		{"2027-01-01", "2027-12-31", []string{
			"2027-01-01", "2027-01-18", "2027-02-15", "2027-05-31",
			"2027-06-18", // 19 June is a Saturday
			"2027-07-05", // 4 July is a Sunday
			"2027-09-06", "2027-10-11", "2027-11-11", "2027-11-25",
			"2027-12-24", // 25 December is a Saturday
			"2027-12-31", // 1 January 2028 is a Saturday
		}},
	} {
		if got := closedWeekdays(c, day(t, want.from), day(t, want.to)); !slices.Equal(got, want.closed) {
			t.Errorf("weekdays closed from %s to %s:\n got %v\nwant %v", want.from, want.to, got, want.closed)
		}
	}
}

// Source: the list of the Federal Reserve Bank of Richmond says of holidays on a Saturday that the banks are open on the
// Friday before; of those on a Sunday, that they are closed on the Monday after.
func TestOutside_banksDoNotMoveASaturdayHoliday(t *testing.T) {
	banks := must(t, calendar.Settings{Federal: true, SaturdayStays: true})
	for d, want := range map[string]bool{"2026-07-03": true, "2027-06-18": true, "2027-12-24": true, "2027-12-31": true, "2027-07-05": false} {
		if got := banks.Open(day(t, d)); got != want {
			t.Errorf("banks open on %s: %v, want %v", d, got, want)
		}
	}
}

// Source: Public Law 117-17, signed on 17 June 2021, made 19 June a holiday; the date from memory.
func TestOutside_juneteenthSince2021(t *testing.T) {
	c := must(t, calendar.Settings{Federal: true})
	for d, want := range map[string]bool{"2020-06-19": true, "2021-06-18": false, "2023-06-19": false} {
		if got := c.Open(day(t, d)); got != want {
			t.Errorf("open on %s: %v, want %v", d, got, want)
		}
	}
}

// Computed by hand from the two rules above: 3 July 2026 is closed by the federal rule and open at the banks.
func TestOutside_businessDaysOverTheFourthOfJuly(t *testing.T) {
	for _, c := range []struct {
		name     string
		settings calendar.Settings
		want     string
	}{
		{"federal", calendar.Settings{Federal: true}, "Tue 7 Jul"},
		{"banks", calendar.Settings{Federal: true, SaturdayStays: true}, "Mon 6 Jul"},
	} {
		got := must(t, c.settings).Add(day(t, "2026-07-01"), 3)
		if got.Short() != c.want {
			t.Errorf("%s: Wed 1 Jul 2026 + 3 business days = %s, want %s", c.name, got.Short(), c.want)
		}
	}
}

// Common practice, no source: carriers and suppliers keep closed days of their own, so federal days are one choice of
// calendar and not what a calendar begins with.
func TestOutside_federalDaysAreAChoice(t *testing.T) {
	var plain calendar.Calendar
	if got := closedWeekdays(plain, day(t, "2026-01-01"), day(t, "2026-12-31")); got != nil {
		t.Errorf("a calendar without settings is closed on %v, want on no weekday", got)
	}
}
