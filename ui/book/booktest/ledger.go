package booktest

import (
	"context"
	"fmt"
	"slices"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
)

// Quote is part of book.Ledger.
func (b *Book) Quote(_ context.Context, id int64) (catalog.QuoteHead, error) {
	e, err := b.at(id)
	if err != nil {
		return catalog.QuoteHead{}, err
	}
	e.next()
	h := e.QuoteHead
	total := amount(h.Total)
	if h.State == catalog.Accepted || h.State == catalog.Finished {
		total = b.result.Price.Total
	}
	h.Account = catalog.NewAccount(total, b.result.Price.Deposit, slices.Clone(e.Account.Payments))
	h.Steps, h.Revisions = slices.Clone(e.Steps), slices.Clone(e.Revisions)
	return h, nil
}

// Altered is the id that an altered revision has: reading it finds another hash.
const Altered = 99

// Opened is part of book.Ledger.
func (b *Book) Opened(_ context.Context, revision int64) (quote.Job, quote.Result, error) {
	if revision == Altered {
		return quote.Job{}, quote.Result{}, catalog.Altered{Quote: "2026-0002", Number: 1, Frozen: "aaaaaaaaaaaaaaaa", Read: "bbbbbbbbbbbbbbbb"}
	}
	return b.job, b.result, b.Fails
}

// AddRevision puts a revision into the book by hand.
func (b *Book) AddRevision(id int64, r catalog.RevisionRow) {
	e, err := b.at(id)
	if err != nil {
		panic(err)
	}
	e.Revisions = append([]catalog.RevisionRow{r}, e.Revisions...)
	e.Revision = r.Number
}

// Send is part of book.Ledger.
func (b *Book) Send(_ context.Context, id int64, how string) (int, error) {
	e, err := b.at(id)
	if err != nil {
		return 0, err
	}
	e.Revision++
	row := catalog.SealRevision(b.job, b.result).RevisionRow
	row.QuoteID, row.Number, row.MadeAt, row.SentHow = id, e.Revision, Day.Format(time.RFC3339), how
	if len(e.QuoteHead.Options) == 0 {
		row.ID = b.id()
		e.Revisions = append([]catalog.RevisionRow{row}, e.Revisions...)
	}
	for _, o := range slices.Backward(e.QuoteHead.Options) {
		row.ID, row.Option, row.OptionName = b.id(), o.Position, o.Name
		e.Revisions = append([]catalog.RevisionRow{row}, e.Revisions...)
	}
	e.Expires, e.FollowUp = Day.AddDate(0, 0, 30).Format(time.DateOnly), Day.AddDate(0, 0, 7).Format(time.DateOnly)
	e.become(catalog.Sent, how)
	return e.Revision, nil
}

// Accept is part of book.Ledger.
func (b *Book) Accept(_ context.Context, id, revision int64, _, poNumber string) error {
	e, err := b.at(id)
	if err != nil {
		return err
	}
	e.AcceptedID, e.PONumber = revision, poNumber
	e.become(catalog.Accepted, "")
	b.buyFor(e)
	return nil
}

// buyFor puts what a quote needs on the purchase list.
func (b *Book) buyFor(e *entry) {
	add := func(row catalog.PurchaseRow, n int) {
		b.parts = append(b.parts, &part{row, catalog.PurchasePart{ID: b.id(), QuoteID: e.ID, Number: e.Number, NeededBy: e.NeededBy, Needed: n}})
	}
	for _, x := range b.result.Purchases.Blanks {
		for _, s := range x.Sizes {
			add(catalog.PurchaseRow{Kind: catalog.ShelfBlank, Supplier: x.Supplier, SupplierName: "Northgate Blanks", Style: x.Style, Name: x.Name, Color: x.Color, Size: s.Size}, s.Qty)
		}
	}
	for _, x := range b.result.Purchases.Transfers {
		for _, i := range x.Items {
			add(catalog.PurchaseRow{Kind: catalog.ShelfTransfer, Supplier: x.Supplier, SupplierName: "Fernhollow Transfers", Card: x.Card, CardName: x.Card, What: i.What}, i.Qty)
		}
	}
}

