package main

import (
	"context"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/ui/book"
)

// desk is what the Counter asks of an open shop file, in the words that it asks it in.
type desk struct {
	shop       *store.Store
	background func(work func() (onUI func()))
}

// Book gives the prices in force on a day for the named styles.
func (d desk) Book(styles []int64, on string) (catalog.Book, error) {
	var draft catalog.Draft
	for _, id := range styles {
		draft.Garments = append(draft.Garments, catalog.DraftGarment{StyleID: id})
	}
	return d.shop.Book(context.Background(), draft, on)
}

// FindStyles finds blanks by words. What cannot be searched for finds nothing: the typist sees that at once.
func (d desk) FindStyles(query string, limit int) []catalog.StyleRow {
	rows, err := d.shop.FindBlanks(context.Background(), query, limit)
	if err != nil {
		return nil
	}
	return rows
}

// FindCustomers finds customers by words.
func (d desk) FindCustomers(query string, limit int) []catalog.DraftCustomer {
	found, err := d.shop.FindCustomers(context.Background(), query, limit)
	if err != nil {
		return nil
	}
	return found
}

// Save keeps a draft with its figures.
func (d desk) Save(draft catalog.Draft, figures *quote.Result) (catalog.Draft, error) {
	return d.shop.SaveDraft(context.Background(), draft, figures)
}

// Background does work off the window's goroutine.
func (d desk) Background(work func() (onUI func())) { d.background(work) }

// Now is the time of day at the counter.
func (d desk) Now() time.Time { return time.Now() }

// bookDesk is what the Quote book asks of an open shop file.
type bookDesk struct{ *store.Store }

// Quotes finds quotes by words and state.
func (b bookDesk) Quotes(ctx context.Context, words, state string, limit int) ([]catalog.QuoteRow, error) {
	return b.Store.Quotes(ctx, store.QuoteFilter{Words: words, State: state, Limit: limit})
}

// Open prices the open quotes with the prices of the day each was made.
func (b bookDesk) Open(ctx context.Context) ([]book.Open, error) {
	var open []book.Open
	for _, state := range []string{"draft", "sent", "accepted"} {
		rows, err := b.Store.Quotes(ctx, store.QuoteFilter{State: state, Limit: mostShared})
		if err != nil {
			return nil, err
		}
		for _, r := range rows {
			draft, err := b.Draft(ctx, r.ID)
			if err != nil {
				return nil, err
			}
			prices, err := b.Book(ctx, draft, draft.QuotedOn)
			if err != nil {
				return nil, err
			}
			if job, problems := catalog.Freeze(draft, prices, draft.QuotedOn); len(problems) == 0 {
				open = append(open, book.Open{Number: r.Number, Customer: r.Customer, Job: job})
			}
		}
	}
	return open, nil
}

// mostShared is how many quotes of a state are planned together at the most, those changed last.
const mostShared = 40
