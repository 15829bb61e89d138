package store

import (
	"context"
	"database/sql"
	"fmt"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/jobfile"
)

// Suppliers reads all suppliers by name.
func (s *Store) Suppliers(ctx context.Context) ([]catalog.Supplier, error) {
	return rows(ctx, s.read, scanSupplier, supplierColumns+" ORDER BY id")
}

const supplierColumns = `SELECT id, key, name, freight, free_from, share_percent, transit_days, cut_off, contact, notes, minimum_order, calendar FROM supplier`

func scanSupplier(r *sql.Rows) (x catalog.Supplier, err error) {
	return x, r.Scan(&x.ID, &x.Key, &x.Name, text(&x.Freight), text(&x.FreeFrom), text(&x.SharePercent), &x.TransitDays, &x.CutOff, &x.Contact, &x.Notes,
		text(&x.MinimumOrder), jsonOf{&x.Calendar})
}

// SaveSupplier keeps a supplier; ID 0 makes a new one. It comes back with its id.
func (s *Store) SaveSupplier(ctx context.Context, x catalog.Supplier) (catalog.Supplier, error) {
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		x.ID = saveSupplier(&w, x)
		return w.err
	})
	if err != nil {
		return x, fmt.Errorf("save supplier %s: %w", x.Name, err)
	}
	return x, nil
}

func saveSupplier(w *writer, x catalog.Supplier) int64 {
	id := sql.NullInt64{Int64: x.ID, Valid: x.ID != 0}
	w.do(`INSERT INTO supplier (id, key, name, freight, free_from, share_percent, transit_days, cut_off, contact, notes, minimum_order,
		calendar) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)
		ON CONFLICT (id) DO UPDATE SET key = excluded.key, name = excluded.name, freight = excluded.freight, free_from = excluded.free_from,
		share_percent = excluded.share_percent, transit_days = excluded.transit_days, cut_off = excluded.cut_off,
		contact = excluded.contact, notes = excluded.notes, minimum_order = excluded.minimum_order, calendar = excluded.calendar`,
		id, x.Key, x.Name, x.Freight.String(), x.FreeFrom.String(), x.SharePercent.String(), x.TransitDays, x.CutOff, x.Contact, x.Notes,
		x.MinimumOrder.String(), asJSON(x.Calendar))
	if w.err == nil && x.ID == 0 {
		w.err = w.tx.QueryRowContext(w.ctx, "SELECT id FROM supplier WHERE key = ?", x.Key).Scan(&x.ID)
	}
	return x.ID
}

// RateCards reads the rate cards that may be used for a quote of that day; an empty day reads all, retired and past
// ones too.
func (s *Store) RateCards(ctx context.Context, on string) ([]catalog.RateCard, error) {
	query, args := cardColumns, []any{}
	if on != "" {
		query += " WHERE active = 1 AND valid_from <= ? AND (valid_to = '' OR valid_to >= ?)"
		args = append(args, on, on)
	}
	cards, err := rows(ctx, s.read, scanCard, query+" ORDER BY pos, valid_from", args...)
	if err != nil {
		return nil, fmt.Errorf("rate cards: %w", err)
	}
	if on != "" {
		cards = latest(cards)
	}
	return cards, nil
}

const cardColumns = "SELECT id, doc, valid_from, valid_to, active, confirmed, terms FROM rate_card"

func scanCard(r *sql.Rows) (c catalog.RateCard, err error) {
	var doc string
	if err = r.Scan(&c.ID, &doc, &c.ValidFrom, &c.ValidTo, &c.Active, &c.Confirmed, jsonOf{&c.Terms}); err != nil {
		return c, err
	}
	job, err := jobfile.Decode([]byte(doc))
	if err == nil && len(job.RateCards) == 1 {
		c.Card = job.RateCards[0]
		markEntries(&c)
	}
	return c, err
}

// latest keeps of each card the list that began last.
func latest(cards []catalog.RateCard) []catalog.RateCard {
	at := make(map[string]int)
	var out []catalog.RateCard
	for _, c := range cards {
		i, seen := at[c.Card.ID]
		switch {
		case !seen:
			at[c.Card.ID] = len(out)
			out = append(out, c)
		case c.ValidFrom > out[i].ValidFrom:
			out[i] = c
		}
	}
	return out
}

// markEntries says on every price of a card which entry it is: the card with the day its list began.
func markEntries(c *catalog.RateCard) {
	info := quote.Info{EntryID: c.Card.ID + "@" + c.ValidFrom, PricedOn: c.ValidFrom}
	mark := func(breaks []quote.Break) {
		for i := range breaks {
			breaks[i].Info = info
		}
	}
	c.Card.Info.PricedOn = c.ValidFrom
	mark(c.Card.Rates)
	mark(c.Card.FullColorEach)
	for _, z := range c.Card.Sizes {
		for _, row := range z.Prices {
			mark(row.Each)
		}
	}
	for _, row := range c.Card.Prices {
		mark(row.Each)
	}
	for i := range c.Card.Lengths {
		c.Card.Lengths[i].Info = info
	}
}

// SaveRateCard keeps a rate card; ID 0 makes a new one, last in order. It comes back with its id.
func (s *Store) SaveRateCard(ctx context.Context, c catalog.RateCard) (catalog.RateCard, error) {
	err := s.change(ctx, func(tx *sql.Tx) error {
		w := writer{ctx: ctx, tx: tx}
		c.ID = saveCard(&w, c)
		return w.err
	})
	if err != nil {
		return c, fmt.Errorf("save rate card %s: %w", c.Card.Name, err)
	}
	return c, nil
}

func saveCard(w *writer, c catalog.RateCard) int64 {
	doc := string(jobfile.Encode(quote.Job{RateCards: []quote.RateCard{c.Card}}))
	if c.ID == 0 {
		return w.do(`INSERT INTO rate_card (key, pos, doc, valid_from, valid_to, active, confirmed, terms)
			VALUES (?, (SELECT coalesce(max(pos), 0) + 1 FROM rate_card), ?, ?, ?, ?, ?, ?)`,
			c.Card.ID, doc, c.ValidFrom, c.ValidTo, c.Active, c.Confirmed, asJSON(c.Terms))
	}
	w.do("UPDATE rate_card SET key = ?, doc = ?, valid_from = ?, valid_to = ?, active = ?, confirmed = ?, terms = ? WHERE id = ?",
		c.Card.ID, doc, c.ValidFrom, c.ValidTo, c.Active, c.Confirmed, asJSON(c.Terms), c.ID)
	return c.ID
}
