package store

import (
	"context"
	"database/sql"
	"strings"
)

// learnWords adds the words of texts to those a search knows. The texts are divided and their accents taken off by a
// full-text table of the same kind as the one that is searched.
func learnWords(w *writer, texts []string) {
	if w.err != nil || len(texts) == 0 {
		return
	}
	w.do("CREATE VIRTUAL TABLE IF NOT EXISTS temp.learnt USING fts5(t, content = '', contentless_delete = 1, detail = 'none', tokenize = 'unicode61 remove_diacritics 2')")
	w.do("CREATE VIRTUAL TABLE IF NOT EXISTS temp.learnt_term USING fts5vocab('temp', 'learnt', 'row')")
	for _, t := range texts {
		w.do("INSERT INTO temp.learnt (t) VALUES (?)", t)
	}
	w.do("INSERT OR IGNORE INTO word SELECT term FROM temp.learnt_term WHERE term GLOB '[a-z][a-z][a-z][a-z]*'")
	w.do("DELETE FROM temp.learnt")
}

// mostTerms is up to how many whole words stand for the beginning of one.
const mostTerms = 24

// blankQuery writes the full-text query of a search for styles: like match, but whole words where they are known. It is
// "" where nothing can be found.
func (s *Store) blankQuery(ctx context.Context, typed string) (string, error) {
	words := tokens(typed)
	if len(words) > maxWords {
		words = words[:maxWords]
	}
	parts := make([]string, 0, len(words))
	for _, w := range words {
		part := `"` + w + `"*`
		if len(w) >= 4 && letters(w) {
			terms, err := rows(ctx, s.read, func(r *sql.Rows) (t string, err error) { return t, r.Scan(&t) },
				"SELECT term FROM word WHERE term >= ? AND term < ? LIMIT ?", w, w+"\U0010FFFF", mostTerms)
			switch {
			case err != nil:
				return "", err
			case len(terms) == 0:
				return "", nil
			case len(terms) < mostTerms:
				part = `("` + strings.Join(terms, `" OR "`) + `")`
			}
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, " AND "), nil
}

// letters tells whether a word is of the letters a to z only.
func letters(w string) bool {
	for i := range len(w) {
		if w[i] < 'a' || w[i] > 'z' {
			return false
		}
	}
	return true
}
