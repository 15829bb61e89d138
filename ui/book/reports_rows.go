package book

import (
	"fmt"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/calendar"
	"pressworth/quote/money"
	"pressworth/ui/chart"
	"pressworth/ui/present"
)

// report is one report as bars for the window and as a table for a spreadsheet.
type report struct {
	title, hint, note string
	file              string // name of the table's file
	names, labels     float32
	bars              []chart.Bar
	table             [][]string // its first row says what the columns are
}

// partOf is an amount as a part of another, for the length of a bar only.
func partOf(a, whole money.Amount) float64 {
	if whole.Sign() <= 0 || a.Sign() <= 0 {
		return 0
	}
	x, _ := a.Rat().Float64()
	y, _ := whole.Rat().Float64()
	return x / y
}

func monthReport(rows []catalog.MonthRow) report {
	r := report{
		title: "Won and lost", hint: "by month", note: "the first bar is what was won, the second what was lost", file: "won-and-lost", names: 90, labels: 300,
		table: [][]string{{"month", "won", "won for", "lost", "lost for"}},
	}
	var most money.Amount
	for _, m := range rows {
		if all := quote.Sum(m.WonFor, m.LostFor); all.Cmp(most) > 0 {
			most = all
		}
	}
	for _, m := range rows {
		r.bars = append(r.bars, chart.Bar{
			Name: monthName(m.Month), First: partOf(m.WonFor, most), Second: partOf(m.LostFor, most),
			Label: monthWords(m),
		})
		r.table = append(r.table, []string{m.Month, fmt.Sprint(m.Won), m.WonFor.String(), fmt.Sprint(m.Lost), m.LostFor.String()})
	}
	return r
}

// monthWords are the figures of a month; what there is none of is left out.
func monthWords(m catalog.MonthRow) string {
	var words []string
	if m.Won > 0 {
		words = append(words, fmt.Sprintf("%d won, %s", m.Won, present.Amount(m.WonFor)))
	}
	if m.Lost > 0 {
		words = append(words, fmt.Sprintf("%d lost, %s", m.Lost, present.Amount(m.LostFor)))
	}
	return strings.Join(words, " · ")
}

func monthName(month string) string {
	t, err := time.Parse("2006-01", month)
	if err != nil {
		return month
	}
	return t.Format("Jan 2006")
}

// mostBars is how many rows of a report are drawn; the table has all.
const mostBars = 15

func marginReport(title, hint, unnamed string, rows []catalog.MarginRow) report {
	r := report{
		title: title, hint: hint, file: slug(title), names: 190, labels: 310,
		table: [][]string{{"name", "jobs", "pieces", "sold", "cost", "margin percent"}},
	}
	for i, m := range rows {
		name := or(m.Name, unnamed)
		r.table = append(r.table, []string{name, fmt.Sprint(m.Jobs), fmt.Sprint(m.Pieces), m.Sold.String(), m.Cost.String(), m.Margin})
		if i >= mostBars {
			r.note = fmt.Sprintf("and %d more, in the table", len(rows)-mostBars)
			continue
		}
		r.bars = append(r.bars, chart.Bar{
			Name: name, First: partOf(m.Sold, rows[0].Sold),
			Label: fmt.Sprintf("%s of %s · %s, %s", percentWords(m.Margin), present.Amount(m.Sold), countOf(m.Jobs, "job"), countOf(m.Pieces, "piece")),
		})
	}
	return r
}

func percentWords(margin string) string {
	if margin == "" {
		return "–"
	}
	return margin + " %"
}

// weeksShown is how many weeks the week view and the report of hours look at.
const weeksShown = 8

func hoursReport(t catalog.Times) report {
	r := report{
		title: "Hours promised", hint: "by week, of the hours of pressing that it has", note: "the line is what the week has", file: "hours-promised", names: 150, labels: 150,
		table: [][]string{{"week of", "hours promised", "hours of pressing"}},
	}
	press, err := t.Press(0)
	if err != nil {
		return r
	}
	weeks := press.Weeks(calendar.Of(t.Now), weeksShown)
	most := 1
	for _, w := range weeks {
		most = max(most, w.Capacity, w.Promised)
	}
	for _, w := range weeks {
		r.bars = append(r.bars, chart.Bar{
			Name: "week of " + w.Monday.Short(), First: float64(w.Promised) / float64(most), Mark: float64(w.Capacity) / float64(most),
			Label: hoursOf(w.Promised, w.Capacity),
		})
		r.table = append(r.table, []string{w.Monday.String(), hours(w.Promised), hours(w.Capacity)})
	}
	return r
}

// hours writes minutes as hours with one place, rounded half up.
func hours(minutes int) string {
	tenths := (minutes + 3) / 6
	return fmt.Sprintf("%d.%d", tenths/10, tenths%10)
}

func hoursOf(promised, capacity int) string { return hours(promised) + " of " + hours(capacity) + " h" }

// slug makes a file's name of a title.
func slug(title string) string {
	out := []rune{}
	for _, c := range title {
		switch {
		case c >= 'A' && c <= 'Z':
			out = append(out, c+'a'-'A')
		case c >= 'a' && c <= 'z' || c >= '0' && c <= '9':
			out = append(out, c)
		default:
			out = append(out, '-')
		}
	}
	return string(out)
}
