package calendar_test

import (
	"strings"
	"testing"

	"pgregory.net/rapid"

	"pressworth/quote/calendar"
)

func TestCalendar_closedDays(t *testing.T) {
	c := must(t, calendar.Settings{Closed: []string{
		"2026-08-03..2026-08-14", "24 dec", "dec 31", "last mon may", "4 thu nov", "fourth thu nov +1", "every wed", "2026-03-05",
	}})
	for d, open := range map[string]bool{
		"2026-08-03": false, "2026-08-14": false, "2026-08-17": true,
		"2026-12-24": false, "2030-12-24": false, "2026-12-31": false,
		"2026-05-25": false, "2026-05-18": true,
		"2026-11-26": false, "2026-11-27": false, "2026-11-20": true,
		"2026-02-04": false, "2026-02-05": true,
		"2026-03-05": false, "2027-03-05": true,
	} {
		if got := c.Open(day(t, d)); got != open {
			t.Errorf("open on %s: %v, want %v", d, got, open)
		}
	}
}

func TestCalendar_aSaturdayWorkedOnKeepsItsHoliday(t *testing.T) {
	c := must(t, calendar.Settings{Federal: true, Saturday: true})
	for d, open := range map[string]bool{
		"2026-07-03": true, "2026-07-04": false, "2026-07-11": true, "2026-07-12": false, "2027-07-05": false,
	} {
		if got := c.Open(day(t, d)); got != open {
			t.Errorf("open on %s: %v, want %v", d, got, open)
		}
	}
}

func TestCalendar_refusesWhatItCannotRead(t *testing.T) {
	for text, says := range map[string]string{
		"christmas":              "write a day",
		"2026-13-01":             "write a day",
		"31 feb":                 "February has 1 to 29 days",
		"6 mon may":              "write a day",
		"0 mon may":              "write a day",
		"4 thu nov +x":           "+1 to +30",
		"4 thu nov +31":          "+1 to +30",
		"every sol":              "write a day",
		"every mon +1":           "write a day",
		"2026-08-14..2026-08-03": "turn them round",
		"2026-01-01..2027-01-02": "longer than 366 days",
		"2026-01-01..":           "is no day",
		"1999-12-31..2000-01-05": "too far off",
		"":                       "write a day",
	} {
		_, err := calendar.New(calendar.Settings{Closed: []string{"24 dec", text}})
		if err == nil || !strings.Contains(err.Error(), says) || !strings.Contains(err.Error(), "closed day 2") {
			t.Errorf("closed day %q: error %v, want one that names closed day 2 and says %q", text, err, says)
		}
	}
	week := calendar.Settings{Closed: []string{"every mon", "every tue", "every wed", "every thu", "every fri"}}
	if _, err := calendar.New(week); err == nil || !strings.Contains(err.Error(), "leave one") {
		t.Errorf("a week without a working day: error %v, want it refused", err)
	}
	week.Saturday = true
	if c := must(t, week); c.OnOrAfter(day(t, "2026-01-05")) != day(t, "2026-01-10") {
		t.Error("a shop that works on Saturdays only should open on Saturday 10 January 2026")
	}
	many := calendar.Settings{Closed: strings.Split(strings.Repeat("24 dec,", 100)+"25 dec", ",")}
	if _, err := calendar.New(many); err == nil || !strings.Contains(err.Error(), "at most 100") {
		t.Errorf("101 closed days: error %v, want them refused", err)
	}
}

func TestCalendar_countsOrdersByTheCutOff(t *testing.T) {
	c := must(t, calendar.Settings{Federal: true})
	two, err := calendar.ParseClock("14:00")
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		what string
		day  string
		at   calendar.Clock
		want string
	}{
		{"before the cut-off", "2026-07-02", 13 * 60, "2026-07-02"},
		{"at the cut-off", "2026-07-02", 14 * 60, "2026-07-02"},
		{"after it, over the holiday and the weekend", "2026-07-02", 14*60 + 1, "2026-07-06"},
		{"late on a closed day", "2026-07-04", 23 * 60, "2026-07-06"},
	} {
		if got := c.Counts(calendar.Moment{Day: day(t, x.day), Clock: x.at}, two); got != day(t, x.want) {
			t.Errorf("%s: an order of %s %s counts on %s, want %s", x.what, x.day, x.at, got, x.want)
		}
	}
}

