package catalog

import (
	"cmp"
	"slices"

	"pressworth/quote"
)

// inTime leaves the cards that cannot keep the day needed out of the automatic choice and puts the surcharge of the
// cheapest rush that keeps it on those that need one. Where no card keeps the day, all stay as they are. A card that a
// placement is fixed on stays, and so does one that alone serves a placement.
func (f *freezer) inTime(job *quote.Job) {
	s := newSchedule(f.draft, &f.book)
	if s == nil || s.needed == 0 || !s.open() || len(f.problems) > 0 {
		return
	}
	all := job.RateCards
	var kept, late []quote.RateCard
	for _, c := range all {
		tier, ok := s.keeps(f.card(PaidCard(c.ID)))
		switch {
		case ok && tier != nil:
			kept = append(kept, rushed(c, *tier, job.Currency))
		case ok:
			kept = append(kept, c)
		default:
			late = append(late, c)
		}
	}
	if len(kept) == 0 {
		return
	}
	job.RateCards = kept
	for _, c := range late {
		unserved := len(quote.Unserved(*job))
		with := *job
		with.RateCards = append(slices.Clone(job.RateCards), c)
		if fixedOn(job, c.ID) || unserved > 0 && len(quote.Unserved(with)) < unserved {
			job.RateCards = with.RateCards
		}
	}
	slices.SortStableFunc(job.RateCards, func(a, b quote.RateCard) int { return cmp.Compare(placeOf(all, a.ID), placeOf(all, b.ID)) })
}

func placeOf(all []quote.RateCard, id string) int {
	return slices.IndexFunc(all, func(c quote.RateCard) bool { return c.ID == id })
}

// card is the shop's record of a card of the job.
func (f *freezer) card(id string) RateCard {
	for _, c := range f.book.Cards {
		if c.Card.ID == id && c.ValidOn(f.on) {
			return c
		}
	}
	return RateCard{}
}

// fixedOn says whether a placement is fixed on a card.
func fixedOn(job *quote.Job, id string) bool {
	return slices.ContainsFunc(job.Placements, func(p quote.Placement) bool { return p.Method == id })
}
