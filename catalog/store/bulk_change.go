package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"

	"pressworth/catalog"
	"pressworth/quote"
)

// BulkPlan is a change of many prices, to be looked at before it is made.
type BulkPlan struct {
	Changes []catalog.PriceChange // all of them
	Refused []string              // numbers of styles that cannot be changed so, which stay as they are

	entries map[int64][]catalog.Price
	styles  []catalog.Style
	version int64
}

// PlanBulk works out what a change would do to the list prices in force of some styles.
func (s *Store) PlanBulk(ctx context.Context, styles []int64, change catalog.BulkChange) (*BulkPlan, error) {
	p := &BulkPlan{entries: make(map[int64][]catalog.Price), version: s.version.Load()}
	for _, id := range styles {
		x, err := s.Style(ctx, id)
		if err != nil {
			return nil, err
		}
		all, err := s.Prices(ctx, id)
		if err != nil {
			return nil, err
		}
		list := slices.DeleteFunc(all, func(e catalog.Price) bool { return e.Kind == catalog.NetPrice || e.Kind == catalog.SalePrice })
		if err := p.add(x, catalog.InForce(list, s.today()), change); err != nil {
			p.Refused = append(p.Refused, x.Number)
		}
	}
	return p, nil
}

// add takes a style as a whole or not at all.
func (p *BulkPlan) add(x catalog.Style, prices []catalog.Price, change catalog.BulkChange) error {
	var changes []catalog.PriceChange
	var entries []catalog.Price
	for _, e := range prices {
		after, err := change.Of(e.Each)
		if err != nil {
			return err
		}
		before := e.Each
		e.Each, e.Until = after, ""
		entries = append(entries, e)
		changes = append(changes, catalog.PriceChange{
			Kind: direction(before, after), Style: x.Number, Color: e.Color, Size: e.Size,
			Before: catalog.WriteBreaks(before), After: catalog.WriteBreaks(after),
		})
	}
	p.entries[x.ID], p.styles = entries, append(p.styles, x)
	p.Changes = append(p.Changes, changes...)
	return nil
}

func direction(before, after []quote.Break) string {
	for i := range before {
		switch after[i].Each.Cmp(before[i].Each) {
		case 1:
			return catalog.ChangeDearer
		case -1:
			return catalog.ChangeCheaper
		}
	}
	return catalog.ChangeSame
}

// ApplyBulk makes the changes of a plan, from today on, in one transaction. It gives the id by which UndoBulk takes
// them back; one for each supplier.
func (s *Store) ApplyBulk(ctx context.Context, p *BulkPlan, person string) ([]int64, error) {
	files := make(map[int64]catalog.PriceFile)
	var ids []int64
	err := s.change(ctx, func(tx *sql.Tx) error {
		if p.version != s.version.Load() {
			return ErrChanged
		}
		w := writer{ctx: ctx, tx: tx}
		for _, x := range p.styles {
			f, ok := files[x.SupplierID]
			if !ok {
				f = s.byPerson(&w, x.SupplierID, person)
				files[x.SupplierID], ids = f, append(ids, f.ID)
			}
			w.do("UPDATE style SET edits = edits + 1 WHERE id = ?", x.ID)
			w.do(`INSERT INTO import_note (file_id, style_id, edits, before)
				SELECT ?, id, edits, json_object('retired', json(iif(retired, 'true', 'false')), 'said', said) FROM style WHERE id = ?`, f.ID, x.ID)
			w.do("UPDATE style SET said = 0 WHERE id = ?", x.ID)
			for _, e := range p.entries[x.ID] {
				e.From, e.File, e.Kind = s.today(), f, catalog.ListPrice
				insertPrice(&w, e)
			}
		}
		return w.err
	})
	if err != nil {
		return nil, fmt.Errorf("change prices: %w", err)
	}
	s.version.Add(1)
	return ids, nil
}

// UndoBulk takes price changes back. Where styles were edited since, it is refused with a *catalog.EditedError.
func (s *Store) UndoBulk(ctx context.Context, ids []int64) error {
	err := s.change(ctx, func(tx *sql.Tx) error {
		for _, id := range ids {
			if err := editedSince(ctx, tx, id); err != nil {
				return err
			}
			if err := undo(ctx, tx, id); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return fmt.Errorf("undo price change: %w", err)
	}
	s.version.Add(1)
	return nil
}

// Retire takes styles out of lists and searches, or puts them back. Quotes that name them stay as they are.
func (s *Store) Retire(ctx context.Context, styles []int64, retired bool) error {
	return s.mark(ctx, "retired", styles, retired)
}

// SetUsual puts styles among my usual, or takes them out.
func (s *Store) SetUsual(ctx context.Context, styles []int64, usual bool) error {
	return s.mark(ctx, "usual", styles, usual)
}

func (s *Store) mark(ctx context.Context, column string, styles []int64, on bool) error {
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		for _, id := range styles {
			w.do("UPDATE style SET "+column+" = ?, edits = edits + 1 WHERE id = ?", on, id)
			indexWords(&w, id)
		}
		return w.err
	})
	if err != nil {
		return fmt.Errorf("mark styles %s: %w", column, err)
	}
	s.version.Add(1)
	return nil
}

// Columns is how the columns of a supplier's last price file were matched, as SaveColumns was given it; "" for none.
func (s *Store) Columns(ctx context.Context, supplier int64) (columns string, err error) {
	err = s.read.QueryRowContext(ctx, "SELECT columns FROM supplier WHERE id = ?", supplier).Scan(&columns)
	return columns, translate(err)
}

// SaveColumns remembers how the columns of a supplier's price file were matched.
func (s *Store) SaveColumns(ctx context.Context, supplier int64, columns string) error {
	return s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		w.do("UPDATE supplier SET columns = ? WHERE id = ?", columns, supplier)
		return w.err
	})
}
