package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"

	"pressworth/catalog"
	"pressworth/quote"
)

// toBuy puts what a job needs on the purchase list, in place of what the quote needed before and has not been ordered.
func toBuy(w *writer, id int64, job quote.Job, result quote.Result) {
	w.do("DELETE FROM purchase WHERE quote_id = ? AND ordered = 0 AND received = 0", id)
	w.do("UPDATE purchase SET needed = 0 WHERE quote_id = ?", id)
	for _, p := range needs(job, result) {
		there := w.count(`SELECT coalesce(max(id), 0) FROM purchase WHERE quote_id = ? AND kind = ? AND supplier = ? AND style = ? AND color = ? AND size = ?
			AND card = ? AND what = ?`, id, p.Kind, p.Supplier, p.Style, p.Color, p.Size, p.Card, p.What)
		if there > 0 {
			w.do("UPDATE purchase SET needed = ? WHERE id = ?", p.Needed, there)
			continue
		}
		w.do(`INSERT INTO purchase (quote_id, kind, supplier, supplier_name, style, name, color, size, card, card_name, what, needed)
			VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`, id, p.Kind, p.Supplier, p.SupplierName, p.Style, p.Name, p.Color, p.Size,
			p.Card, p.CardName, p.What, p.Needed)
	}
}

// needs are the rows of a job's purchase lists.
func needs(job quote.Job, result quote.Result) (out []catalog.PurchaseRow) {
	suppliers := make(map[string]string)
	for _, s := range job.Suppliers {
		suppliers[s.ID] = s.Name
	}
	cards := make(map[string]string)
	for _, c := range job.RateCards {
		cards[c.ID] = c.Name
	}
	artwork := make(map[string]string)
	for _, p := range job.Placements {
		artwork[p.ID] = p.Name
	}
	for _, b := range result.Purchases.Blanks {
		for _, z := range b.Sizes {
			out = append(out, catalog.PurchaseRow{
				Kind: catalog.ShelfBlank, Supplier: b.Supplier, SupplierName: suppliers[b.Supplier], Style: b.Style, Name: b.Name,
				Color: b.Color, Size: z.Size, Needed: z.Qty,
			})
		}
	}
	for _, t := range result.Purchases.Transfers {
		for _, i := range t.Items {
			what := i.What
			if name := artwork[what]; name != "" {
				what = name
			}
			out = append(out, catalog.PurchaseRow{
				Kind: catalog.ShelfTransfer, Supplier: t.Supplier, SupplierName: suppliers[t.Supplier], Card: t.Card, CardName: cards[t.Card],
				What: what, Needed: i.Qty,
			})
		}
	}
	return slices.DeleteFunc(out, func(p catalog.PurchaseRow) bool { return p.Needed == 0 })
}

// part is a purchase row of one quote.
type part struct {
	catalog.PurchaseRow
	of catalog.PurchasePart
}

// PurchaseList is what accepted quotes need bought, combined by supplier: blanks by style, colour and size, transfers
// by card. all: what is here already too.
func (s *Store) PurchaseList(ctx context.Context, all bool) ([]catalog.PurchaseRow, error) {
	parts, err := rows(ctx, s.read, func(r *sql.Rows) (p part, err error) {
		return p, r.Scan(&p.of.ID, &p.of.QuoteID, &p.of.Number, &p.of.NeededBy, &p.Kind, &p.Supplier, &p.SupplierName, &p.Style, &p.Name, &p.Color,
			&p.Size, &p.Card, &p.CardName, &p.What, &p.of.Needed, &p.of.Ordered, &p.of.Received, &p.of.Short, &p.of.Note)
	}, `SELECT p.id, p.quote_id, q.number, q.needed_by, p.kind, p.supplier, p.supplier_name, p.style, p.name, p.color, p.size, p.card, p.card_name,
		p.what, p.needed, p.ordered, p.received, p.short, p.note FROM purchase p JOIN quote q ON q.id = p.quote_id
		WHERE q.state = 'accepted' ORDER BY p.supplier_name, p.supplier, p.kind, p.style, p.color, p.card, p.id`)
	if err != nil {
		return nil, fmt.Errorf("purchase list: %w", err)
	}
	var out []catalog.PurchaseRow
	for _, p := range parts {
		out = combine(out, p)
	}
	if !all {
		out = slices.DeleteFunc(out, func(r catalog.PurchaseRow) bool { return r.Open() == 0 && r.Awaited() == 0 })
	}
	return out, nil
}

