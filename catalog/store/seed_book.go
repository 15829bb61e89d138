package store

import (
	"context"
	"fmt"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
)

// SeedBook lets happen to the quotes of a demo shop what has happened to them, each thing on its day.
func (s *Store) SeedBook(ctx context.Context, b catalog.DemoBook) error {
	for _, q := range b.Quotes {
		if err := s.relive(ctx, q); err != nil {
			return fmt.Errorf("demo quote %s: %w", q.Draft.Title, err)
		}
	}
	for _, x := range b.Shelf {
		if _, err := s.SaveShelfItem(ctx, x); err != nil {
			return err
		}
	}
	return nil
}

// on is the store as it was on a day, at a quarter to ten.
func (s *Store) on(day string) *Store {
	at, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return s
	}
	at = at.Add(9*time.Hour + 45*time.Minute)
	return &Store{path: s.path, write: s.write, read: s.read, now: func() time.Time { return at }}
}

// relive saves, sends and decides a quote on the days it happened.
func (s *Store) relive(ctx context.Context, q catalog.PastQuote) error {
	then := s.on(q.Draft.QuotedOn)
	c, err := then.SaveCustomer(ctx, q.Customer)
	if err != nil {
		return err
	}
	q.Draft.Customer = c.ForDraft()
	d, r, err := then.sendDemo(ctx, q)
	if err != nil {
		return err
	}
	switch {
	case q.Declined != "":
		return s.on(q.Declined).SetState(ctx, d.ID, catalog.Declined, q.Why)
	case q.Accepted == "":
		return nil
	}
	if err := s.on(q.Accepted).Accept(ctx, d.ID, r, q.Accepted, q.PONumber); err != nil {
		return err
	}
	if err := s.on(q.Accepted).buyDemo(ctx, d.ID, q.Goods); err != nil {
		return err
	}
	return s.workDemo(ctx, d.ID, q)
}

// sendDemo keeps a quote's draft with its figures, and freezes its first revision.
func (s *Store) sendDemo(ctx context.Context, q catalog.PastQuote) (d catalog.Draft, revision int64, err error) {
	if d, err = s.SaveDraft(ctx, q.Draft, nil); err != nil { // its number is printed on the revision
		return d, 0, err
	}
	book, err := s.Book(ctx, d, d.QuotedOn)
	if err != nil {
		return d, 0, err
	}
	job, problems := catalog.Freeze(d, book, d.QuotedOn)
	if len(problems) > 0 {
		return d, 0, quote.Problems(problems)
	}
	r, result, err := catalog.NewRevision(job)
	if err != nil {
		return d, 0, err
	}
	if d, err = s.SaveDraft(ctx, d, &result); err != nil {
		return d, 0, err
	}
	if _, err = s.FreezeRevision(ctx, d.ID, q.SentHow, []catalog.Revision{r}); err != nil {
		return d, 0, err
	}
	all, err := s.Revisions(ctx, d.ID)
	if err != nil || len(all) == 0 {
		return d, 0, err
	}
	return d, all[0].ID, nil
}

// buyDemo puts what a quote needs to ordered or received.
func (s *Store) buyDemo(ctx context.Context, id int64, to string) error {
	if to == "" {
		return nil
	}
	list, err := s.PurchaseList(ctx, true)
	if err != nil {
		return err
	}
	var parts []int64
	for _, row := range list {
		for _, p := range row.Quotes {
			if p.QuoteID == id {
				parts = append(parts, p.ID)
			}
		}
	}
	return s.MarkPurchase(ctx, parts, to, "")
}

// workDemo takes the steps, the payments and the end of a quote.
func (s *Store) workDemo(ctx context.Context, id int64, q catalog.PastQuote) error {
	for _, x := range q.Steps {
		if err := s.on(x.On).TakeStep(ctx, id, x); err != nil {
			return err
		}
	}
	for _, p := range q.Payments {
		a, err := s.Account(ctx, id)
		if err != nil {
			return err
		}
		pay := catalog.Payment{QuoteID: id, On: p.On, Way: p.Way, Amount: a.Balance}
		if p.Deposit {
			pay.Amount, pay.Deposit = a.DepositDue(), true
		}
		if _, err := s.on(p.On).Pay(ctx, pay); err != nil {
			return err
		}
	}
	if q.Actuals == nil {
		return nil
	}
	return s.on(q.Actuals.On).Finish(ctx, id, *q.Actuals)
}
