package book

import (
	"strings"
	"time"

	"pressworth/ui/present"
)

// near writes a day without its year where it is near; nothing for no day.
func (p *Place) near(iso string) string { return present.NearDate(iso, p.Now()) }

// until is a day with how far off it is.
func (p *Place) until(iso string) string {
	if iso == "" {
		return ""
	}
	return p.day(iso) + ", " + present.Away(iso, p.Now())
}

// changed is the day and minute of an RFC 3339 moment, in the time of the place.
func changed(p *Place, moment string) string {
	t, err := time.Parse(time.RFC3339, moment)
	if err != nil {
		return moment
	}
	t = t.In(p.Now().Location())
	if t.Format(time.DateOnly) == p.today() {
		return "today " + t.Format("15:04")
	}
	return p.day(t.Format(time.DateOnly)) + " " + t.Format("15:04")
}

// readDay reads a day to come as it is typed at a counter; what was shown and not changed is what it was.
func readDay(p *Place, typed, was string) (string, bool) {
	typed = strings.TrimSpace(typed)
	switch typed {
	case "":
		return "", true
	case p.near(was):
		return was, true
	}
	day, ok := present.ParseDate(typed, p.Now())
	return day.Format(time.DateOnly), ok
}
