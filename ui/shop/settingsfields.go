package shop

import (
	"fmt"
	"strings"

	"pressworth/catalog"
	"pressworth/quote/money"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// ticked is a box of the page.
type ticked struct {
	path, words string
	at          func(s *record) *bool
}

var weekdays = [7]string{"Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"}

// hourFields are the hours of pressing, Monday to Saturday: no Sunday is a working day.
func hourFields() (all []bound) {
	for day := 1; day < 7; day++ {
		all = append(all, number(fmt.Sprintf("calendar.hours[%d]", day), weekdays[day], "h", func(s *record) *money.Number { return &s.Calendar.Hours[day] }))
	}
	return all
}

// receivingTicks are the days on which goods are taken in.
func receivingTicks() (all []ticked) {
	for day := 1; day < 7; day++ {
		all = append(all, ticked{fmt.Sprintf("calendar.receiving[%d]", day), weekdays[day], func(s *record) *bool { return &s.Calendar.Receiving[day] }})
	}
	return all
}

var holidayTicks = []ticked{
	{"calendar.federal", "closed on US federal holidays", func(s *record) *bool { return &s.Calendar.Days.Federal }},
	{"calendar.saturday_stays", "Saturday holidays are not moved to Friday", func(s *record) *bool { return &s.Calendar.Days.SaturdayStays }},
}

var calendarFields = []bound{
	{
		"calendar.closed", "Further days closed, divided by commas", "",
		func(s *record) string { return strings.Join(s.Calendar.Days.Closed, ", ") },
		func(r *form.Reader, path string, s *record) { s.Calendar.Days.Closed = r.Words(path) }, true,
	},
	count("calendar.spare", "Days kept in hand", "", func(s *record) *int { return &s.Calendar.Spare }),
}

var numberingFields = []bound{
	words("numbering.prefix", "Numbers begin with", func(s *record) *string { return &s.Numbering.Prefix }),
	count("numbering.next", "The next is at least", "", func(s *record) *int { return &s.Numbering.Next }),
	count("numbering.width", "Digits", "", func(s *record) *int { return &s.Numbering.Width }),
}

var letterFields = []bound{
	{
		"letter.subject", "Subject of an e-mail", "",
		func(s *record) string { return s.Letter.Subject },
		func(r *form.Reader, path string, s *record) { s.Letter.Subject = r.Text(path) }, true,
	},
	words("letter.before", "Above the quote, lines divided by ;", func(s *record) *string { return &s.Letter.Before }),
	words("letter.after", "Below it", func(s *record) *string { return &s.Letter.After }),
}

// letterHint names what may stand in braces.
var letterHint = "In braces: {" + strings.Join(catalog.LetterWords, "}, {") + "}. A line whose total or day is not known is left out."

var letteringFields = []bound{
	number("lettering.digit_percent", "Stock digits, spare", "%", func(s *record) *money.Number { return &s.Lettering.DigitPercent }),
	count("lettering.digits_at_least", "of each at least", "", func(s *record) *int { return &s.Lettering.DigitsAtLeast }),
}

var lettering = table{
	"lettering.heights",
	[]string{"printed", "for", "height, in", "widest, in"},
	[]int{0, 1},
	func(s *record) (rows [][]string) {
		for _, h := range s.Lettering.Heights {
			rows = append(rows, []string{h.Text, h.Group, h.Height.String(), h.Widest.String()})
		}
		return rows
	},
	func(r *form.Reader, rows [][]string, s *record) {
		s.Lettering.Heights = nil
		for i, row := range rows {
			one := rowReader(row)
			h := catalog.LetterHeight{Text: one.Need("0", "what is printed, like name"), Group: one.Text("1"), Height: one.Length("2"), Widest: one.Length("3")}
			s.Lettering.Heights = append(s.Lettering.Heights, h)
			said(r, "lettering.heights", i, one)
		}
	}, "",
}

var temperatures = []parts.Option{{Key: catalog.Fahrenheit, Name: "°F"}, {Key: catalog.Celsius, Name: "°C"}}

// handlingTable is how long a piece of a category is handled.
var handlingTable = table{
	"handling",
	[]string{"category", "seconds"},
	[]int{0},
	func(s *record) (rows [][]string) {
		for _, category := range sorted(s.Handling) {
			rows = append(rows, []string{category, s.Handling[category].String()})
		}
		return rows
	},
	func(r *form.Reader, rows [][]string, s *record) {
		s.Handling = nil
		for i, row := range rows {
			one := rowReader(row)
			category := strings.ToLower(one.Need("0", "a category, like hoodie"))
			if s.Handling == nil {
				s.Handling = map[string]money.Number{}
			}
			if _, twice := s.Handling[category]; twice {
				one.Say("0", category+" is there already")
			}
			s.Handling[category] = one.Number("1")
			said(r, "handling", i, one)
		}
	}, "Handling a piece, by category where it differs",
}
