package calendar

import "time"

// firstJuneteenth is the year of the law that made 19 June a holiday, Public Law 117-17.
const firstJuneteenth = 2021

// Federal names the United States federal holiday that falls on a day, by 5 U.S.C. 6103(a) as it stands since 2021;
// empty where there is none. Inauguration Day, a holiday around Washington only, is left out. A holiday is named on its
// own day, not on the one that stands for it where it falls on a weekend.
func Federal(d Day) string {
	w := d.wall()
	for _, h := range federal {
		if h.falls.closes(d, w) && (h.since == 0 || w.year >= h.since) {
			return h.name
		}
	}
	return ""
}

// federal are the holidays of 5 U.S.C. 6103(a).
var federal = []struct {
	name  string
	since int
	falls rule
}{
	{name: "New Year's Day", falls: rule{kind: yearly, month: time.January, day: 1}},
	{name: "Martin Luther King Jr.'s Birthday", falls: nthOf(3, time.Monday, time.January)},
	{name: "Washington's Birthday", falls: nthOf(3, time.Monday, time.February)},
	{name: "Memorial Day", falls: nthOf(lastOne, time.Monday, time.May)},
	{name: "Juneteenth", since: firstJuneteenth, falls: rule{kind: yearly, month: time.June, day: 19}},
	{name: "Independence Day", falls: rule{kind: yearly, month: time.July, day: 4}},
	{name: "Labor Day", falls: nthOf(1, time.Monday, time.September)},
	{name: "Columbus Day", falls: nthOf(2, time.Monday, time.October)},
	{name: "Veterans Day", falls: rule{kind: yearly, month: time.November, day: 11}},
	{name: "Thanksgiving Day", falls: nthOf(4, time.Thursday, time.November)},
	{name: "Christmas Day", falls: rule{kind: yearly, month: time.December, day: 25}},
}

func nthOf(n int, w time.Weekday, m time.Month) rule {
	return rule{kind: nthWeekday, nth: n, weekday: w, month: m}
}
