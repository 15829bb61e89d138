//go:build cgo

package main

import (
	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/ui"
	"pressworth/ui/start"
)

// guide asks the questions of a new shop, once: until it has a name.
func (d *desktop) guide(shop *store.Store, records catalog.Shop) {
	if records.Demo || records.Letterhead.Name != "" {
		return
	}
	d.window.Begin(func(done func()) ui.Guide { return start.New(shop, done) })
}
