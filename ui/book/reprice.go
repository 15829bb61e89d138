package book

import (
	"context"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Cause is one reason why a price changed, with what it changed; the causes of a change add up to it.
type Cause struct {
	Name, Why string
	Amount    string // signed
}

// repricePage works an open quote out with the prices of today and says what changed, and why.
type repricePage struct {
	*sheetPage
	head catalog.QuoteHead
}

func newRepricePage(p *Place, h catalog.QuoteHead) *repricePage {
	return &repricePage{sheetPage: newSheetPage(p, "At today's prices", h.Number+" · "+h.Customer), head: h}
}

// repriced is a quote then and now.
type repriced struct {
	jobA, jobB quote.Job
	a, b       quote.Result
	causes     []Cause
}

func (r *repricePage) read(ctx context.Context) (x repriced, err error) {
	if rows := latest(r.head); len(rows) > 0 {
		x.jobA, x.a, err = r.place.Ledger.Opened(ctx, rows[0].ID)
	} else {
		x.jobA, x.a, err = r.place.Compare.Standing(ctx, r.head.ID)
	}
	if err == nil {
		x.jobB, x.b, err = r.place.Compare.Today(ctx, r.head.ID)
	}
	if err == nil && r.place.Explain != nil {
		x.causes, err = r.place.Explain(x.jobA, x.jobB)
	}
	return x, err
}

func (r *repricePage) shown() {
	parts.Background(func() func() {
		x, err := r.read(context.Background())
		return func() {
			r.place.failed("The quote could not be repriced", err)
			if err == nil {
				r.show(x)
			}
		}
	})
}

func (r *repricePage) show(x repriced) {
	lines := present.CompareJobs(x.jobA, x.a, x.jobB, x.b)
	d := quote.Less(x.b.Price.Total, x.a.Price.Total)
	word := "as before, to the cent"
	switch d.Sign() {
	case 1:
		word = present.Amount(d) + " dearer"
	case -1:
		word = present.Amount(quote.Less(x.a.Price.Total, x.b.Price.Total)) + " cheaper"
	}
	key := func(name, value string) fyne.CanvasObject {
		return parts.Column(0, parts.NewText(name, parts.CaptionStyle), parts.NewText(value, parts.KeyStyle))
	}
	sum := parts.NewSection("Total with tax", "",
		parts.Row(28, nil, key("then", present.Amount(x.a.Price.Total)), key("today", present.Amount(x.b.Price.Total)), key("", word)))
	sections := []fyne.CanvasObject{sum}
	if len(x.causes) > 0 {
		sections = append(sections, causesSection(x.causes, d))
	}
	var differ []present.Line
	for _, l := range lines {
		if (l.Part == "Price" || l.Part == "Cost") && !l.Same {
			differ = append(differ, l)
		}
	}
	if len(differ) > 0 {
		take := parts.NewSmallDeed(parts.Filled, "Take today's prices", r.take)
		sum.Right.Add(take)
		r.first = take
		sections = append(sections, parts.NewSection("Line by line", "what differs", compareTable("then", "today", differ)))
	}
	r.fill(sections...)
	r.focus()
}

// take puts the day whose prices are used to today, on the Counter, where the quote can be sent anew.
func (r *repricePage) take() {
	r.place.fetch(r.head.ID, func(d catalog.Draft) {
		d.QuotedOn = r.place.today()
		r.place.OnOpen(d)
	})
}
