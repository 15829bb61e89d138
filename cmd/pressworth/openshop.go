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
)

// openShop opens a shop file for work, and makes it if there is none: with the demo shop in it where that is wanted.
func openShop(ctx context.Context, path string, demo bool) (*store.Store, error) {
	_, err := os.Stat(path)
	fresh := errors.Is(err, os.ErrNotExist)
	shop, err := store.Open(ctx, path, store.Options{})
	if err != nil || !fresh || !demo {
		return shop, err
	}
	if err := seedDemo(ctx, shop); err != nil {
		return nil, errors.Join(fmt.Errorf("make the demo shop: %w", err), shop.Close())
	}
	return shop, nil
}

func seedDemo(ctx context.Context, shop *store.Store) error {
	d, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, time.Now().Format(time.DateOnly))
	if err != nil {
		return err
	}
	return shop.Seed(ctx, d)
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
