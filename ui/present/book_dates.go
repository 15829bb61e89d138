package present

import "time"

// Away says how far off a day (2006-01-02) is: "16 days", "tomorrow", "3 days ago"; nothing for what is no day.
func Away(s string, today time.Time) string { return away(s, today) }

// NearDate writes a day (2006-01-02) as short as a table wants it: "Fri 4 Dec" within half a year to either side, else
// "4 Dec 2027"; anything else as it is.
func NearDate(s string, today time.Time) string {
	t, err := time.Parse(iso, s)
	if err != nil {
		return s
	}
	if d := t.Sub(midnight(today)).Hours() / 24; d > -180 && d < 180 {
		return t.Format(near)
	}
	return t.Format("2 Jan 2006")
}