// combine adds a part to the row that asks for the same thing, or to the end.
func combine(out []catalog.PurchaseRow, p part) []catalog.PurchaseRow {
	i := slices.IndexFunc(out, func(r catalog.PurchaseRow) bool {
		return r.Kind == p.Kind && r.Supplier == p.Supplier && r.Style == p.Style && r.Color == p.Color && r.Size == p.Size && r.Card == p.Card && r.What == p.What
	})
	if i < 0 {
		i, out = len(out), append(out, p.PurchaseRow)
	}
	r := &out[i]
	r.Needed, r.Ordered, r.Received, r.Short = r.Needed+p.of.Needed, r.Ordered+p.of.Ordered, r.Received+p.of.Received, r.Short+p.of.Short
	r.Quotes = append(r.Quotes, p.of)
	return out
}

// How far a purchase is.
const (
	PurchaseOpen     = "open"
	PurchaseOrdered  = "ordered"
	PurchaseReceived = "received"
)

// MarkPurchase puts parts of the purchase list, by their ids, to open, ordered or received in full. A quote whose parts
// are all ordered, or all here, takes that step by itself.
func (s *Store) MarkPurchase(ctx context.Context, partIDs []int64, to, note string) error {
	set, ok := map[string]string{
		PurchaseOpen:     "ordered = 0, received = 0, short = 0",
		PurchaseOrdered:  "ordered = max(ordered, needed)",
		PurchaseReceived: "ordered = max(ordered, needed), received = max(ordered, needed), short = 0",
	}[to]
	if !ok {
		return fmt.Errorf("purchases are open, ordered or received, not %q", to)
	}
	return s.purchases(ctx, partIDs, func(w *writer, id int64) {
		w.do("UPDATE purchase SET "+set+", note = CASE WHEN ?1 = '' THEN note ELSE ?1 END WHERE id = ?2", note, id)
	})
}

// ReceivePart records a delivery: how many are here, and how many will not come any more.
func (s *Store) ReceivePart(ctx context.Context, partID int64, received, short int, note string) error {
	if received < 0 || short < 0 {
		return errors.New("delivery: enter 0 or more")
	}
	return s.purchases(ctx, []int64{partID}, func(w *writer, id int64) {
		w.do("UPDATE purchase SET ordered = max(ordered, ?1 + ?2), received = ?1, short = ?2, note = ?3 WHERE id = ?4", received, short, note, id)
	})
}

// purchases changes parts of the list, and takes the steps of their quotes that follow from it.
func (s *Store) purchases(ctx context.Context, ids []int64, work func(w *writer, id int64)) error {
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		touched := make(map[int64]bool)
		for _, id := range ids {
			touched[w.count("SELECT quote_id FROM purchase WHERE id = ?", id)] = true
			work(&w, id)
		}
		for id := range touched {
			s.stepByGoods(&w, id, catalog.GoodsOrdered, "needed > ordered")
			s.stepByGoods(&w, id, catalog.GoodsIn, "needed > received")
			nextStep(&w, id)
		}
		return w.err
	})
	if err != nil {
		return fmt.Errorf("purchase list: %w", err)
	}
	return nil
}

// stepByGoods takes a step once nothing lacks any more; it takes none back.
func (s *Store) stepByGoods(w *writer, id int64, step, lacking string) {
	if w.count("SELECT count(*) FROM purchase WHERE quote_id = ? AND "+lacking, id) > 0 {
		return
	}
	x := catalog.Step{Name: step}
	w.do(`INSERT INTO step (quote_id, pos, name, taken_on, who, how, note) VALUES (?, ?, ?, ?, '', '', 'by the purchase list')
		ON CONFLICT DO NOTHING`, id, x.Place(), step, s.today())
}
