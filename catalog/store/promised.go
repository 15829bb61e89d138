package store

import (
	"context"
	"database/sql"
	"fmt"

	"pressworth/catalog"
)

// Times are now, the shop's week, and the jobs that are accepted and not pressed yet, each with the hours it was
// accepted at.
func (s *Store) Times(ctx context.Context) (catalog.Times, error) {
	week, err := s.ShopCalendar(ctx)
	if err != nil {
		return catalog.Times{}, fmt.Errorf("times: %w", err)
	}
	booked, err := rows(ctx, s.read, func(r *sql.Rows) (b catalog.Booked, err error) {
		return b, r.Scan(&b.QuoteID, &b.Number, &b.Customer, &b.Title, &b.NeededBy, text(&b.Hours))
	}, `SELECT q.id, q.number, q.customer, q.title, q.needed_by, r.hours FROM quote q JOIN revision r ON r.id = q.accepted_id
		WHERE q.state = 'accepted' AND NOT EXISTS (SELECT 1 FROM step WHERE quote_id = q.id AND name = 'pressed') ORDER BY q.needed_by, q.id`)
	if err != nil {
		return catalog.Times{}, fmt.Errorf("promised hours: %w", err)
	}
	return catalog.Times{Now: s.now(), Shop: week, Booked: booked}, nil
}
