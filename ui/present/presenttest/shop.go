// Package presenttest has a shop in memory for the tests of the window: the demo shop, its prices priced by the real
// engine, its background work done when the test says so.
//
// Not in this package: anything the program itself uses.
package presenttest

import (
	"strings"
	"time"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/present"
)

// Day is the day at the counter of every Shop, a Wednesday.
var Day = time.Date(2026, time.December, 2, 12, 4, 0, 0, time.UTC)

// Shop is the demo shop in memory.
type Shop struct {
	Demo    catalog.Demo
	Saved   []catalog.Draft
	SaveErr error
	waiting []func() func()
}

// New reads the demo shop. It panics where the demo cannot be read, which the catalog's own tests find out first.
func New() *Shop {
	demo, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, Day.Format(time.DateOnly))
	if err != nil {
		panic(err)
	}
	return &Shop{Demo: demo}
}

// Engine is the real engine, as the window has it.
func Engine() present.Engine {
	return present.NewEngine()
}

// Counter is a presenter over the shop, with one of the demo's quotes opened; -1: an empty form.
func (s *Shop) Counter(draft int) *present.Counter {
	c := present.NewCounter(s, Engine())
	if draft >= 0 {
		c.Open(s.Demo.Drafts[draft])
	}
	return c
}

// Book is part of present.Shop.
func (s *Shop) Book([]int64, string) (catalog.Book, error) {
	styles := map[int64]catalog.Style{}
	for _, x := range s.Demo.Styles {
		styles[x.ID] = x
	}
	return catalog.Book{Shop: s.Demo.Shop, Suppliers: s.Demo.Suppliers, Cards: s.Demo.Cards, Styles: styles}, nil
}

// FindStyles finds styles by the words of number, name, category and colour.
func (s *Shop) FindStyles(query string, limit int) []catalog.StyleRow {
	var out []catalog.StyleRow
	for _, x := range s.Demo.Styles {
		for _, c := range x.Colors {
			if len(out) < limit && all(query, x.Number, x.Name, x.Category, c.Name) {
				out = append(out, catalog.StyleRow{
					StyleID: x.ID, Supplier: x.Supplier, Number: x.Number, Name: x.Name,
					Category: x.Category, Color: c, Colors: len(x.Colors), From: x.From(),
				})
			}
		}
	}
	return out
}

// FindCustomers finds customers of the demo's quotes.
func (s *Shop) FindCustomers(query string, limit int) []catalog.DraftCustomer {
	var out []catalog.DraftCustomer
	for i, d := range s.Demo.Drafts {
		if d.Customer.Name != "" && len(out) < limit && all(query, d.Customer.Name, d.Customer.Contact) {
			c := d.Customer
			c.ID = int64(i + 1)
			out = append(out, c)
		}
	}
	return out
}

// all says whether every word of the query begins a word of the texts.
func all(query string, texts ...string) bool {
	words := strings.Fields(strings.ToLower(strings.NewReplacer("-", " ", "(", " ").Replace(strings.Join(texts, " "))))
	words = append(words, strings.Fields(strings.ToLower(strings.Join(texts, " ")))...)
	for _, q := range strings.Fields(strings.ToLower(query)) {
		hit := false
		for _, w := range words {
			hit = hit || strings.HasPrefix(w, q)
		}
		if !hit {
			return false
		}
	}
	return true
}

// Save is part of present.Shop.
func (s *Shop) Save(d catalog.Draft, _ *quote.Result) (catalog.Draft, error) {
	if s.SaveErr != nil {
		return d, s.SaveErr
	}
	if d.ID == 0 {
		d.ID = int64(len(s.Saved) + 1)
	}
	if d.Number == "" {
		d.Number = catalog.QuoteNumber(Day.Year(), 200+int(d.ID))
	}
	s.Saved = append(s.Saved, d)
	return d, nil
}

// Background keeps the work until Run.
func (s *Shop) Background(work func() func()) { s.waiting = append(s.waiting, work) }

// Pause keeps what follows until Run.
func (s *Shop) Pause(then func()) { s.Background(func() func() { return then }) }

// Run does all work that waits, and what that starts.
func (s *Shop) Run() {
	for len(s.waiting) > 0 {
		work := s.waiting[0]
		s.waiting = s.waiting[1:]
		if done := work(); done != nil {
			done()
		}
	}
}

// Waiting is how much work waits.
func (s *Shop) Waiting() int { return len(s.waiting) }

// Now is part of present.Shop.
func (s *Shop) Now() time.Time { return Day }
