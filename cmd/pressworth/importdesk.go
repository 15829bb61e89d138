package main

import (
	"context"
	"errors"
	"os"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/pricefile"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/ui/blanks"
)

// importDesk is what the window's import page asks of the shop file and of price files.
type importDesk struct {
	shop  *store.Store
	price func(quote.Job) (quote.Result, error)
}

// maintained is the Blanks place with what it takes to keep its prices true.
func maintained(shop *store.Store, price func(quote.Job) (quote.Result, error)) *blanks.Place {
	p := blanks.New(listed{shop}, time.Now)
	p.Keeper, p.Imports, p.After, p.Rules = shop, importDesk{shop, price}, time.After, shop.Shop
	p.Bulk = func(ctx context.Context, styles []int64, change catalog.BulkChange) (out blanks.Planned, err error) {
		plan, err := shop.PlanBulk(ctx, styles, change)
		if err != nil {
			return out, err
		}
		out.Changes, out.Refused = plan.Changes, plan.Refused
		out.Apply = func(ctx context.Context) (func(context.Context) error, error) {
			ids, err := shop.ApplyBulk(ctx, plan, "")
			return func(ctx context.Context) error { return shop.UndoBulk(ctx, ids) }, err
		}
		return out, nil
	}
	return p
}

// listed is the catalog as the Blanks place lists it.
type listed struct{ *store.Store }

// List finds the rows that a filter lets through.
func (l listed) List(ctx context.Context, f catalog.StyleFilter) (blanks.Listing, error) {
	return l.Store.List(ctx, f)
}

// Suppliers are those the shop has.
func (d importDesk) Suppliers(ctx context.Context) ([]catalog.Supplier, error) {
	return d.shop.Suppliers(ctx)
}

// Look reads the beginning of a price file.
func (d importDesk) Look(path string, supplier int64) (sheet blanks.Sheet, err error) {
	kept, err := d.shop.Columns(context.Background(), supplier)
	if err != nil {
		return sheet, err
	}
	err = withPriceFile(path, func(f *pricefile.File) error {
		c := f.Recall(kept)
		sheet = blanks.Sheet{
			Kind: f.Kind, Head: f.Head(), Fields: pricefile.Fields(),
			Matched: blanks.Matching{Header: c.Header, Fields: c.Fields, Sizes: c.Sizes, Comma: c.Comma, Case: c.Case},
		}
		return nil
	})
	return sheet, err
}

func withPriceFile(path string, work func(*pricefile.File) error) (err error) {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	list, err := pricefile.Open(file)
	if err != nil {
		return err
	}
	return work(list)
}

// Compare reads the whole file and says what it would change, and which open quotes that touches.
func (d importDesk) Compare(ctx context.Context, path string, m blanks.Matching, o catalog.ImportOptions) (out blanks.Compared, err error) {
	columns := pricefile.Columns{Header: m.Header, Fields: m.Fields, Sizes: m.Sizes, Comma: m.Comma, Case: m.Case}
	if err := columns.Check(); err != nil {
		return out, err
	}
	var plan *store.ImportPlan
	err = withPriceFile(path, func(f *pricefile.File) (err error) {
		plan, err = d.shop.PlanImport(ctx, func(take func(catalog.PriceRow) error, refuse func(catalog.Refused)) error {
			return f.Rows(columns, take, refuse)
		}, o)
		return err
	})
	if err != nil {
		return out, err
	}
	if err := d.shop.SaveColumns(ctx, o.SupplierID, columns.Keep()); err != nil {
		return out, err
	}
	out.Report = plan.Report
	if out.Touched, err = d.shop.Touched(ctx, plan, d.figures); err != nil {
		return out, err
	}
	out.Apply = func(ctx context.Context, progress func(done, of int)) error {
		_, err := d.shop.Apply(ctx, plan, progress)
		return err
	}
	return out, nil
}

// figures is what a quote comes to with the prices of a book.
func (d importDesk) figures(draft catalog.Draft, b catalog.Book, on string) (f store.QuoteFigures, err error) {
	job, problems := catalog.Freeze(draft, b, on)
	if len(problems) > 0 {
		return f, quote.Problems(problems)
	}
	result, err := d.price(job)
	if err != nil {
		return f, err
	}
	f.Total = result.Price.Total.String()
	if result.MarginPercent != nil {
		f.Margin = *result.MarginPercent
	}
	for _, w := range result.Warnings {
		f.BelowFloor = f.BelowFloor || w.Code == quote.WarnBelowFloor
	}
	return f, nil
}

// UndoLast takes the last import back.
func (d importDesk) UndoLast(ctx context.Context) (string, error) {
	f, err := d.shop.UndoImport(ctx)
	return f.Name, err
}
