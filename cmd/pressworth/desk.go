package main

import (
	"context"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
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

// Known gives a customer the shop keeps, with level, terms and exemption.
func (d desk) Known(id int64) (catalog.Customer, bool) {
	c, err := d.shop.Customer(context.Background(), id)
	return c, err == nil
}

// Save keeps a draft with its figures.
func (d desk) Save(draft catalog.Draft, figures *quote.Result) (catalog.Draft, error) {
	return d.shop.SaveDraft(context.Background(), draft, figures)
}

// Background does work off the window's goroutine.
func (d desk) Background(work func() (onUI func())) { d.background(work) }

// rest is longer than the time between two keys of somebody who types on: 40 words a minute are 0.3 s a key, figures
// come faster (from memory).
const rest = 350 * time.Millisecond

// Pause does something on the window's goroutine when the typist may have come to rest.
func (d desk) Pause(then func()) {
	d.background(func() func() {
		<-time.After(rest)
		return then
	})
}

// Now is the time of day at the counter.
func (d desk) Now() time.Time { return time.Now() }
