package store

import (
	"context"
	"database/sql"
	"fmt"
	"regexp"
	"slices"
	"strconv"
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
	Limit      int // of Quotes; 0: 200
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

// QuoteListing is the quotes that a filter lets through, in its order. It holds only which quotes there are; what stands
// in their rows is read when they are shown.
type QuoteListing struct {
	s   *Store
	ids []int64
}

// manyFound is from how many quotes on those that a search found are picked out of the whole book in its order, which is
// faster than to look each of them up and sort them.
const manyFound = 1000

// ListQuotes finds the quotes that a filter lets through, all of them whatever its Limit is.
func (s *Store) ListQuotes(ctx context.Context, f QuoteFilter) (*QuoteListing, error) {
	l := &QuoteListing{s: s}
	var err error
	switch m := quoteMatch(f.Words); m {
	case "":
		l.ids, err = s.inOrder(ctx, f, f.wholeIndex(), "")
	default:
		l.ids, err = s.searched(ctx, f, f.narrowed(m))
	}
	if err != nil {
		return nil, fmt.Errorf("quote book: %w", err)
	}
	return l, nil
}

// searched are the quotes that a full-text query finds, in order.
func (s *Store) searched(ctx context.Context, f QuoteFilter, match string) ([]int64, error) {
	found, err := s.ids(ctx, "SELECT coalesce(group_concat(rowid), '') FROM quote_words WHERE quote_words MATCH ?", match)
	if err != nil || len(found) == 0 {
		return nil, err
	}
	if len(found) < manyFound {
		return s.inOrder(ctx, f, "quote_found", " AND id IN (SELECT value FROM json_each(?))", asJSON(found))
	}
	all, err := s.inOrder(ctx, f, f.wholeIndex(), "")
	if err != nil || f.State == "" && f.CustomerID == 0 && len(all) == len(found) {
		return all, err
	}
	slices.Sort(found)
	return slices.DeleteFunc(all, func(id int64) bool {
		_, there := slices.BinarySearch(found, id)
		return !there
	}), nil
}

// inOrder are the quotes of a state and a customer, and what else is asked of them, in the order of a filter. The text
// keeps the order of the selection that it is made of.
func (s *Store) inOrder(ctx context.Context, f QuoteFilter, index, where string, args ...any) ([]int64, error) {
	if f.State != "" {
		where, args = where+" AND state = ?", append(args, f.State)
	}
	if f.CustomerID != 0 {
		where, args = where+" AND customer_id = ?", append(args, f.CustomerID)
	}
	return s.ids(ctx, "SELECT coalesce(group_concat(id), '') FROM (SELECT id FROM quote INDEXED BY "+index+" WHERE 1 = 1"+where+" ORDER BY "+f.order()+")", args...)
}

// wholeIndex is the index to go through all quotes by: the narrow one where it holds what the order is made of.
func (f QuoteFilter) wholeIndex() string {
	if _, sorted := quoteOrders[f.Sort]; sorted {
		return "quote_listed"
	}
	return "quote_in_order"
}

// ids reads many numbers as one text: a row for each takes longer than to find them.
func (s *Store) ids(ctx context.Context, query string, args ...any) ([]int64, error) {
	var joined string
	if err := s.read.QueryRowContext(ctx, query, args...).Scan(&joined); err != nil {
		return nil, translate(err)
	}
	ids := make([]int64, 0, strings.Count(joined, ",")+1)
	for w := range strings.SplitSeq(joined, ",") {
		if id, err := strconv.ParseInt(w, 10, 64); err == nil {
			ids = append(ids, id)
		}
	}
	return ids, nil
}

// Len is the number of quotes.
func (l *QuoteListing) Len() int { return len(l.ids) }

// Place is where a quote stands, -1 where it is not among them.
func (l *QuoteListing) Place(id int64) int { return slices.Index(l.ids, id) }

// Rows reads n rows from the given one on, fewer at the end.
func (l *QuoteListing) Rows(ctx context.Context, from, n int) ([]catalog.QuoteRow, error) {
	from = min(max(from, 0), len(l.ids))
	part := l.ids[from:min(from+max(n, 0), len(l.ids))]
	all, err := rows(ctx, l.s.read, scanQuote, "SELECT "+quoteColumns+" FROM quote INDEXED BY quote_found WHERE id IN (SELECT value FROM json_each(?))", asJSON(part))
	if err != nil {
		return nil, fmt.Errorf("quote book: %w", err)
	}
	at := make(map[int64]catalog.QuoteRow, len(all))
	for _, q := range all {
		at[q.ID] = q
	}
	out := make([]catalog.QuoteRow, len(part))
	for i, id := range part {
		out[i] = at[id]
	}
	return out, nil
}

// Quotes reads the first quotes that a filter lets through.
func (s *Store) Quotes(ctx context.Context, f QuoteFilter) ([]catalog.QuoteRow, error) {
	l, err := s.ListQuotes(ctx, f)
	if err != nil {
		return nil, err
	}
	if f.Limit <= 0 {
		f.Limit = 200
	}
	return l.Rows(ctx, 0, f.Limit)
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
