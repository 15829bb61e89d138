package store

import (
	"context"
	"database/sql"
	"fmt"
	"slices"
	"strings"

	"pressworth/catalog"
)

// candidates is how many hits of a search are looked at for their order; a short word has far more.
const candidates = 200

// FindBlanks finds styles by the beginnings of words in number, name, colour, mill and category. My usual come first,
// then numbers that begin with what was typed, then the rest by where the words stand. A style found by a colour comes
// once for each colour that fits, else once for all its colours. Where nothing is typed, my usual are listed by name.
func (s *Store) FindBlanks(ctx context.Context, words string, limit int) ([]catalog.StyleRow, error) {
	if strings.TrimSpace(words) == "" {
		return s.usual(ctx, limit)
	}
	if len(tokens(words)) == 0 || limit <= 0 {
		return nil, nil
	}
	query, err := s.blankQuery(ctx, words)
	if err != nil {
		return nil, fmt.Errorf("find blanks: %w", err)
	}
	var out []catalog.StyleRow
	seen := make(map[int64]bool)
	for _, find := range []func(context.Context, string, string) ([]int64, error){s.usualHits, s.numberHits, s.wordHits} {
		ids, err := find(ctx, words, query)
		if err != nil {
			return nil, fmt.Errorf("find blanks: %w", err)
		}
		ids = slices.DeleteFunc(ids, func(id int64) bool { return seen[id] })
		for _, id := range ids {
			seen[id] = true
		}
		hits, err := s.ranked(ctx, ids, tokens(words), limit-len(out))
		if err != nil {
			return nil, fmt.Errorf("find blanks: %w", err)
		}
		if out = append(out, hits...); len(out) >= limit {
			return out[:limit], nil
		}
	}
	return out, nil
}

func scanID(r *sql.Rows) (id int64, err error) { return id, r.Scan(&id) }

func (s *Store) usual(ctx context.Context, limit int) ([]catalog.StyleRow, error) {
	ids, err := rows(ctx, s.read, scanID, "SELECT id FROM style WHERE usual = 1 AND retired = 0 ORDER BY name, number LIMIT ?", limit)
	if err != nil {
		return nil, fmt.Errorf("usual blanks: %w", err)
	}
	return s.ranked(ctx, ids, nil, limit)
}

func (s *Store) usualHits(ctx context.Context, _, query string) ([]int64, error) {
	if query == "" {
		return nil, nil
	}
	return rows(ctx, s.read, scanID, "SELECT rowid FROM usual_words WHERE usual_words MATCH ?", query)
}

// numberHits walks the index of numbers from what was typed.
func (s *Store) numberHits(ctx context.Context, typed, _ string) ([]int64, error) {
	typed = strings.ToLower(strings.TrimSpace(typed))
	return rows(ctx, s.read, scanID, `SELECT s.id FROM supplier u CROSS JOIN style s ON s.supplier_id = u.id AND s.number >= ? AND s.number < ?
		WHERE s.retired = 0 LIMIT ?`, typed, typed+"\U0010FFFF", candidates)
}

func (s *Store) wordHits(ctx context.Context, _, query string) ([]int64, error) {
	if query == "" {
		return nil, nil
	}
	return rows(ctx, s.read, scanID, "SELECT rowid FROM style_words WHERE style_words MATCH ? LIMIT ?", query, candidates)
}

// hit is a style found, with where the words stand in it.
type hit struct {
	catalog.StyleRow
	score int
}

// ranked reads the styles and puts them in order, at most limit rows.
func (s *Store) ranked(ctx context.Context, ids []int64, words []string, limit int) ([]catalog.StyleRow, error) {
	hits, err := s.heads(ctx, ids)
	if err != nil {
		return nil, err
	}
	order(hits, words)
	if len(hits) > limit {
		hits = hits[:limit]
	}
	found := make([]catalog.StyleRow, len(hits))
	for i, h := range hits {
		found[i] = h.StyleRow
	}
	return s.withPrices(ctx, found, words)
}

// heads reads what stands in one row a style.
func (s *Store) heads(ctx context.Context, ids []int64) ([]hit, error) {
	return rows(ctx, s.read, func(r *sql.Rows) (h hit, err error) {
		return h, r.Scan(&h.StyleID, &h.Supplier, &h.Number, &h.Name, &h.Mill, &h.Category, &h.Usual)
	}, `SELECT s.id, u.name, s.number, s.name, s.mill, s.category, s.usual FROM json_each(?) j JOIN style s ON s.id = j.value
		JOIN supplier u ON u.id = s.supplier_id`, jsonIDs(ids))
}

// fill adds to a style's row what its prices and colours say.
func (h *hit) fill(x catalog.Style) {
	h.From, h.Sizes, h.PricedOn, h.Colors = x.From(), x.SizeSpan(), x.PricedOn, len(x.Colors)
}

func jsonIDs(ids []int64) string {
	return strings.ReplaceAll(fmt.Sprint(ids), " ", ",") // [1 2] to [1,2]
}

// score counts for each word the best place where it stands: number, name, category, mill; a colour counts nothing.
func score(r catalog.StyleRow, words []string) int {
	sum := 0
	number := strings.ToLower(r.Number)
	if number == strings.Join(words, " ") || squeeze(number) == strings.Join(words, "") {
		sum += 100
	}
	for _, w := range words {
		switch {
		case begins(number, w) || strings.HasPrefix(squeeze(number), w):
			sum += 8
		case strings.HasPrefix(strings.ToLower(r.Name), w):
			sum += 7
		case begins(r.Name, w):
			sum += 6
		case begins(r.Category, w):
			sum += 4
		case begins(r.Mill, w):
			sum += 2
		}
	}
	return sum
}

func begins(text, word string) bool {
	return slices.ContainsFunc(tokens(text), func(t string) bool { return strings.HasPrefix(t, word) })
}

func squeeze(number string) string { return strings.Join(tokens(number), "") }
