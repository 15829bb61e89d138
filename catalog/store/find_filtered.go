package store

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"pressworth/catalog"
)

// FindFiltered is FindBlanks among the blanks that a filter lets through, retired ones included where it wants them. A style
// whose colours are asked for by shade comes once for each colour of that shade.
func (s *Store) FindFiltered(ctx context.Context, f catalog.StyleFilter, limit int) ([]catalog.StyleRow, error) {
	if f == (catalog.StyleFilter{Words: f.Words}) {
		return s.FindBlanks(ctx, f.Words, limit)
	}
	words := tokens(f.Words)
	if len(words) == 0 {
		return nil, nil
	}
	ids, err := s.filteredHits(ctx, f, words)
	if err != nil {
		return nil, fmt.Errorf("find blanks: %w", err)
	}
	out, err := s.rankedThrough(ctx, ids, words, f, limit)
	if err != nil {
		return nil, fmt.Errorf("find blanks: %w", err)
	}
	return out, nil
}

// mostFiltered is how many styles are looked at for their prices.
const mostFiltered = 4000

// filteredHits are the styles that have the words, as far as their own columns tell; my usual first.
func (s *Store) filteredHits(ctx context.Context, f catalog.StyleFilter, words []string) ([]int64, error) {
	if f.Retired {
		return s.retiredHits(ctx, f, words)
	}
	query, err := s.blankQuery(ctx, f.Words)
	if err != nil || query == "" {
		return nil, err
	}
	where, args := conditions(f, query)
	return rows(ctx, s.read, scanID, `SELECT s.id FROM style s LEFT JOIN color c ON c.style_id = s.id AND c.retired = 0
		WHERE 1 = 1`+where+" GROUP BY s.id ORDER BY s.usual DESC LIMIT ?", append(args, mostFiltered)...)
}

// retiredHits look through the texts of retired styles, which the full-text tables do not hold.
func (s *Store) retiredHits(ctx context.Context, f catalog.StyleFilter, words []string) ([]int64, error) {
	where, args := conditions(f, "")
	var b strings.Builder
	b.WriteString(`SELECT s.id FROM style s LEFT JOIN color c ON c.style_id = s.id WHERE 1 = 1` + where)
	for _, w := range words {
		b.WriteString(` AND ' ' || replace(replace(lower(s.number || ' ' || replace(s.number, '-', '') || ' ' || s.name || ' ' || s.category || ' ' || s.mill || ' ' ||
			coalesce((SELECT group_concat(name, ' ') FROM color WHERE style_id = s.id), '')), '-', ' '), '/', ' ') LIKE ? ESCAPE '\'`)
		args = append(args, "% "+likeText(w)+"%")
	}
	b.WriteString(" GROUP BY s.id ORDER BY s.usual DESC LIMIT ?")
	return rows(ctx, s.read, scanID, b.String(), append(args, mostFiltered)...)
}

// likeText takes the meaning off the marks of LIKE.
func likeText(w string) string {
	return strings.NewReplacer(`\`, `\\`, "%", `\%`, "_", `\_`).Replace(w)
}

// rankedThrough puts styles in the order of a search and lets their rows through until there are enough.
func (s *Store) rankedThrough(ctx context.Context, ids []int64, words []string, f catalog.StyleFilter, limit int) ([]catalog.StyleRow, error) {
	hits, err := s.heads(ctx, ids)
	if err != nil {
		return nil, err
	}
	order(hits, words)
	var out []catalog.StyleRow
	for chunk := range slices.Chunk(hits, candidates) {
		of := make([]int64, len(chunk))
		for i, h := range chunk {
			of[i] = h.StyleID
		}
		styles, err := s.priced(ctx, of, s.today())
		if err != nil {
			return nil, err
		}
		for _, h := range chunk {
			x := styles[h.StyleID]
			h.fill(x)
			for _, r := range byColor(h.StyleRow, x.Colors, words) {
				out = append(out, through(r, x, f)...)
			}
		}
		if len(out) >= limit {
			return out[:limit], nil
		}
	}
	return out, nil
}

// order puts hits in the order of a search: by where the words stand, then by name and number; my usual come first.
func order(hits []hit, words []string) {
	for i := range hits {
		hits[i].score = score(hits[i].StyleRow, words)
	}
	slices.SortStableFunc(hits, func(a, b hit) int {
		switch {
		case a.Usual != b.Usual && a.Usual:
			return -1
		case a.Usual != b.Usual:
			return 1
		case a.score != b.score:
			return b.score - a.score
		case a.Name != b.Name:
			return strings.Compare(a.Name, b.Name)
		}
		return strings.Compare(a.Number, b.Number)
	})
}

// through gives what a filter lets through of a row: nothing, itself, or a row for each colour of the shade asked for.
func through(r catalog.StyleRow, x catalog.Style, f catalog.StyleFilter) []catalog.StyleRow {
	if f.AtMost != nil && (len(x.Sizes)+len(x.ByColor) == 0 || r.From.Cmp(*f.AtMost) > 0) {
		return nil
	}
	comes := func(c catalog.Color) bool {
		return (f.Shade == "" || c.Shade == f.Shade) && (f.Size == "" || x.EachOf(c.Name, f.Size) != nil)
	}
	if r.Color.Name != "" || len(x.Colors) == 0 {
		if comes(r.Color) {
			return []catalog.StyleRow{r}
		}
		return nil
	}
	var out []catalog.StyleRow
	for _, c := range x.Colors {
		if comes(c) {
			one := r
			one.Color, one.Colors = c, 1
			out = append(out, one)
		}
	}
	if f.Shade == "" && len(out) > 0 {
		return []catalog.StyleRow{r}
	}
	return out
}
