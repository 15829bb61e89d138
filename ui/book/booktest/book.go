// Package booktest has a quote book in memory for the tests of the window: the demo shop's quotes, priced by the real
// engine, with what happens to them kept as the shop file would.
//
// Not in this package: anything the program itself uses.
package booktest

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/book"
	"pressworth/ui/present/presenttest"
)

// Book is the quote book in memory. Fails, where it is set, is what every call answers.
type Book struct {
	Fails   error
	Written []string // documents that were asked for
	Shown   []string // files that were opened
	Read    int      // rows of quotes that were read

	quotes  []*entry
	people  []catalog.Customer
	shelf   []catalog.ShelfItem
	designs []catalog.Design
	parts   []*part
	job     quote.Job
	result  quote.Result
	last    int64
}

// entry is a quote with all that happened to it.
type entry struct {
	catalog.QuoteHead
	draft catalog.Draft
}

// part is one quote's share of what is bought.
type part struct {
	row catalog.PurchaseRow
	catalog.PurchasePart
}

// Day is the day of every Book.
var Day = presenttest.Day

// New makes a book of the demo's quotes: a draft, one sent and one accepted, the regatta.
func New() *Book {
	b := &Book{}
	shop := presenttest.New()
	styles := map[int64]catalog.Style{}
	for _, s := range shop.Demo.Styles {
		styles[s.ID] = s
	}
	prices := catalog.Book{Shop: shop.Demo.Shop, Suppliers: shop.Demo.Suppliers, Cards: shop.Demo.Cards, Styles: styles}
	job, problems := catalog.Freeze(shop.Demo.Drafts[0], prices, Day.Format(time.DateOnly))
	if len(problems) > 0 {
		panic(fmt.Sprint(problems))
	}
	frozen, result, err := quote.Freeze(job)
	if err != nil {
		panic(err)
	}
	b.job, b.result = frozen, result
	b.people = []catalog.Customer{
		{ID: 1, Name: "Harbour Rowing Club", Contact: "Ines Halvorsen", Email: "ines@harbour.example", Terms: catalog.PayNetDays, NetDays: 30},
		{ID: 2, Name: "Café Amaryllis", Phone: "555 0142"},
		{ID: 3, Name: "Ivo Castellane"},
	}
	for i, row := range []catalog.QuoteRow{
		{Number: "2026-0001", Customer: "Harbour Rowing Club", Title: "Regatta", Pieces: 46, Total: "1261.38", Margin: "42.2", NeededBy: "2026-12-11"},
		{Number: "2026-0002", Customer: "Café Amaryllis", Title: "Totes", Pieces: 75, Total: "1400.76", Margin: "42.5"},
		{Number: "2026-0003", Customer: "Ivo Castellane", Title: "One hoodie", Pieces: 1, Total: "128.82", Margin: "9.5", NeededBy: "2026-12-20"},
	} {
		row.ID, row.State, row.Changed = int64(i+1), catalog.Drafted, Day.Add(time.Duration(i)*time.Minute).Format(time.RFC3339)
		e := &entry{QuoteHead: catalog.QuoteHead{QuoteRow: row, CustomerID: int64(i + 1)}, draft: shop.Demo.Drafts[min(i, len(shop.Demo.Drafts)-1)]}
		e.draft.ID, e.draft.Number = row.ID, row.Number
		e.History = []catalog.StateChange{{State: catalog.Drafted, At: row.Changed}}
		b.quotes = append(b.quotes, e)
	}
	b.last = 100
	return b
}

func (b *Book) id() int64 {
	b.last++
	return b.last
}

func (b *Book) at(id int64) (*entry, error) {
	if b.Fails != nil {
		return nil, b.Fails
	}
	for _, e := range b.quotes {
		if e.ID == id {
			return e, nil
		}
	}
	return nil, fmt.Errorf("no quote %d", id)
}

func (e *entry) become(state, note string) {
	e.State = state
	e.History = append(e.History, catalog.StateChange{State: state, At: Day.Format(time.RFC3339), Note: note})
	e.next()
}

func (e *entry) next() { e.NextStep = catalog.NextStep(e.State, e.Steps) }

// listing is a listing in memory.
type listing struct {
	book *Book
	rows []catalog.QuoteRow
}

