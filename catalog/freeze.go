package catalog

import (
	"fmt"
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Freeze makes a job of a draft with the prices of a book, as they stand on a day (2006-01-02). All problems of the
// form come back together, their paths naming the draft's fields as a job file does, like garments[0].sizes[1].qty;
// where there are any, the job holds what could be read. Rules of pricing are checked by the engine, not here.
func Freeze(d Draft, b Book, on string) (quote.Job, []quote.Problem) {
	f := freezer{draft: d, book: b, on: on}
	job := quote.Job{
		Currency:   b.Shop.Currency,
		Title:      strings.TrimSpace(d.Title),
		Garments:   f.garments(),
		Placements: f.placements(),
		Extras:     f.extras(),
		RateCards:  f.cards(),
		Shop:       b.Shop.Rates,
		Art: quote.Art{
			Minutes: f.number("art.minutes", d.ArtMinutes),
			PerHour: b.Shop.ArtPerHour,
			Charge:  f.amount("art.charge", d.ArtCharge),
		},
		Pricing: f.pricing(),
		Ladder:  f.ladder(),
		Paper:   f.paper(),
	}
	f.paidSetUps(&job)
	job.Suppliers = f.suppliers(job)
	f.inTime(&job)
	job.Shop.Spares.DigitPercent, job.Shop.Spares.DigitAtLeast = b.Lettering.DigitPercent, b.Lettering.DigitsAtLeast
	return job, f.problems
}

// freezer gathers the problems while a draft is read.
type freezer struct {
	entries
	draft Draft
	book  Book
	on    string
}

func (f *freezer) pricing() quote.Pricing {
	d := f.draft
	p := f.level().Pricing
	f.over(&p.RushPercent, "pricing.rush_percent", d.RushPercent)
	f.over(&p.DiscountPercent, "pricing.discount_percent", d.DiscountPercent)
	f.overAmount(&p.Discount, "pricing.discount", d.Discount)
	f.overAmount(&p.DeliveryCost, "pricing.delivery_cost", d.DeliveryCost)
	f.overAmount(&p.DeliveryCharge, "pricing.delivery_charge", d.DeliveryCharge)
	p.Tax.Exempt = p.Tax.Exempt || d.TaxExempt
	return p
}

// over replaces a level's own figure where something is typed.
func (f *freezer) over(n *money.Number, path, text string) {
	if strings.TrimSpace(text) != "" {
		*n = f.number(path, text)
	}
}

func (f *freezer) overAmount(a *money.Amount, path, text string) {
	if strings.TrimSpace(text) != "" {
		*a = f.amount(path, text)
	}
}

func (f *freezer) level() Level {
	levels := f.book.Shop.Levels
	if len(levels) == 0 {
		f.say("level", "the shop has no pricing rules yet: add a price level under Shop")
		return Level{}
	}
	if f.draft.Level == "" {
		return levels[0]
	}
	for _, l := range levels {
		if l.Name == f.draft.Level {
			return l
		}
	}
	f.say("level", fmt.Sprintf("the shop has no price level %q any more: choose another", f.draft.Level))
	return levels[0]
}

// cards are all rate cards that hold on the day: the engine chooses among them.
func (f *freezer) cards() []quote.RateCard {
	cards := make([]quote.RateCard, 0, len(f.book.Cards))
	for _, c := range f.book.Cards {
		if c.ValidOn(f.on) {
			cards = append(cards, c.Card)
		}
	}
	return cards
}

// ValidOn says whether the card may be used for a quote of that day.
func (c RateCard) ValidOn(day string) bool {
	return c.Active && c.ValidFrom <= day && (c.ValidTo == "" || day <= c.ValidTo)
}

func (f *freezer) ladder() []int {
	if strings.TrimSpace(f.draft.Ladder) == "" {
		return f.book.Shop.Ladder
	}
	var ladder []int
	for _, word := range words(f.draft.Ladder) {
		if q := f.count("ladder", word); q > 0 {
			ladder = append(ladder, q)
		}
	}
	return ladder
}

func (f *freezer) paper() *quote.Paper {
	c, shop := f.draft.Customer, f.book.Shop
	f.date("needed_by", f.draft.NeededBy)
	return &quote.Paper{
		Customer:  quote.Party{Name: c.Name, Contact: c.Contact, Email: c.Email, Phone: c.Phone, Address: c.Address},
		Shop:      shop.Letterhead,
		Number:    f.draft.Number,
		NeededBy:  strings.TrimSpace(f.draft.NeededBy),
		ValidDays: shop.ValidDays,
		StaleDays: shop.StaleDays,
		Terms:     shop.Terms,
		Notes:     f.draft.Notes,
		Demo:      shop.Demo,
		Roster:    f.wearers(),
	}
}

// wearers are the roster as the documents need it: who wears what; what is printed stands in the placements.
func (f *freezer) wearers() []quote.Wearer {
	var out []quote.Wearer
	for _, p := range f.draft.Roster {
		out = append(out, quote.Wearer{Garment: p.Garment, Size: p.Size, Person: strings.TrimSpace(p.Person)})
	}
	return out
}

// suppliers are those that the garments or the cards are bought from.
func (f *freezer) suppliers(job quote.Job) []quote.Supplier {
	used := make(map[string]bool)
	for _, g := range job.Garments {
		used[g.Supplier] = true
	}
	for _, c := range job.RateCards {
		used[c.Supplier] = true
	}
	var out []quote.Supplier
	for _, s := range f.book.Suppliers {
		if used[s.Key] {
			share := s.SharePercent
			out = append(out, quote.Supplier{ID: s.Key, Name: s.Name, Freight: s.Freight, FreeFrom: s.FreeFrom, SharePercent: &share})
		}
	}
	return out
}

// on keeps of the named garments those that the draft still has; nil means every garment.
func (f *freezer) garmentsNamed(path string, keys []string) []string {
	if keys == nil {
		return nil
	}
	kept := make([]string, 0, len(keys))
	for _, g := range f.draft.Garments {
		if slices.Contains(keys, g.Key) {
			kept = append(kept, g.Key)
		}
	}
	if len(kept) == 0 {
		f.say(path, "choose at least one garment")
	}
	return kept
}
