package main

import (
	"context"
	"errors"
	"fmt"
	"os"
	"time"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
)

// openShop opens a shop file for work, and makes it if there is none, or one whose making was cut off: the demo shop
// where that is wanted, else one with the rates to begin a shop of one's own with.
func openShop(ctx context.Context, path string, demo bool) (*store.Store, error) {
	shop, err := store.Open(ctx, path, store.Options{})
	if err != nil {
		return nil, err
	}
	if _, err = shop.Shop(ctx); err == nil {
		return shop, nil
	}
	if !errors.Is(err, store.ErrNotFound) {
		return nil, errors.Join(err, shop.Close())
	}
	seed := seedOwn
	if demo {
		seed = seedDemo
	}
	if err := seed(ctx, shop); err != nil {
		return nil, errors.Join(fmt.Errorf("make shop file %s: %w", path, err), shop.Close())
	}
	return shop, nil
}

func seedDemo(ctx context.Context, shop *store.Store) error {
	today := time.Now().Format(time.DateOnly)
	d, err := seedDrafts(ctx, shop, today)
	if err != nil {
		return err
	}
	past, err := catalog.ReadDemoBook(assets.DemoBook, today, d)
	if err != nil {
		return err
	}
	return shop.SeedBook(ctx, past)
}

// seedDrafts makes the demo shop with the quotes it begins with, which nothing has happened to.
func seedDrafts(ctx context.Context, shop *store.Store, today string) (catalog.Demo, error) {
	d, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, today)
	if err != nil {
		return d, err
	}
	if err := shop.Seed(ctx, d); err != nil {
		return d, err
	}
	return d, priceQuotes(ctx, shop)
}

// priceQuotes puts figures to the quotes of a new shop, so that the quote book shows what they come to.
func priceQuotes(ctx context.Context, shop *store.Store) error {
	rows, err := shop.Quotes(ctx, store.QuoteFilter{})
	if err != nil {
		return err
	}
	for i := len(rows) - 1; i >= 0; i-- { // the last changed first: the order stays
		draft, err := shop.Draft(ctx, rows[i].ID)
		if err != nil {
			return err
		}
		book, err := shop.Book(ctx, draft, draft.QuotedOn)
		if err != nil {
			return err
		}
		job, problems := catalog.Freeze(draft, book, draft.QuotedOn)
		if len(problems) > 0 {
			return quote.Problems(problems)
		}
		result, err := quote.Price(job)
		if err != nil {
			return err
		}
		if _, err := shop.SaveDraft(ctx, draft, &result); err != nil {
			return err
		}
	}
	return nil
}

// withShop does work on an existing shop file that a command names.
func withShop(path string, o store.Options, work func(context.Context, *store.Store) error) (err error) {
	if _, err := os.Stat(path); err != nil {
		return err
	}
	ctx := context.Background()
	shop, err := store.Open(ctx, path, o)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, shop.Close()) }()
	return work(ctx, shop)
}
