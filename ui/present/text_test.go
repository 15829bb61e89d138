package present

import (
	"testing"
	"time"
)

func TestGrouped_puttingCommasBetweenThousands(t *testing.T) {
	for in, want := range map[string]string{
		"0.00": "0.00", "999.99": "999.99", "1261.38": "1,261.38", "-1234567.5": "−1,234,567.5", "12": "12", "100000": "100,000",
		"n/a": "n/a", "": "",
	} {
		if got := Grouped(in); got != want {
			t.Errorf("%q: got %q, want %q", in, got, want)
		}
	}
}

func TestParseDate_readsHowPeopleSayIt(t *testing.T) {
	today := time.Date(2026, 12, 2, 9, 30, 0, 0, time.UTC)
	for in, want := range map[string]string{
		"18 dec": "2026-12-18", "dec 18": "2026-12-18", "12/18": "2026-12-18", "1/15": "2027-01-15", "+10": "2026-12-12",
		"fri": "2026-12-04", "Wed": "2026-12-09", "2026-12-18": "2026-12-18", "Fri 18 Dec 2026": "2026-12-18",
		"Fri 18 Dec": "2026-12-18", "5 march 2027": "2027-03-05", "2 dec": "2026-12-02",
	} {
		got, ok := ParseDate(in, today)
		if !ok || got.Format(iso) != want {
			t.Errorf("%q: got %s %v, want %s", in, got.Format(iso), ok, want)
		}
	}
	for _, in := range []string{"", "soon", "31 feb", "13/40", "+", "0/0"} {
		if got, ok := ParseDate(in, today); ok {
			t.Errorf("%q: got %s, want no date", in, got.Format(iso))
		}
	}
}

func TestSplitInches_readsOneFieldAsTwo(t *testing.T) {
	for in, want := range map[string][2]string{
		"11 x 8.5": {"11", "8.5"}, "11×8.5": {"11", "8.5"}, "11 8.5": {"11", "8.5"}, "3 1/2 x 4": {"3 1/2", "4"},
		`11" x 8.5"`: {"11", "8.5"}, "11": {"11", ""}, "3 1/2": {"3 1/2", ""}, "": {"", ""}, "4 by 5": {"4", "5"},
	} {
		if w, h := splitInches(in); w != want[0] || h != want[1] {
			t.Errorf("%q: got %q and %q, want %q", in, w, h, want)
		}
	}
}

func TestPlural_ofTheTradesWords(t *testing.T) {
	for in, want := range map[string]string{"copy": "copies", "day": "days", "polo": "polos", "patch": "patches", "cap": "caps", "dress": "dresses"} {
		if got := plural(2, in); got != want {
			t.Errorf("%s: got %s, want %s", in, got, want)
		}
	}
}
