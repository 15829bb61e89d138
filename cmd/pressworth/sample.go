package main

import (
	"errors"
	"time"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/quote"
)

// sampler prices one job of the demo shop under other rates, to show what a change of a shop's rates does.
func sampler(price func(quote.Job) (quote.Result, error)) (func(catalog.Shop) (quote.Result, error), error) {
	day := time.Now().Format(time.DateOnly)
	demo, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, day)
	if err != nil {
		return nil, err
	}
	if len(demo.Drafts) == 0 {
		return nil, errors.New("the demo shop has no quote")
	}
	book := catalog.Book{Suppliers: demo.Suppliers, Cards: demo.Cards, Styles: map[int64]catalog.Style{}}
	for _, s := range demo.Styles {
		book.Styles[s.ID] = s
	}
	return func(shop catalog.Shop) (quote.Result, error) {
		book := book
		book.Shop = shop
		job, problems := catalog.Freeze(demo.Drafts[0], book, day)
		if len(problems) > 0 {
			return quote.Result{}, quote.Problems(problems)
		}
		return price(job)
	}, nil
}
