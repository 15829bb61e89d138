package main

import (
	"context"
	"strings"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// mostRosters is how many of a customer's quotes are looked through for a roster, those changed last.
const mostRosters = 20

// PastRosters gives the rosters of a customer's earlier quotes, the latest first. What cannot be read is left out: the list can
// still come from a file.
func (d desk) PastRosters(customer catalog.DraftCustomer, but int64) (past []catalog.PastRoster) {
	ctx := context.Background()
	filter := store.QuoteFilter{Words: customer.Name, Limit: mostRosters}
	if customer.ID != 0 {
		filter.Words, filter.CustomerID = "", customer.ID
	}
	rows, err := d.shop.Quotes(ctx, filter)
	if err != nil {
		return nil
	}
	for _, r := range rows {
		if r.ID == but || !strings.EqualFold(r.Customer, customer.Name) {
			continue
		}
		if draft, err := d.shop.Draft(ctx, r.ID); err == nil && len(draft.Roster) > 0 {
			past = append(past, catalog.PastRoster{Number: r.Number, Title: draft.Title, On: draft.QuotedOn, People: draft.Roster})
		}
	}
	return past
}
