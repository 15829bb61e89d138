package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/pricefile"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/book"
)

// bookFigures reads what week, learning and reports are made from.
type bookFigures struct {
	bookDesk
	papers bookPapers
}

// Sales are the quotes decided between two days that were frozen; one that was declined as a draft has no figures.
func (b bookFigures) Sales(ctx context.Context, from, to string) ([]catalog.Sale, error) {
	var sales []catalog.Sale
	err := b.decided(ctx, from, to, func(o catalog.Outcome, job quote.Job, r quote.Result) {
		sales = append(sales, catalog.SaleOf(o, job, r))
	})
	return sales, err
}

// Done are all finished jobs.
func (b bookFigures) Done(ctx context.Context) ([]catalog.Done, error) {
	var done []catalog.Done
	err := b.decided(ctx, "", "9999-12-31", func(o catalog.Outcome, job quote.Job, r quote.Result) {
		if o.State == catalog.Finished && o.Actuals != nil {
			done = append(done, catalog.DoneOf(o.QuoteRow, job, r, *o.Actuals))
		}
	})
	return done, err
}

// decided opens every quote decided between two days as it was decided upon.
func (b bookFigures) decided(ctx context.Context, from, to string, each func(catalog.Outcome, quote.Job, quote.Result)) error {
	all, err := b.Outcomes(ctx, from, to)
	if err != nil {
		return err
	}
	for _, o := range all {
		if o.RevisionID == 0 {
			continue
		}
		job, result, err := b.Opened(ctx, o.RevisionID)
		if err != nil {
			return fmt.Errorf("quote %s: %w", o.Number, err)
		}
		each(o, job, result)
	}
	return nil
}

// Rates are the shop's, as they stand.
func (b bookFigures) Rates(ctx context.Context) (quote.Shop, error) {
	shop, err := b.Shop(ctx)
	return shop.Rates, err
}

// TakeOver puts a figure in the place of one of the shop's rates.
func (b bookFigures) TakeOver(ctx context.Context, path string, figure money.Number) error {
	shop, err := b.Shop(ctx)
	if err != nil {
		return err
	}
	switch path {
	case "allowance_percent":
		shop.Rates.AllowancePercent = figure
	case "handling_s":
		shop.Rates.Handling = figure
	case "garment_percent":
		shop.Rates.Spares.GarmentPercent = figure
	default:
		return fmt.Errorf("the shop has no rate %s", path)
	}
	return b.SaveShop(ctx, shop)
}

// WriteTable writes a table in which no cell runs in a spreadsheet.
func (b bookFigures) WriteTable(_ context.Context, name string, rows [][]string) (string, error) {
	data, err := tableOf(rows)
	return b.papers.file("report-", name+"-"+time.Now().Format(time.DateOnly), ".csv", data, err)
}

// tableOf is a table as RFC 4180 has it, every cell made harmless.
func tableOf(rows [][]string) ([]byte, error) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	for _, r := range rows {
		safe := make([]string, len(r))
		for i, cell := range r {
			safe[i] = pricefile.Harmless(cell)
		}
		if err := w.Write(safe); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return out.Bytes(), w.Error()
}

// causeNames are the engine's causes in the words of the window.
var causeNames = map[string]string{
	quote.CausePlans: "Sheets planned anew", quote.CauseQuantities: "Quantities", quote.CauseWork: "Artwork and extras", quote.CauseBlanks: "Blank prices",
	quote.CauseFreight: "Freight", quote.CauseTransfers: "Transfer prices", quote.CauseShop: "Shop rates", quote.CausePricing: "Pricing rules",
	quote.CauseMethods: "Method changed", quote.CauseRest: "Rest",
}

// explain says why a job comes to another total, in the words of the window. What adds nothing to the total is left out.
func explain(then, now quote.Job) ([]book.Cause, error) {
	d, err := quote.Explain(then, now)
	if err != nil {
		return nil, err
	}
	var causes []book.Cause
	for _, e := range d.Effects {
		if e.Total.Sign() == 0 {
			continue
		}
		why := strings.Join(e.Details, "; ")
		for _, w := range e.With {
			why = strings.TrimPrefix(why+"; with "+strings.ToLower(causeNames[w]), "; ")
		}
		amount := e.Total.String()
		if e.Total.Sign() > 0 {
			amount = "+" + amount
		}
		causes = append(causes, book.Cause{Name: causeNames[e.Cause], Why: why, Amount: amount})
	}
	return causes, nil
}
