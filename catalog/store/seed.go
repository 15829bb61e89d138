package store

import (
	"context"
	"database/sql"
	"fmt"

	"pressworth/catalog"
)

// Seed fills an empty shop file with a shop to begin with, in one transaction.
func (s *Store) Seed(ctx context.Context, d catalog.Demo) error {
	err := s.change(ctx, func(tx *sql.Tx) error {
		if err := saveShop(ctx, tx, d.Shop); err != nil {
			return err
		}
		w := writer{ctx: ctx, tx: tx}
		for _, x := range d.Suppliers {
			saveSupplier(&w, x)
		}
		s.seedStyles(&w, d.Styles)
		for _, c := range d.Cards {
			c.ID = 0
			saveCard(&w, c)
		}
		for _, q := range d.Drafts {
			s.saveDraft(&w, &q, nil)
		}
		return w.err
	})
	if err != nil {
		return fmt.Errorf("fill the shop: %w", err)
	}
	return nil
}

func (s *Store) seedStyles(w *writer, styles []catalog.Style) {
	files := make(map[int64]catalog.PriceFile)
	for _, x := range styles {
		f, ok := files[x.SupplierID]
		if !ok {
			f = catalog.PriceFile{SupplierID: x.SupplierID, Name: "demo price list", Source: "demo", ValidFrom: x.PricedOn, TakenAt: s.stamp(), Whole: true}
			f.ID = insertFile(w, f)
			files[x.SupplierID] = f
		}
		id := insertStyle(w, x, sql.NullInt64{Int64: f.ID, Valid: true})
		for _, z := range x.Sizes {
			insertPrice(w, catalog.Price{StyleID: id, Size: z.Size, Kind: catalog.ListPrice, Each: z.Each, From: x.PricedOn, File: f})
		}
	}
}
