package catalog_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
)

// timed is the demo with the times of a Monday morning, and the club's job needed so many days later.
func timed(t *testing.T, days int) (catalog.Draft, catalog.Book) {
	t.Helper()
	d, b := demo(t)
	now := time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC)
	b.Times = &catalog.Times{Now: now, Shop: catalog.DefaultShopCalendar()}
	draft := d.Drafts[0]
	draft.ID, draft.NeededBy = 7, now.AddDate(0, 0, days).Format(time.DateOnly)
	return draft, b
}

// terms gives a card of the book terms.
func terms(b *catalog.Book, id string, t catalog.Terms) {
	b.Cards = slices.Clone(b.Cards)
	for i := range b.Cards {
		if b.Cards[i].Card.ID == id {
			b.Cards[i].Terms = t
		}
	}
}

func frozen(t *testing.T, d catalog.Draft, b catalog.Book) quote.Job {
	t.Helper()
	job, problems := catalog.Freeze(d, b, day)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return job
}

func cardOf(job quote.Job, id string) *quote.RateCard {
	for i := range job.RateCards {
		if job.RateCards[i].ID == id {
			return &job.RateCards[i]
		}
	}
	return nil
}

func reckoned(t *testing.T, d catalog.Draft, b catalog.Book) catalog.Promise {
	t.Helper()
	job := frozen(t, d, b)
	r, err := quote.Price(job)
	if err != nil {
		t.Fatal(err)
	}
	p, ok := catalog.Reckon(d, b, job, r)
	if !ok {
		t.Fatal("no day is reckoned")
	}
	return p
}

func TestFreeze_aLateCardLeavesTheChoice(t *testing.T) {
	d, b := timed(t, 12)
	terms(&b, "sheets", catalog.Terms{ProductionDays: 20})
	job := frozen(t, d, b)
	if cardOf(job, "sheets") != nil || cardOf(job, "film") == nil {
		t.Error("sheets take 20 working days and the job is needed in 12 days: want them left out, and film kept")
	}
	p := reckoned(t, d, b)
	if text := strings.Join(p.Notes, " "); !p.Kept || !strings.Contains(text, "left out of the choice") {
		t.Errorf("kept %v, notes %q; want the day kept and the late card named", p.Kept, text)
	}
}

func TestFreeze_allTheTimeInTheWorld(t *testing.T) {
	d, b := timed(t, 90)
	terms(&b, "sheets", catalog.Terms{ProductionDays: 20})
	with, without := frozen(t, d, b), func() quote.Job { b := b; b.Times = nil; return frozen(t, d, b) }()
	if len(with.RateCards) != len(without.RateCards) {
		t.Errorf("%d cards with 90 days to go, %d without a calendar; want the same", len(with.RateCards), len(without.RateCards))
	}
}

func TestFreeze_aFixedCardStays(t *testing.T) {
	d, b := timed(t, 12)
	terms(&b, "sheets", catalog.Terms{ProductionDays: 20})
	d.Placements = slices.Clone(d.Placements)
	d.Placements[0].Method = "sheets"
	if cardOf(frozen(t, d, b), "sheets") == nil {
		t.Fatal("a placement is fixed on sheets: want them kept")
	}
	p := reckoned(t, d, b)
	if text := strings.Join(p.Warnings, " "); p.Kept || !strings.Contains(text, "cannot be kept") || !strings.Contains(text, "is fixed on") {
		t.Errorf("kept %v, warnings %q; want it said that the day cannot be kept and why", p.Kept, text)
	}
}

func TestFreeze_aCardThatAloneServesStays(t *testing.T) {
	d, b := timed(t, 12)
	all := b.Cards
	b.Cards = nil
	for _, c := range all {
		if c.Card.ID == "sheets" || c.Card.ID == "film" {
			b.Cards = append(b.Cards, c)
		}
	}
	terms(&b, "film", catalog.Terms{ProductionDays: 20}) // the cap's full colour goes on film only
	job := frozen(t, d, b)
	if cardOf(job, "film") == nil {
		t.Fatal("film alone serves full colour: want it kept")
	}
	if got := quote.Unserved(job); got != nil {
		t.Errorf("placements without a card: %v", got)
	}
}

func TestFreeze_theCheapestRushThatKeepsTheDayIsInTheCost(t *testing.T) {
	d, b := timed(t, 12)
	terms(&b, "sheets", catalog.Terms{ProductionDays: 20, Rush: []catalog.Rush{
		{Days: 1, Percent: money.Int(100)}, {Days: 2, Percent: money.Int(25)}, {Days: 15, Percent: money.Int(5)},
	}})
	was := cardOf(func() quote.Job { b := b; b.Times = nil; return frozen(t, d, b) }(), "sheets")
	is := cardOf(frozen(t, d, b), "sheets")
	if is == nil || !strings.HasSuffix(is.Name, ", rush 2 days +25 %") {
		t.Fatalf("the card %+v, want it kept with the rush of 2 days", is)
	}
	for i, z := range was.Sizes {
		for j, row := range z.Prices {
			for k, x := range row.Each {
				units, _ := x.Each.Minor(2)
				want := money.FromMinor((units*125+50)/100, 2) // half up
				if got := is.Sizes[i].Prices[j].Each[k].Each; got.Cmp(want) != 0 {
					t.Errorf("%s from %d at %s with 25 %% more: %s, want %s", z.Name, x.From, x.Each, got, want)
				}
			}
		}
	}
	if again := cardOf(func() quote.Job { b := b; b.Times = nil; return frozen(t, d, b) }(), "sheets"); again.Sizes[0].Prices[0].Each[0].Each.Cmp(was.Sizes[0].Prices[0].Each[0].Each) != 0 {
		t.Error("the shop's own card was changed")
	}
}

