package main

import (
	"context"
	"fmt"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/ui/book"
)

// bookDesk is what the Quote book asks of an open shop file, in the words that it asks it in.
type bookDesk struct{ *store.Store }

// quoteBook is the Quote book over a shop file, with its documents in a folder.
func quoteBook(shop *store.Store, p papers) *book.Place {
	desk := bookDesk{shop}
	place := book.New(desk)
	place.Ledger, place.Options, place.Buying, place.People, place.Shelf = desk, desk, desk, desk, desk
	documents := bookPapers{desk, p}
	place.Compare, place.Papers, place.Figures, place.Explain = desk, documents, bookFigures{desk, documents}, explain
	return place
}

// List finds quotes by words and state, in the order that is wanted.
func (b bookDesk) List(ctx context.Context, q book.Query) (book.Listing, error) {
	return b.ListQuotes(ctx, store.QuoteFilter{Words: q.Words, State: q.State, Sort: q.Sort, Descending: q.Down})
}

// Of gives the quotes of a customer.
func (b bookDesk) Of(ctx context.Context, customer int64) ([]catalog.QuoteRow, error) {
	return b.Quotes(ctx, store.QuoteFilter{CustomerID: customer})
}

// Levels are the names of the shop's price levels.
func (b bookDesk) Levels(ctx context.Context) ([]string, error) {
	shop, err := b.Shop(ctx)
	names := make([]string, len(shop.Levels))
	for i, l := range shop.Levels {
		names[i] = l.Name
	}
	return names, err
}

// Cards are the rate cards there are, each once.
func (b bookDesk) Cards(ctx context.Context) ([]book.Card, error) {
	all, err := b.RateCards(ctx, time.Now().Format(time.DateOnly))
	cards := make([]book.Card, len(all))
	for i, c := range all {
		cards[i] = book.Card{Key: c.Card.ID, Name: c.Card.Name}
	}
	return cards, err
}

// mostShared is how many quotes of a state are planned together at the most, those changed last.
const mostShared = 40

// Open prices the open quotes with the prices of the day each was made.
func (b bookDesk) Open(ctx context.Context) ([]book.Open, error) {
	var open []book.Open
	for _, state := range []string{catalog.Drafted, catalog.Sent, catalog.Accepted} {
		rows, err := b.Quotes(ctx, store.QuoteFilter{State: state, Limit: mostShared})
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			draft, err := b.Draft(ctx, r.ID)
			if err != nil {
				return nil, err
			}
			if job, err := b.job(ctx, draft, draft.QuotedOn); err == nil {
				open = append(open, book.Open{Number: r.Number, Customer: r.Customer, Job: job})
			}
		}
	}
	return open, nil
}

// job freezes a draft with the prices of a day. What keeps it from being priced comes back as quote.Problems.
func (b bookDesk) job(ctx context.Context, d catalog.Draft, on string) (quote.Job, error) {
	prices, err := b.Book(ctx, d, on)
	if err != nil {
		return quote.Job{}, err
	}
	job, problems := catalog.Freeze(d, prices, on)
	if len(problems) > 0 {
		return job, quote.Problems(problems)
	}
	return job, nil
}

// Opened reads a frozen revision as it was sealed.
func (b bookDesk) Opened(ctx context.Context, revision int64) (quote.Job, quote.Result, error) {
	r, err := b.Revision(ctx, revision)
	if err != nil {
		return quote.Job{}, quote.Result{}, err
	}
	return r.Open()
}

// Send freezes the next revision of a quote, one for each of its options, with the prices of the day it is quoted on.
func (b bookDesk) Send(ctx context.Context, id int64, how string) (int, error) {
	options, err := b.Store.Options(ctx, id)
	if err != nil {
		return 0, err
	}
	if len(options) == 0 {
		d, err := b.Draft(ctx, id)
		if err != nil {
			return 0, err
		}
		options = []catalog.Option{{Draft: d}}
	}
	frozen := make([]catalog.Revision, 0, len(options))
	for _, o := range options {
		r, err := b.frozen(ctx, o)
		if err != nil {
			return 0, err
		}
		frozen = append(frozen, r)
	}
	return b.FreezeRevision(ctx, id, how, frozen)
}

func (b bookDesk) frozen(ctx context.Context, o catalog.Option) (catalog.Revision, error) {
	job, err := b.job(ctx, o.Draft, o.Draft.QuotedOn)
	if err != nil {
		return catalog.Revision{}, named(o, err)
	}
	r, _, err := catalog.NewRevision(job)
	if err != nil {
		return r, named(o, err)
	}
	r.Option, r.OptionName = o.Position, o.Name
	return r, nil
}

// named says which option an error is about, where there are several.
func named(o catalog.Option, err error) error {
	if o.Name == "" {
		return err
	}
	return fmt.Errorf("option %s: %w", o.Name, err)
}

// CopyOption offers a copy of an option beside those there are; from 0: of the quote's only job.
func (b bookDesk) CopyOption(ctx context.Context, id int64, from int, name string) (catalog.Option, error) {
	d, err := b.Draft(ctx, id)
	if err == nil && from > 0 {
		d, err = b.OptionDraft(ctx, id, from)
	}
	if err != nil {
		return catalog.Option{}, err
	}
	var figures *quote.Result
	if job, err := b.job(ctx, d, d.QuotedOn); err == nil {
		if r, err := quote.Price(job); err == nil {
			figures = &r
		}
	}
	return b.AddOption(ctx, id, name, d, figures)
}

// Standing prices a quote as it stands, with the prices of the day it is quoted on.
func (b bookDesk) Standing(ctx context.Context, id int64) (quote.Job, quote.Result, error) {
	return b.priced(ctx, id, "")
}

// Today prices a quote as it stands, with the prices of today.
func (b bookDesk) Today(ctx context.Context, id int64) (quote.Job, quote.Result, error) {
	return b.priced(ctx, id, time.Now().Format(time.DateOnly))
}

func (b bookDesk) priced(ctx context.Context, id int64, on string) (quote.Job, quote.Result, error) {
	d, err := b.Draft(ctx, id)
	if err != nil {
		return quote.Job{}, quote.Result{}, err
	}
	if on == "" {
		on = d.QuotedOn
	}
	job, err := b.job(ctx, d, on)
	if err != nil {
		return job, quote.Result{}, err
	}
	r, err := quote.Price(job)
	return job, r, err
}
