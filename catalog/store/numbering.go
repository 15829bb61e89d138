package store

import "pressworth/catalog"

// nextNumber is one more than the highest number in use that begins alike, and no less than the shop asks for.
func (s *Store) nextNumber(w *writer) string {
	if w.err != nil {
		return ""
	}
	var how catalog.Numbering
	if how, w.err = setting(w.ctx, w.tx, numberingKey, catalog.DefaultNumbering()); w.err != nil {
		return ""
	}
	year, highest := s.now().Year(), 0
	begins := how.Begins(year)
	w.err = w.tx.QueryRowContext(w.ctx, `SELECT coalesce(max(CAST(substr(number, ?1) AS INTEGER)), 0) FROM quote
		WHERE substr(number, 1, ?2) = ?3 AND substr(number, ?1) NOT GLOB '*[^0-9]*' AND length(number) < ?1 + 10`,
		len([]rune(begins))+1, len([]rune(begins)), begins).Scan(&highest)
	return how.Write(year, max(highest+1, how.Next))
}