// SetState is part of book.Ledger.
func (b *Book) SetState(_ context.Context, id int64, state, note string) error {
	e, err := b.at(id)
	if err != nil {
		return err
	}
	if !catalog.MayBecome(e.State, state) {
		return fmt.Errorf("a quote that is %s cannot become %s", e.State, state)
	}
	if state == catalog.Declined {
		e.Why = note
	}
	if state == catalog.Sent {
		b.parts = slices.DeleteFunc(b.parts, func(p *part) bool { return p.QuoteID == id })
	}
	e.become(state, note)
	return nil
}

// SetDates is part of book.Ledger.
func (b *Book) SetDates(_ context.Context, id int64, followUp, expires string) error {
	e, err := b.at(id)
	if err == nil {
		e.FollowUp, e.Expires = followUp, expires
	}
	return err
}

// Duplicate is part of book.Ledger.
func (b *Book) Duplicate(_ context.Context, id int64, pieces int) (catalog.Draft, error) {
	e, err := b.at(id)
	if err != nil {
		return catalog.Draft{}, err
	}
	d := e.draft.Copy()
	d.ID, d.Number, d.Title = 0, "", fmt.Sprintf("%s for %d", e.Title, pieces)
	return d, nil
}

// TakeStep is part of book.Ledger.
func (b *Book) TakeStep(_ context.Context, id int64, s catalog.Step) error {
	e, err := b.at(id)
	if err != nil {
		return err
	}
	if problems := s.Check(); len(problems) > 0 {
		return quote.Problems(problems)
	}
	e.Steps = append(slices.DeleteFunc(slices.Clone(e.Steps), func(x catalog.Step) bool { return x.Name == s.Name }), s)
	return nil
}

// UndoStep is part of book.Ledger.
func (b *Book) UndoStep(_ context.Context, id int64, name string) error {
	e, err := b.at(id)
	if err == nil {
		e.Steps = slices.DeleteFunc(slices.Clone(e.Steps), func(x catalog.Step) bool { return x.Name == name })
	}
	return err
}

// Pay is part of book.Ledger.
func (b *Book) Pay(ctx context.Context, p catalog.Payment) (catalog.Payment, error) {
	h, err := b.Quote(ctx, p.QuoteID)
	if err != nil {
		return p, err
	}
	if p.Amount.Cmp(h.Account.Balance) > 0 {
		return p, catalog.OverBalance{Amount: p.Amount, Balance: h.Account.Balance}
	}
	p.ID = b.id()
	e, err := b.at(p.QuoteID)
	if err == nil {
		e.Account.Payments = append(e.Account.Payments, p)
	}
	return p, err
}

// RemovePayment is part of book.Ledger.
func (b *Book) RemovePayment(_ context.Context, payment int64) error {
	for _, e := range b.quotes {
		e.Account.Payments = slices.DeleteFunc(slices.Clone(e.Account.Payments), func(p catalog.Payment) bool { return p.ID == payment })
	}
	return b.Fails
}

// Finish is part of book.Ledger.
func (b *Book) Finish(_ context.Context, id int64, a catalog.Actuals) error {
	e, err := b.at(id)
	if err == nil {
		e.Actuals = &a
		e.become(catalog.Finished, "")
	}
	return err
}

// Leftovers is part of book.Ledger.
func (b *Book) Leftovers(_ context.Context, id int64) ([]catalog.ShelfItem, error) {
	e, err := b.at(id)
	if err != nil {
		return nil, err
	}
	return []catalog.ShelfItem{{Kind: catalog.ShelfTransfer, Name: "Full back", Width: "11", Height: "8.5", Qty: 2, From: e.Number, On: Day.Format(time.DateOnly)}}, nil
}
