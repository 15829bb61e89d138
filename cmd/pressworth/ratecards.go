package main

import (
	"time"

	"pressworth/catalog/store"
	"pressworth/ui/cards"
)

// rateCards is the Rate cards place with the shop's rules for old prices and its unit of temperature.
func rateCards(shop *store.Store) *cards.Place {
	p := cards.New(shop, time.Now)
	p.Rules, p.Units = shop.Shop, shop.Units
	return p
}
