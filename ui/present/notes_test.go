package present_test

import (
	"strings"
	"testing"

	"pressworth/quote/money"
	"pressworth/ui/present/presenttest"
)

func notesOf(t *testing.T, change func(*presenttest.Shop)) string {
	t.Helper()
	shop := presenttest.New()
	change(shop)
	c := shop.Counter(0)
	var all []string
	for _, n := range c.View().Panel.Notes {
		all = append(all, n.Text)
	}
	return strings.Join(all, "\n")
}

func TestNotes_nameCardsInUseWithOldPrices(t *testing.T) {
	got := notesOf(t, func(s *presenttest.Shop) {
		for i := range s.Demo.Cards {
			s.Demo.Cards[i].Card.Info.PricedOn = "2026-06-01"
		}
	})
	if n := strings.Count(got, "Prices of "); n == 0 || n >= len(presenttest.New().Demo.Cards) || !strings.Contains(got, "(limit 90)") {
		t.Errorf("got %d cards named in %q, want those in use and no others", n, got)
	}
}

func TestNotes_nameSuppliersThatTakeNoSmallOrders(t *testing.T) {
	least := money.FromMinor(1_000_000, 2)
	got := notesOf(t, func(s *presenttest.Shop) {
		for i := range s.Demo.Suppliers {
			s.Demo.Suppliers[i].MinimumOrder = least
		}
	})
	if !strings.Contains(got, "takes orders from 10,000.00 on; this job buys ") {
		t.Errorf("got %q", got)
	}
	if got := notesOf(t, func(*presenttest.Shop) {}); strings.Contains(got, "takes orders from") {
		t.Errorf("without a least order: got %q", got)
	}
}
