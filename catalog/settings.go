package catalog

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"time"

	"pressworth/quote"
	"pressworth/quote/calendar"
	"pressworth/quote/money"
)

// ShopCalendar says when the shop is open, presses and takes goods in.
type ShopCalendar struct {
	Days      calendar.Settings `json:"days"`            // Saturday follows Hours
	Hours     [7]money.Number   `json:"hours"`           // hours of pressing by day of the week, Sunday first; 0: none
	Receiving [7]bool           `json:"receiving"`       // days of the week on which goods are taken in, Sunday first
	Spare     int               `json:"spare,omitempty"` // working days kept in hand before the day promised
}

// DefaultShopCalendar is Monday to Friday, six hours at the press, without holidays: common practice, no source.
func DefaultShopCalendar() ShopCalendar {
	var c ShopCalendar
	for day := time.Monday; day <= time.Friday; day++ {
		c.Hours[day], c.Receiving[day] = money.Int(6), true
	}
	return c
}

// Open tells the days on which the shop works.
func (c ShopCalendar) Open() (calendar.Calendar, error) {
	c.Days.Saturday = c.Hours[time.Saturday].Sign() > 0
	return calendar.New(c.Days)
}

// Check names what is wrong with the calendar, by the fields' paths.
func (c ShopCalendar) Check() (problems []quote.Problem) {
	say := func(path, problem string) {
		problems = append(problems, quote.Problem{Path: "calendar." + path, Problem: problem})
	}
	if _, err := c.Open(); err != nil {
		say("closed", err.Error())
	}
	open := false
	for day, hours := range c.Hours {
		if hours.Sign() < 0 || hours.Cmp(money.Int(24)) > 0 {
			say(fmt.Sprintf("hours[%d]", day), "enter 0 to 24 hours")
		}
		open = open || hours.Sign() > 0
	}
	if c.Hours[time.Sunday].Sign() > 0 {
		say("hours[0]", "a Sunday is no working day")
	}
	if !open {
		say("hours[1]", "enter hours of pressing for one day of the week at least")
	}
	if !slices.Contains(c.Receiving[:], true) {
		say("receiving", "choose one day at least on which goods are taken in")
	}
	if c.Spare < 0 || c.Spare > 60 {
		say("spare", "enter 0 to 60 days")
	}
	return problems
}

// Numbering says how quotes are numbered: prefix, then a count with leading zeros.
type Numbering struct {
	Prefix string `json:"prefix"`          // {year} in it stands for the year
	Next   int    `json:"next"`            // the least number the next quote may get
	Width  int    `json:"width,omitempty"` // digits, with zeros before them
}

// DefaultNumbering counts from 1 in every year, like 2026-0001.
func DefaultNumbering() Numbering { return Numbering{Prefix: "{year}-", Next: 1, Width: 4} }

// Begins is what the numbers of a year begin with.
func (n Numbering) Begins(year int) string {
	return strings.ReplaceAll(n.Prefix, "{year}", fmt.Sprintf("%04d", year))
}

// Write makes the number of a count.
func (n Numbering) Write(year, count int) string {
	return fmt.Sprintf("%s%0*d", n.Begins(year), n.Width, count)
}

var prefixes = regexp.MustCompile(`^[\p{L}\p{N} ./_#-]{0,20}$`)

// Check names what is wrong with the numbering.
func (n Numbering) Check() (problems []quote.Problem) {
	if !prefixes.MatchString(strings.ReplaceAll(n.Prefix, "{year}", "")) {
		problems = append(problems, quote.Problem{Path: "numbering.prefix", Problem: "enter letters, digits and - . / only, {year} for the year"})
	}
	if last := strings.TrimSuffix(n.Prefix, "{year}"); last != n.Prefix || endsInDigit(n.Prefix) {
		problems = append(problems, quote.Problem{Path: "numbering.prefix", Problem: "end it with a letter or a mark, so that the count stands apart"})
	}
	if n.Next < 1 || n.Next > 999_999_999 {
		problems = append(problems, quote.Problem{Path: "numbering.next", Problem: "enter a number from 1 on"})
	}
	if n.Width < 0 || n.Width > 9 {
		problems = append(problems, quote.Problem{Path: "numbering.width", Problem: "enter 0 to 9 digits"})
	}
	return problems
}

func endsInDigit(s string) bool { return s != "" && s[len(s)-1] >= '0' && s[len(s)-1] <= '9' }

// Settings are what the shop sets apart from its rates.
type Settings struct {
	Calendar  ShopCalendar
	Numbering Numbering
	Lettering Lettering
	Logo      Logo
	Units     Units
	Letter    Letter
}

// DefaultSettings are those of a new shop.
func DefaultSettings() Settings {
	return Settings{
		Calendar: DefaultShopCalendar(), Numbering: DefaultNumbering(), Lettering: DefaultLettering(), Units: Units{Temperature: Fahrenheit},
		Letter: DefaultLetter(),
	}
}

// Check names what is wrong with the settings, by the fields' paths.
func (s Settings) Check() []quote.Problem {
	problems := slices.Concat(s.Calendar.Check(), s.Numbering.Check(), s.Lettering.Check(), s.Letter.Check())
	if err := s.Logo.Check(); err != nil {
		problems = append(problems, quote.Problem{Path: "logo", Problem: err.Error()})
	}
	if s.Units.Temperature != Fahrenheit && s.Units.Temperature != Celsius {
		problems = append(problems, quote.Problem{Path: "units.temperature", Problem: "choose F or C"})
	}
	return problems
}

// Units of temperature in which press settings are shown and entered.
const (
	Fahrenheit = "F"
	Celsius    = "C"
)

// Units are how measures are shown; what is kept stays as it was entered.
type Units struct {
	Temperature string `json:"temperature"` // F or C
}
