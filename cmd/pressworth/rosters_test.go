package main

import (
	"path/filepath"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

func TestDesk_findsTheRostersOfACustomersOtherQuotes(t *testing.T) {
	shop, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "shop.db"), store.Options{})
	if err != nil {
		t.Fatal(err)
	}
	defer shop.Close()
	save := func(customer, title string, people ...catalog.DraftPerson) catalog.Draft {
		d, err := shop.SaveDraft(t.Context(), catalog.Draft{
			State: "draft", QuotedOn: "2026-11-25", Title: title, Customer: catalog.DraftCustomer{Name: customer}, Roster: people,
		}, nil)
		if err != nil {
			t.Fatal(err)
		}
		return d
	}
	ana := catalog.DraftPerson{Garment: "g1", Size: "M", Person: "Ana Rivera", Name: "RIVERA", Number: "7"}
	save("Harbour Rowing Club", "spring", ana)
	save("Harbour Rowing Club", "no list")
	save("Pine Street School", "other", ana)
	now := save("Harbour Rowing Club", "autumn", ana)
	got := desk{shop: shop}.PastRosters(now.Customer, now.ID)
	if len(got) != 1 || got[0].Title != "spring" || len(got[0].People) != 1 || got[0].People[0] != ana {
		t.Errorf("got %+v, want the one of spring", got)
	}
}
