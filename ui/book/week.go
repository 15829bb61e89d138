package book

import (
	"context"
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote/calendar"
	"pressworth/ui/chart"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// weekPage is what is promised, week by week: hours of pressing by day, and the jobs that are needed.
type weekPage struct {
	place  *Place
	object fyne.CanvasObject
	body   *fyne.Container
	line   *parts.Text
	ahead  *parts.Button
	first  calendar.Day // a day of the first week shown, 0: this week
	turn   int
}

func newWeek(p *Place) page {
	w := &weekPage{place: p, body: parts.Column(look.SectionApart), line: parts.NewText("", parts.MutedStyle.Shortened())}
	w.ahead = parts.NewSmallButton(parts.Quiet, "Later", func() { w.move(4 * 7) })
	back := parts.NewSmallButton(parts.Quiet, "Earlier", func() { w.move(-4 * 7) })
	now := parts.NewSmallButton(parts.Quiet, "This week", func() { w.move(0) })
	line := parts.Row(8, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit(), parts.Fit()}, w.line, back, now, w.ahead)
	w.object = container.New(pageEdges{}, parts.NewPageScroll(parts.Column(12, line, w.body)))
	return w
}

func (w *weekPage) content() fyne.CanvasObject { return w.object }
func (w *weekPage) focus()                     { parts.Focus(w.ahead) }

// move looks so many days on; 0 goes back to this week.
func (w *weekPage) move(days calendar.Day) {
	if w.first == 0 {
		w.first = calendar.Of(w.place.Now())
	}
	w.first += days
	if days == 0 {
		w.first = 0
	}
	w.shown()
}

func (w *weekPage) shown() {
	w.turn++
	turn := w.turn
	parts.Background(func() func() {
		times, err := w.place.Figures.Times(context.Background())
		return func() {
			if turn != w.turn {
				return
			}
			if err == nil {
				err = w.show(times)
			}
			if err != nil {
				w.place.failed("What is promised could not be read", err)
			}
		}
	})
}

func (w *weekPage) show(t catalog.Times) error {
	press, err := t.Press(0)
	if err != nil {
		return err
	}
	today := calendar.Of(t.Now)
	first := w.first
	if first == 0 {
		first = today
	}
	w.line.SetText(promisedWords(t))
	w.body.Objects = nil
	for _, x := range press.Weeks(first, weeksShown/2) {
		w.body.Add(weekSection(x, today, t.Booked))
	}
	w.body.Refresh()
	w.object.Refresh()
	return nil
}

// promisedWords says how much is promised in all.
func promisedWords(t catalog.Times) string {
	if len(t.Booked) == 0 {
		return "No accepted job waits to be pressed."
	}
	total := 0.0
	for _, b := range t.Booked {
		h, _ := b.Hours.Rat().Float64()
		total += h
	}
	return fmt.Sprintf("%s to be pressed, %.1f hours; each laid as late as its day allows.", countOf(len(t.Booked), "job"), total)
}

func weekSection(w calendar.Week, today calendar.Day, booked []catalog.Booked) fyne.CanvasObject {
	s := parts.NewSection("Week of "+w.Monday.Short(), hoursOf(w.Promised, w.Capacity)+" promised")
	bars := chart.NewBars(100, 130)
	bars.Set(dayBars(w, today))
	s.Body.Add(bars)
	for _, b := range dueIn(w, booked) {
		words := []string{}
		for _, x := range []string{b.Number, b.Customer, b.Title} {
			if x != "" {
				words = append(words, x)
			}
		}
		s.Body.Add(parts.Row(12, []parts.Track{parts.Share(1), parts.Fixed(70), parts.Fixed(110)}, parts.NewText(strings.Join(words, " · "), parts.BodyStyle.Shortened()),
			parts.NewText(b.Hours.String()+" h", parts.BodyStyle.Right()), parts.NewText("by "+dayWords(b.NeededBy), parts.MutedStyle.Right())))
	}
	return s
}

func dayWords(iso string) string {
	d, err := calendar.Parse(iso)
	if err != nil {
		return iso
	}
	return d.Short()
}

// dayBars are the days of a week that the shop works, and any that something is promised on.
func dayBars(w calendar.Week, today calendar.Day) []chart.Bar {
	most := 1
	for _, d := range w.Days {
		most = max(most, d.Capacity, d.Promised)
	}
	var out []chart.Bar
	for _, d := range w.Days {
		if !d.Open && d.Promised == 0 {
			continue
		}
		out = append(out, chart.Bar{
			Name: d.Day.Short(), Label: hoursOf(d.Promised, d.Capacity), Strong: d.Day == today,
			First: float64(d.Promised) / float64(most), Mark: float64(d.Capacity) / float64(most),
		})
	}
	return out
}

// dueIn are the jobs that are needed in a week.
func dueIn(w calendar.Week, booked []catalog.Booked) (out []catalog.Booked) {
	for _, b := range booked {
		if d, err := calendar.Parse(b.NeededBy); err == nil && d.Monday() == w.Monday {
			out = append(out, b)
		}
	}
	return out
}
