package book

import (
	"context"
	"errors"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/chart"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Figures is what the week, what was learned and the reports are made from. Days are 2006-01-02.
type Figures interface {
	// Times are now, the shop's week and the jobs that are promised.
	Times(ctx context.Context) (catalog.Times, error)
	// WorkOut opens decided quotes that were not looked at since they changed, at most so many, and says how many are left.
	WorkOut(ctx context.Context, most int) (left int, err error)
	// Figured are the quotes that were decided between two days, both included, with what they came to and what they took.
	Figured(ctx context.Context, from, to string) ([]catalog.Figured, error)
	// Rates are the shop's, as they stand.
	Rates(ctx context.Context) (quote.Shop, error)
	// TakeOver puts a suggested figure in the place of a rate, by the suggestion's path.
	TakeOver(ctx context.Context, path string, figure money.Number) error
	// WriteTable writes a table for a spreadsheet and returns the file's path.
	WriteTable(ctx context.Context, name string, rows [][]string) (path string, err error)
}

// reportsPage is what was won and lost, what it brought, and what is promised.
type reportsPage struct {
	place  *Place
	object fyne.CanvasObject
	body   *fyne.Container
	span   *parts.Choice
	turn   int
}

// spans of days that reports look at, by the months they go back; 0: all there is.
var spans = []parts.Option{{Key: "12", Name: "the last 12 months"}, {Key: "3", Name: "the last 3 months"}, {Key: "0", Name: "all there is"}}

func newReports(p *Place) page {
	r := &reportsPage{place: p, body: parts.Column(look.SectionApart)}
	r.span = parts.NewChoice(spans, func(parts.Option) { r.shown() })
	r.span.SetKey(spans[0].Key)
	line := parts.Row(12, []parts.Track{parts.Share(1), parts.Fixed(190)},
		parts.NewText("Quotes by the day they were accepted or declined, with the figures they were decided upon, before tax.", parts.MutedStyle.Shortened()), r.span)
	r.object = container.New(pageEdges{}, parts.NewPageScroll(parts.Column(12, line, r.body)))
	return r
}

func (r *reportsPage) content() fyne.CanvasObject { return r.object }
func (r *reportsPage) focus()                     { parts.Focus(r.span) }

// from is the first day that is looked at.
func (r *reportsPage) from() string {
	months := map[string]int{"12": 12, "3": 3}[r.span.Key()]
	if months == 0 {
		return "2000-01-01"
	}
	return r.place.Now().AddDate(0, -months, 0).Format("2006-01-02")
}

func (r *reportsPage) shown() {
	r.turn++
	turn, from, to := r.turn, r.from(), r.place.today()
	r.place.workOut(func() bool { return turn == r.turn }, func() {
		parts.Background(func() func() {
			ctx := context.Background()
			all, err := r.place.Figures.Figured(ctx, from, to)
			times, failed := r.place.Figures.Times(ctx)
			return func() {
				if turn != r.turn {
					return
				}
				if err = errors.Join(err, failed); err != nil {
					r.place.failed("The reports could not be made", err)
					return
				}
				r.place.leftOut(all)
				r.show(catalog.Sales(all), times)
			}
		})
	})
}

func (r *reportsPage) show(sales []catalog.Sale, times catalog.Times) {
	months := monthReport(catalog.ByMonth(sales))
	reports := []report{months}
	for _, by := range []struct{ by, title, hint, what string }{
		{catalog.ByMethod, "Margin by method", "garment lines by the cards that their artwork went on", "no artwork"},
		{catalog.ByCategory, "Margin by garment", "garment lines by category", "not said"},
		{catalog.ByCustomer, "Margin by customer", "whole quotes, extras and fees among them", "no name"},
	} {
		reports = append(reports, marginReport(by.title, by.hint, by.what, catalog.Margins(sales, by.by)))
	}
	reports = append(reports, hoursReport(times))
	r.body.Objects = nil
	for _, x := range reports {
		r.body.Add(r.section(x))
	}
	r.body.Refresh()
	r.object.Refresh()
}

// section is one report: its bars, and the button that writes it as a table.
func (r *reportsPage) section(x report) fyne.CanvasObject {
	s := parts.NewSection(x.title, x.hint)
	if len(x.bars) == 0 {
		s.Body.Add(parts.NewText("Nothing yet.", parts.MutedStyle))
		return s
	}
	bars := chart.NewBars(x.names, x.labels)
	bars.Set(x.bars)
	s.Body.Add(bars)
	if x.note != "" {
		s.Body.Add(parts.NewText(x.note, parts.CaptionStyle.Shortened()))
	}
	s.Right.Add(parts.NewSmallButton(parts.Quiet, "Save as CSV", func() { r.place.writeTable(x.file, x.table) }))
	return s
}

// writeTable writes a table and says where it is.
func (p *Place) writeTable(name string, rows [][]string) {
	parts.Background(func() func() {
		path, err := p.Figures.WriteTable(context.Background(), name, rows)
		return func() {
			p.failed("The table could not be written", err)
			if err == nil {
				p.said("Written: " + path)
			}
		}
	})
}
