package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"

	"pressworth/catalog"
)

// QuoteFigures is what a quote comes to.
type QuoteFigures struct {
	Total      string
	Margin     string // percent
	BelowFloor bool
}

// PriceQuote works out a quote with the prices of a book, as they stand on a day.
type PriceQuote func(d catalog.Draft, b catalog.Book, on string) (QuoteFigures, error)

// Touched finds the open quotes (draft or sent) whose garments a plan touches: what they come to on their own day, and
// what they would come to with the file's prices.
func (s *Store) Touched(ctx context.Context, p *ImportPlan, price PriceQuote) ([]catalog.TouchedQuote, error) {
	touched := make(map[int64]*styleChange, len(p.changed)+len(p.gone))
	for i := range p.changed {
		touched[p.changed[i].id] = &p.changed[i]
	}
	for _, id := range p.gone {
		touched[id] = nil
	}
	drafts, err := rows(ctx, s.read, func(r *sql.Rows) (d catalog.Draft, err error) {
		var doc string
		if err = r.Scan(&d.ID, &doc); err == nil {
			id := d.ID
			err = json.Unmarshal([]byte(doc), &d)
			d.ID = id
		}
		return d, err
	}, "SELECT id, draft FROM quote WHERE state IN ('draft', 'sent') ORDER BY number")
	if err != nil {
		return nil, fmt.Errorf("open quotes: %w", err)
	}
	var out []catalog.TouchedQuote
	for _, d := range drafts {
		if !names(d, touched) {
			continue
		}
		q, err := s.touch(ctx, p, d, touched, price)
		if err != nil {
			return nil, fmt.Errorf("quote %s: %w", d.Number, err)
		}
		out = append(out, q)
	}
	return out, nil
}

func names(d catalog.Draft, touched map[int64]*styleChange) bool {
	for _, g := range d.Garments {
		if _, ok := touched[g.StyleID]; ok && g.StyleID != 0 {
			return true
		}
	}
	return false
}

func (s *Store) touch(ctx context.Context, p *ImportPlan, d catalog.Draft, touched map[int64]*styleChange, price PriceQuote) (catalog.TouchedQuote, error) {
	q := catalog.TouchedQuote{ID: d.ID, Number: d.Number, Customer: d.Customer.Name, Title: d.Title}
	day := d.QuotedOn
	if day == "" {
		day = s.today()
	}
	b, err := s.Book(ctx, d, day)
	if err != nil {
		return q, err
	}
	before, _ := price(d, b, day) // what cannot be priced today shows no figures
	q.TotalBefore, q.MarginBefore = before.Total, before.Margin
	day = max(day, p.Options.ValidFrom)
	if b, err = s.Book(ctx, d, day); err != nil {
		return q, err
	}
	for id, x := range b.Styles {
		change, ok := touched[id]
		if !ok {
			continue
		}
		if x, err = s.after(ctx, p, x, change, day); err != nil {
			return q, err
		}
		b.Styles[id] = x
	}
	after, err := price(d, b, day)
	if err != nil {
		q.Unpriced = err.Error()
		return q, nil
	}
	q.TotalAfter, q.MarginAfter, q.BelowFloor = after.Total, after.Margin, after.BelowFloor && !before.BelowFloor
	return q, nil
}

// after is a style with the prices a plan would give it; without a change it is listed no more and has none.
func (s *Store) after(ctx context.Context, p *ImportPlan, x catalog.Style, change *styleChange, day string) (catalog.Style, error) {
	if change == nil {
		x.SetPrices(nil, "")
		return x, nil
	}
	entries, err := s.Prices(ctx, x.ID)
	if err != nil {
		return x, err
	}
	for i, e := range change.entries {
		e.Seq = len(entries) + 1
		e.File = catalog.PriceFile{Name: p.Options.FileName, Source: "file"}
		if e.Each, err = catalog.ReadBreaks(change.breaks[i]); err != nil {
			return x, err
		}
		entries = append(entries, e)
	}
	x.SetPrices(catalog.InForce(entries, day), p.Options.ValidFrom)
	return x, nil
}
