package book

import (
	"context"
	"time"

	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// bookkeepingPage asks between which days, and writes what was sold and what came in as a table.
type bookkeepingPage struct {
	*sheetPage
	form *form.Form
}

func newBookkeepingPage(p *Place) *bookkeepingPage {
	b := &bookkeepingPage{sheetPage: newSheetPage(p, "For the bookkeeper", "orders and payments as a table"), form: form.New()}
	now := p.Now()
	month := time.Date(now.Year(), now.Month(), 1, 0, 0, 0, 0, time.UTC)
	from, to := b.form.Text("from", "Accepted from", "2026-12-01"), b.form.Text("to", "up to", "2026-12-31")
	b.form.Set("from", month.Format(time.DateOnly))
	b.form.Set("to", month.AddDate(0, 1, -1).Format(time.DateOnly))
	for _, path := range []string{"from", "to"} {
		b.form.Field(path).OnSubmitted = func(string) { b.write() }
	}
	write := parts.NewButton(parts.Filled, "Write CSV", "", b.write)
	b.first = b.form.Field("from")
	b.fill(parts.Narrow(560, parts.NewSection("Which orders", "a row an order, and a row a payment",
		b.form.Rest(), parts.Fields(150, from, to), parts.Row(8, nil, write))))
	return b
}

func (b *bookkeepingPage) write() {
	r := form.Reader{Get: b.form.Get}
	from, to := r.Date("from"), r.Date("to")
	if len(r.Problems) == 0 && from > to {
		r.Problems = []quote.Problem{{Path: "to", Problem: "enter a day on or after the first one"}}
	}
	if b.form.Show(r.Problems); len(r.Problems) > 0 {
		return
	}
	b.place.writing("Table", "", func(ctx context.Context) (string, error) { return b.place.Papers.Bookkeeping(ctx, from, to) })
}
