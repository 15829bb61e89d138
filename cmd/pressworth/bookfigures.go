package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"strings"
	"time"

	"pressworth/quote"
	"pressworth/quote/cells"
	"pressworth/quote/money"
	"pressworth/ui/book"
)

// bookFigures reads what week, learning and reports are made from; most of it is the shop file's own.
type bookFigures struct {
	bookDesk
	papers bookPapers
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
			safe[i] = cells.Harmless(cell)
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
