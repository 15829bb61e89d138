package main

import (
	"context"
	"time"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
)

// seedOwn gives a new shop rates, extras and presets to begin with: the demo shop's, marked common practice wherever
// they show; suppliers, garments, rate cards and letterhead are the owner's to enter.
func seedOwn(ctx context.Context, shop *store.Store) error {
	demo, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, time.Now().Format(time.DateOnly))
	if err != nil {
		return err
	}
	records := demo.Shop
	records.Demo = false
	records.Letterhead = quote.Party{}
	return shop.Seed(ctx, catalog.Demo{Shop: records})
}