func TestClock_reads(t *testing.T) {
	for text, want := range map[string]calendar.Clock{"14:00": 840, " 9:30 ": 570, "": calendar.EndOfDay} {
		if got, err := calendar.ParseClock(text); err != nil || got != want {
			t.Errorf("clock %q = %d, %v; want %d", text, got, err, want)
		}
	}
	for _, text := range []string{"2 pm", "25:00", "14", "14:60"} {
		if got, err := calendar.ParseClock(text); err == nil {
			t.Errorf("clock %q = %s, want an error", text, got)
		}
	}
}

func TestDay_reads(t *testing.T) {
	for _, text := range []string{"", "2026-02-30", "1999-12-31", "2200-01-01", "18 dec"} {
		if got, err := calendar.Parse(text); err == nil {
			t.Errorf("day %q = %s, want an error", text, got)
		}
	}
	if got := day(t, "2026-12-13").Monday(); got != day(t, "2026-12-07") {
		t.Errorf("the week of Sunday 13 December 2026 begins on %s, want Monday 7 December", got)
	}
}

// calendars draws calendars with a few closed days of every kind.
func calendars(t *rapid.T) calendar.Calendar {
	closed := rapid.SliceOfN(rapid.SampledFrom([]string{
		"24 dec", "last mon may", "4 thu nov", "4 thu nov +1", "every mon", "every fri", "2026-08-03..2026-08-14", "2026-12-21..2027-01-08", "5 wed sep",
	}), 0, 5).Draw(t, "closed")
	c, err := calendar.New(calendar.Settings{
		Saturday: rapid.Bool().Draw(t, "saturday"), Federal: rapid.Bool().Draw(t, "federal"),
		SaturdayStays: rapid.Bool().Draw(t, "stays"), Closed: closed,
	})
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func days(t *rapid.T, name string) calendar.Day {
	return calendar.On(2026, 1, 1) + calendar.Day(rapid.IntRange(0, 800).Draw(t, name))
}

func TestCalendar_subtractUndoesAdd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, n := calendars(t), rapid.IntRange(0, 60).Draw(t, "n")
		d := c.OnOrAfter(days(t, "day"))
		if got := c.Subtract(c.Add(d, n), n); got != d {
			t.Fatalf("%s + %d working days - %d = %s", d, n, n, got)
		}
		if got := c.Between(d, c.Add(d, n)); got != n {
			t.Fatalf("%d working days from %s to %s, want %d", got, d, c.Add(d, n), n)
		}
	})
}

func TestCalendar_addAndSubtractAreMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, n := calendars(t), rapid.IntRange(0, 30).Draw(t, "n")
		a, b := days(t, "a"), days(t, "b")
		if a > b {
			a, b = b, a
		}
		if c.Add(a, n) > c.Add(b, n) || c.Subtract(a, n) > c.Subtract(b, n) {
			t.Fatalf("%d working days from %s: %s, %s; from the later %s: %s, %s",
				n, a, c.Add(a, n), c.Subtract(a, n), b, c.Add(b, n), c.Subtract(b, n))
		}
		if c.Add(a, n) > c.Add(a, n+1) || c.Subtract(a, n) < c.Subtract(a, n+1) {
			t.Fatalf("from %s, %d working days reach further than %d", a, n, n+1)
		}
		for _, d := range []calendar.Day{c.Add(a, n), c.Subtract(a, n)} {
			if !c.Open(d) {
				t.Fatalf("%d working days from %s end on %s, a closed day", n, a, d)
			}
		}
	})
}

func FuzzNew(f *testing.F) {
	for _, s := range []string{"24 dec", "4 thu nov +1", "2026-12-24..2027-01-01", "every mon", "last mon may", "++", "+1", "..", "é dec"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := calendar.New(calendar.Settings{Closed: []string{text}})
		if err != nil {
			return
		}
		if d := c.Add(calendar.On(2026, 1, 1), 5); !c.Open(d) {
			t.Errorf("with %q closed, the fifth working day of 2026 is %s, which is closed", text, d)
		}
	})
}
