package present

import (
	"errors"
	"strings"
	"testing"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
)

func amount(s string) money.Amount {
	a, err := money.ParseAmount(s)
	if err != nil {
		panic(err)
	}
	return a
}

func num(s string) money.Number {
	n, err := money.ParseNumber(s)
	if err != nil {
		panic(err)
	}
	return n
}

// fakeShop holds an invented shop in memory; work in the background waits until run is called.
type fakeShop struct {
	book    catalog.Book
	saved   []catalog.Draft
	saveErr error
	waiting []func() func()
}

func (s *fakeShop) Book([]int64, string) (catalog.Book, error)        { return s.book, nil }
func (s *fakeShop) FindStyles(string, int) []catalog.StyleRow         { return nil }
func (s *fakeShop) FindCustomers(string, int) []catalog.DraftCustomer { return nil }
func (s *fakeShop) Background(work func() func())                     { s.waiting = append(s.waiting, work) }

func (s *fakeShop) Pause(then func()) { s.Background(func() func() { return then }) }

func (s *fakeShop) Now() time.Time { return time.Date(2026, 12, 2, 12, 4, 0, 0, time.UTC) }

func (s *fakeShop) Save(d catalog.Draft, _ *quote.Result) (catalog.Draft, error) {
	if s.saveErr != nil {
		return d, s.saveErr
	}
	if d.ID == 0 {
		d.ID, d.Number = 7, "2026-0147"
	}
	s.saved = append(s.saved, d)
	return d, nil
}

// run does all that waits in the background.
func (s *fakeShop) run() {
	for len(s.waiting) > 0 {
		s.step()
	}
}

// step does the first thing that waits.
func (s *fakeShop) step() {
	work := s.waiting[0]
	s.waiting = s.waiting[1:]
	work()()
}

func newFakeShop() *fakeShop {
	each := func(p, later string) []quote.Break {
		return []quote.Break{{From: 1, Each: amount(p)}, {From: 72, Each: amount(later)}}
	}
	ls := catalog.Style{
		ID: 1, Supplier: "northgate", Number: "LS-240", Name: "Long-sleeve tee", Category: "long sleeve",
		PricedOn: "2026-08-27",
		Colors:   []catalog.Color{{Name: "Navy", Hex: "#22335c", Shade: "dark"}, {Name: "White", Hex: "#ffffff", Shade: "light"}},
		Sizes: []catalog.StyleSize{
			{Size: "S", Each: each("6.85", "6.20")},
			{Size: "M", Each: each("6.85", "6.20")},
			{Size: "L", Each: each("6.85", "6.20")},
			{Size: "XL", Each: each("6.85", "6.20")},
			{Size: "2XL", Each: each("8.90", "8.25")},
		},
	}
	cap := catalog.Style{
		ID: 2, Supplier: "northgate", Number: "CP-11", Name: "Twill cap", Category: "cap",
		PricedOn: "2026-11-27", Colors: []catalog.Color{{Name: "Navy", Hex: "#22335c", Shade: "dark"}},
		Sizes: []catalog.StyleSize{{Size: "OS", Each: each("4.15", "4.15")}},
	}
	return &fakeShop{book: catalog.Book{
		Styles: map[int64]catalog.Style{1: ls, 2: cap},
		Cards: []catalog.RateCard{
			{Active: true, Card: quote.RateCard{ID: "film", Name: "Film", Kind: quote.AreaCard, FullColor: true}},
			{Active: true, Card: quote.RateCard{ID: "sheets", Name: "Sheets", Kind: quote.SheetCard}},
		},
		Suppliers: []catalog.Supplier{{Key: "northgate", Name: "Northgate Blanks"}},
		Shop: catalog.Shop{
			Currency: "USD", StaleDays: 90, Demo: true, Ladder: []int{12, 24, 48, 72, 144},
			Levels: []catalog.Level{{Name: "club"}, {Name: "walk-in"}},
			Presets: []catalog.Preset{
				{Name: "Full back", Width: num("11"), Height: num("8.5")},
				{Name: "Sleeve", Width: num("3"), Height: num("10")},
				{Name: "Cap front", Width: num("4.25"), Height: num("2.25")},
			},
			Extras: []catalog.Extra{
				{Key: "bag", Usual: true, Extra: quote.Extra{Name: "Fold and bag", Charge: amount("0.50"), Cost: amount("0.12")}},
				{Key: "tag", Extra: quote.Extra{Name: "Neck label", Charge: amount("0.80")}},
			},
		},
	}}
}

// fakeEngine stands in for the real one: its freezing is the catalog's, its prices are of the worked example whatever
// the quantities are, except that a total says how many pieces were priced.
type fakeEngine struct {
	priced  int
	asked   []string
	respond func(quote.Job) (quote.Result, error)
}

func (e *fakeEngine) engine() Engine {
	return Engine{
		Freeze: catalog.Freeze,
		Price: func(j quote.Job) (quote.Result, error) {
			e.priced++
			if e.respond != nil {
				return e.respond(j)
			}
			return regatta(j), nil
		},
		Cheapest: func(j quote.Job, placement string, upto int) (quote.CheapestFromTo, error) {
			e.asked = append(e.asked, placement)
			if strings.HasPrefix(placement, "no") {
				return quote.CheapestFromTo{}, errors.New("no such placement")
			}
			return quote.CheapestFromTo{Placement: placement, ByInks: []quote.InkSpans{
				{Inks: "1", Spans: []quote.Span{{From: 1, To: 12, Card: "film"}, {From: 13, To: 150, Card: "sheets"}}},
				{Inks: "2", Spans: []quote.Span{{From: 1, To: 21, Card: "film"}, {From: 22, To: 150, Card: "sheets"}}},
				{Inks: "6", Spans: []quote.Span{{From: 1, To: 150, Card: "film"}}},
				{Inks: "full", Spans: []quote.Span{{From: 1, To: 150, Card: "film"}}},
			}}, nil
		},
	}
}

// counter is a Counter on fakes, with the worked example's regatta job typed in when full.
func counter(t *testing.T, full bool) (*Counter, *fakeShop, *fakeEngine) {
	t.Helper()
	shop, engine := newFakeShop(), &fakeEngine{}
	c := NewCounter(shop, engine.engine())
	if full {
		typeRegatta(c)
		shop.run()
	}
	return c, shop, engine
}

func typeRegatta(c *Counter) {
	c.SetCustomer(catalog.DraftCustomer{ID: 3, Name: "Harbour Rowing Club", Contact: "Ines Halvorsen"})
	c.FillSizes(c.AddGarment(1, "Navy"), "S", "6/11/9/0/3")
	c.FillSizes(c.AddGarment(1, "White"), "S", "M4 L3")
	c.SetSize(c.AddGarment(2, "Navy"), "OS", "10")
	c.SetInks(c.AddPlacement("Full back"), "white, gold")
	c.SetInks(c.AddPlacement("Sleeve"), "white, gold")
	c.SetInks(c.AddPlacement("Cap front"), "full colour")
	c.SetArtMinutes("30 min")
	c.SetArtCharge("25.00")
}