func TestFreeze_whereNoCardKeepsTheDayAllStay(t *testing.T) {
	d, b := timed(t, 1)
	if got, want := len(frozen(t, d, b).RateCards), len(b.Cards); got != want {
		t.Errorf("%d cards for a job that nothing can keep, want all %d", got, want)
	}
	terms(&b, "film", catalog.Terms{ProductionDays: 4, Rush: []catalog.Rush{{Days: 1, Percent: money.Int(30)}}})
	terms(&b, "sheets", catalog.Terms{ProductionDays: 4, Rush: []catalog.Rush{{Days: 1, Percent: money.Int(30)}}})
	p := reckoned(t, d, b)
	if text := strings.Join(p.Warnings, " "); p.Kept || !strings.Contains(text, "at the earliest") || !strings.Contains(text, "it would be ready") {
		t.Errorf("kept %v, warnings %q; want the earliest day and what rush would do", p.Kept, text)
	}
}

func TestFreeze_anAcceptedJobKeepsItsCards(t *testing.T) {
	d, b := timed(t, 12)
	terms(&b, "sheets", catalog.Terms{ProductionDays: 20})
	d.State = catalog.Accepted
	if cardOf(frozen(t, d, b), "sheets") == nil {
		t.Error("the goods of an accepted job are ordered: want its cards as they are")
	}
}

func TestReckon_hoursPromisedToOthersCount(t *testing.T) {
	d, b := timed(t, 30)
	free := reckoned(t, d, b)
	hours, err := money.ParseNumber("40")
	if err != nil {
		t.Fatal(err)
	}
	b.Times.Booked = []catalog.Booked{{QuoteID: 7, Hours: hours}, {QuoteID: 8, NeededBy: free.Ready.String(), Hours: hours}}
	busy := reckoned(t, d, b)
	if busy.Ready <= free.Ready {
		t.Errorf("ready %s beside 40 hours promised, %s without; want it later", busy.Ready, free.Ready)
	}
	b.Times.Booked = b.Times.Booked[:1]
	if got := reckoned(t, d, b); got.Ready != free.Ready {
		t.Errorf("ready %s where only the job itself is promised, want %s", got.Ready, free.Ready)
	}
}

func TestReckon_ordersGoOutInTime(t *testing.T) {
	d, b := timed(t, 30)
	p := reckoned(t, d, b)
	if len(p.Orders) < 2 || !strings.HasPrefix(p.Orders[0].Source.Name, "Blanks from ") {
		t.Fatalf("orders %+v, want blanks and transfers", p.Orders)
	}
	for _, o := range p.Orders {
		if o.Latest < o.Source.Calendar.OnOrAfter(p.Start-60) || o.Late || o.By() == "" || o.LatestBasis == "" {
			t.Errorf("%s: by %q (%s), late %v; want a day to come with its reason", o.Source.Name, o.By(), o.LatestBasis, o.Late)
		}
	}
}

// What the days add to a key: freezing with cards to leave out, and reckoning afterwards.
func BenchmarkFreeze_withDays(b *testing.B) {
	d, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, day)
	if err != nil {
		b.Fatal(err)
	}
	book := catalog.Book{Shop: d.Shop, Suppliers: d.Suppliers, Cards: d.Cards, Styles: map[int64]catalog.Style{}}
	for _, s := range d.Styles {
		book.Styles[s.ID] = s
	}
	terms(&book, "sheets", catalog.Terms{ProductionDays: 20})
	times := &catalog.Times{Now: time.Date(2026, 5, 4, 10, 0, 0, 0, time.UTC), Shop: catalog.DefaultShopCalendar()}
	times.Shop.Days.Federal = true
	for i := range 30 {
		times.Booked = append(times.Booked, catalog.Booked{QuoteID: int64(100 + i), NeededBy: "2026-05-20", Hours: money.Int(3)})
	}
	draft := d.Drafts[0]
	draft.NeededBy = "2026-05-18"
	job, _ := catalog.Freeze(draft, book, day)
	r, err := quote.Price(job)
	if err != nil {
		b.Fatal(err)
	}
	for _, x := range []struct {
		name  string
		times *catalog.Times
	}{{"without", nil}, {"with", times}} {
		b.Run(x.name, func(b *testing.B) {
			book.Times = x.times
			for b.Loop() {
				job, _ := catalog.Freeze(draft, book, day)
				catalog.Reckon(draft, book, job, r)
			}
		})
	}
}
