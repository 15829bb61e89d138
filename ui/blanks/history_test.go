package blanks

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
)

func TestHistory_showsTheSizeWithMostPricesInOrderOfDays(t *testing.T) {
	each := func(cents int64) []quote.Break { return []quote.Break{{From: 1, Each: money.FromMinor(cents, 2)}} }
	h := newHistory()
	onScreen(t, New(stock(1), func() time.Time { return day }))
	size := h.set([]catalog.Price{
		{Size: "M", Kind: catalog.ListPrice, From: "2026-05-01", Each: each(320)},
		{Size: "M", Kind: catalog.ListPrice, From: "2025-11-01", Each: each(295)},
		{Size: "M", Kind: catalog.SalePrice, From: "2026-01-01", Each: each(100)},
		{Size: "2XL", Kind: catalog.ListPrice, From: "2026-05-01", Each: each(500)},
		{Size: "M", Kind: catalog.ListPrice, From: "2026-06-01", Each: each(900), File: catalog.PriceFile{Undone: true}},
	})
	if size != "M" || len(h.moments) != 2 || h.moments[0].each != "2.95" || h.moments[1].each != "3.20" {
		t.Errorf("size %s, moments %+v", size, h.moments)
	}
	h.Resize(fyne.NewSize(300, 90))
	if got := texts(h); !strings.Contains(got, "2.95") || !strings.Contains(got, "2026-05-01") {
		t.Errorf("drawn: %q", got)
	}
}