func (l listing) Len() int { return len(l.rows) }

func (l listing) Place(id int64) int {
	return slices.IndexFunc(l.rows, func(q catalog.QuoteRow) bool { return q.ID == id })
}

func (l listing) Rows(_ context.Context, from, n int) ([]catalog.QuoteRow, error) {
	part := l.rows[from:min(from+n, len(l.rows))]
	l.book.Read += len(part)
	return part, nil
}

// Many adds so many drafts, each changed later than the one before.
func (b *Book) Many(n int) {
	for i := range n {
		row := b.quotes[1].QuoteRow
		row.ID, row.Number, row.Changed = b.id(), fmt.Sprintf("2027-%05d", i), Day.Add(time.Duration(i)*time.Hour).Format(time.RFC3339)
		b.quotes = append(b.quotes, &entry{QuoteHead: catalog.QuoteHead{QuoteRow: row, CustomerID: 2}, draft: b.quotes[1].draft})
	}
}

// List is part of book.Quotes.
func (b *Book) List(_ context.Context, q book.Query) (book.Listing, error) {
	var found []catalog.QuoteRow
	for _, e := range b.quotes {
		e.next()
		text := strings.ToLower(e.Number + " " + e.Customer + " " + e.Title + " " + e.NeededBy + " " + e.Total)
		if (q.State == "" || e.State == q.State) && strings.Contains(text, strings.ToLower(q.Words)) {
			found = append(found, e.QuoteRow)
		}
	}
	order := func(x, y catalog.QuoteRow) int { return cmp.Compare(y.Changed, x.Changed) }
	switch q.Sort {
	case "total":
		order = func(x, y catalog.QuoteRow) int { return amount(x.Total).Cmp(amount(y.Total)) }
	case "customer":
		order = func(x, y catalog.QuoteRow) int { return cmp.Compare(x.Customer, y.Customer) }
	}
	slices.SortStableFunc(found, order)
	if q.Down {
		slices.Reverse(found)
	}
	return listing{b, found}, b.Fails
}

func amount(text string) money.Amount {
	a, err := money.ParseAmount(text)
	if err != nil {
		panic(err)
	}
	return a
}

// Draft is part of book.Quotes.
func (b *Book) Draft(_ context.Context, id int64) (catalog.Draft, error) {
	e, err := b.at(id)
	if err != nil {
		return catalog.Draft{}, err
	}
	return e.draft, nil
}

// Open gives two quotes with small prints on the same sheet card.
func (b *Book) Open(context.Context) ([]book.Open, error) {
	job := b.job
	job.Frozen = nil
	job.Placements = slices.Clone(job.Placements[:1])
	job.Placements[0].Width, job.Placements[0].Height, job.Placements[0].Method = money.Int(4), money.Int(4), "sheets"
	return []book.Open{{Number: "2026-0001", Customer: "Harbour Rowing Club", Job: job}, {Number: "2026-0002", Customer: "Café Amaryllis", Job: job}}, b.Fails
}

// ToDo lists sent quotes to be followed up and accepted ones whose goods wait for an order.
func (b *Book) ToDo(_ context.Context, day string) ([]catalog.ToDo, error) {
	var out []catalog.ToDo
	for _, e := range b.quotes {
		e.next()
		switch {
		case e.State == catalog.Sent:
			out = append(out, catalog.ToDo{QuoteRow: e.QuoteRow, Kind: catalog.ToFollowUp, Due: day, Text: "ask whether they want it"})
		case e.State == catalog.Accepted && e.NextStep == "order goods":
			out = append(out, catalog.ToDo{QuoteRow: e.QuoteRow, Kind: catalog.ToOrder, Due: day, Text: "order goods"})
		}
	}
	return out, b.Fails
}

// Standing is part of book.Comparing.
func (b *Book) Standing(context.Context, int64) (quote.Job, quote.Result, error) {
	return b.job, b.result, b.Fails
}

// Today is part of book.Comparing: an hour of work costs more today.
func (b *Book) Today(context.Context, int64) (quote.Job, quote.Result, error) {
	job := b.job
	job.Frozen = nil
	job.Shop.WagePerHour = amount("40.00")
	r, err := quote.Price(job)
	return job, r, errors.Join(b.Fails, err)
}
