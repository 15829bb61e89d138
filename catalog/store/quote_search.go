package store

import (
	"context"
	"database/sql"
	"fmt"
	"regexp"
	"strings"

	"pressworth/catalog"
)

// QuoteFilter says which quotes are wanted; empty fields say nothing.
type QuoteFilter struct {
	// Words are found in number, customer, title, placements, notes and state, each as the beginning of a word; a day
	// like 2026-05-31, or a month, among the quote's days; an amount like 1,261.38 as its total.
	Words      string
	State      string
	CustomerID int64
	Sort       string // one of QuoteSorts; empty: changed last first
	Descending bool
	Limit      int // 0: 200
}

// quoteOrders are the orders of the quote book by their names. What is not known comes last, whichever way round.
var quoteOrders = map[string]string{
	"number":    "number",
	"customer":  "customer = '', customer COLLATE NOCASE",
	"title":     "title = '', title COLLATE NOCASE",
	"state":     "CASE state WHEN 'draft' THEN 1 WHEN 'sent' THEN 2 WHEN 'accepted' THEN 3 WHEN 'declined' THEN 4 ELSE 5 END",
	"pieces":    "pieces",
	"total":     "total = '', CAST(total AS REAL)", // for the order only
	"margin":    "margin = '', CAST(margin AS REAL)",
	"needed_by": "needed_by = '', needed_by",
	"changed":   "changed",
	"follow_up": "follow_up = '', follow_up",
	"expires":   "expires = '', expires",
}

const quoteColumns = "id, number, state, customer, title, pieces, total, margin, needed_by, changed, next_step, revision, options, follow_up, expires, paid"

func scanQuote(r *sql.Rows) (q catalog.QuoteRow, err error) {
	return q, r.Scan(quoteFields(&q)...)
}

func quoteFields(q *catalog.QuoteRow) []any {
	return []any{
		&q.ID, &q.Number, &q.State, &q.Customer, &q.Title, &q.Pieces, &q.Total, &q.Margin, &q.NeededBy, &q.Changed, &q.NextStep,
		&q.Revision, &q.Options, &q.FollowUp, &q.Expires, &q.Paid,
	}
}

// newestFirst is how many of the quotes that fit a search are put in the order of change at the most: a single letter
// fits nearly all there are.
const newestFirst = 600

// Quotes reads the quote book. In the order of change a search that fits more quotes than newestFirst looks at the newest
// of them.
func (s *Store) Quotes(ctx context.Context, f QuoteFilter) ([]catalog.QuoteRow, error) {
	index := "quote_listed"
	query := " WHERE 1 = 1"
	var args []any
	if m := quoteMatch(f.Words); m != "" {
		index = "quote_found"
		query, args = query+" AND id IN (SELECT rowid FROM quote_words WHERE quote_words MATCH ?", append(args, f.narrowed(m))
		if quoteOrders[f.Sort] == "" {
			query += fmt.Sprintf(" ORDER BY rowid DESC LIMIT %d", newestFirst)
		}
		query += ")"
	}
	if f.State != "" {
		query, args = query+" AND state = ?", append(args, f.State)
	}
	if f.CustomerID != 0 {
		query, args = query+" AND customer_id = ?", append(args, f.CustomerID)
	}
	if f.Limit <= 0 {
		f.Limit = 200
	}
	query = "SELECT " + quoteColumns + " FROM quote INDEXED BY " + index + query + " ORDER BY " + f.order() + " LIMIT ?"
	all, err := rows(ctx, s.read, scanQuote, query, append(args, f.Limit)...)
	if err != nil {
		return nil, fmt.Errorf("quote book: %w", err)
	}
	return all, nil
}

// narrowed is a full-text query for quotes of the state that is asked for only: a quote's state is one of its words.
func (f QuoteFilter) narrowed(match string) string {
	if f.State == "" {
		return match
	}
	return match + ` "` + f.State + `"`
}

func (f QuoteFilter) order() string {
	order, ok := quoteOrders[f.Sort]
	switch {
	case !ok:
		return "changed DESC, id DESC"
	case f.Descending:
		return order + " DESC, id DESC"
	}
	return order + ", id DESC"
}

var (
	dayOrMonth = regexp.MustCompile(`^[0-9]{4}-[0-9]{2}(-[0-9]{2})?$`)
	amountLike = regexp.MustCompile(`^[$€£]?[0-9][0-9,]*\.[0-9]{1,3}$`)
)

// quoteMatch is match for the quote book, whose index holds a day, and an amount, as one word (view quote_text).
func quoteMatch(typed string) string {
	var parts, plain []string
	for _, w := range strings.Fields(typed) {
		switch {
		case dayOrMonth.MatchString(w):
			parts = append(parts, `"d`+strings.ReplaceAll(w, "-", "")+`"*`)
		case amountLike.MatchString(w):
			parts = append(parts, `"a`+strings.ReplaceAll(only(w, isAmountRune), ".", "x")+`"*`)
		default:
			plain = append(plain, w)
		}
	}
	if m := match(strings.Join(plain, " ")); m != "" {
		parts = append(parts, m)
	}
	return strings.Join(parts[:min(len(parts), maxWords)], " ")
}

func isAmountRune(r rune) bool { return r == '.' || r >= '0' && r <= '9' }
