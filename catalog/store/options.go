package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
)

// ErrOptions is a change to a quote's options that cannot be made.
var ErrOptions = errors.New("options")

// firstOption is what a quote's own job is called once another is offered beside it.
const firstOption = "Option 1"

// AddOption offers one more job in a quote, side by side with what is there. The first time, the quote's own draft
// becomes option 1.
func (s *Store) AddOption(ctx context.Context, id int64, name string, d catalog.Draft, result *quote.Result) (catalog.Option, error) {
	if strings.TrimSpace(name) == "" {
		return catalog.Option{}, quote.Problems{{Path: "name", Problem: "say what the customer chooses between, like with back print"}}
	}
	var added catalog.Option
	err := s.book(ctx, id, func(w *writer) {
		n := int(w.count("SELECT options FROM quote WHERE id = ?", id))
		if n == 0 {
			ownOption(w, id, 1, firstOption)
			n = 1
		}
		if n >= catalog.MostOptions {
			w.fail(fmt.Errorf("%w: a quote holds at most %d", ErrOptions, catalog.MostOptions))
		}
		at := freePlace(w, id)
		lead, err := one(w.ctx, w.tx, scanDraft, "SELECT id, state, draft FROM quote WHERE id = ?", id)
		w.fail(err)
		d.ID, d.Number, d.State, d.Customer, d.Option = id, lead.Number, lead.State, lead.Customer, at
		total, margin := figures(result)
		w.do("INSERT INTO quote_option (quote_id, pos, name, draft, pieces, total, margin) VALUES (?, ?, ?, '{}', 0, '', '')", id, at, name)
		writeOption(w, d, total, margin)
		w.do("UPDATE quote SET options = ?, changed = ? WHERE id = ?", n+1, s.stamp(), id)
		added = catalog.Option{Position: at, Name: name, Draft: d, Pieces: d.Pieces(), Total: total, Margin: margin}
	})
	return added, err
}

// freePlace is the place after a quote's last option, or one that became free before it. Options keep their places: a
// draft that is open on the counter belongs to one.
func freePlace(w *writer, id int64) int {
	last := int(w.count("SELECT coalesce(max(pos), 0) FROM quote_option WHERE quote_id = ?", id))
	if last < catalog.MostOptions {
		return last + 1
	}
	return int(w.count(`SELECT coalesce(min(n.value), 0) FROM json_each('[1,2,3,4]') n
		WHERE NOT EXISTS (SELECT 1 FROM quote_option WHERE quote_id = ? AND pos = n.value)`, id))
}

// ownOption makes a quote's own draft one of its options.
func ownOption(w *writer, id int64, position int, name string) {
	w.do("UPDATE quote SET draft = json_set(draft, '$.Option', ?) WHERE id = ?", position, id)
	w.do(`INSERT INTO quote_option (quote_id, pos, name, draft, pieces, total, margin)
		SELECT id, ?, ?, draft, pieces, total, margin FROM quote WHERE id = ?`, position, name, id)
}

// writeOption keeps the draft of an option that is there.
func writeOption(w *writer, d catalog.Draft, total, margin string) {
	there := w.count("SELECT count(*) FROM quote_option WHERE quote_id = ? AND pos = ?", d.ID, d.Option)
	if w.err == nil && there == 0 {
		w.fail(fmt.Errorf("%w: there is no option %d any more", ErrOptions, d.Option))
	}
	w.do("UPDATE quote_option SET draft = ?, pieces = ?, total = ?, margin = ? WHERE quote_id = ? AND pos = ?",
		asJSON(d), d.Pieces(), total, margin, d.ID, d.Option)
}

// RenameOption gives an option another name.
func (s *Store) RenameOption(ctx context.Context, id int64, position int, name string) error {
	if strings.TrimSpace(name) == "" {
		return quote.Problems{{Path: "name", Problem: "must not be empty"}}
	}
	return s.book(ctx, id, func(w *writer) {
		w.do("UPDATE quote_option SET name = ? WHERE quote_id = ? AND pos = ?", name, id, position)
	})
}

// RemoveOption offers a job no more, and gives the way back. The first of the others leads; where one is left, the quote
// has no options any more. What has been frozen stays.
func (s *Store) RemoveOption(ctx context.Context, id int64, position int) (back func(context.Context) error, err error) {
	var gone, other catalog.Option
	err = s.book(ctx, id, func(w *writer) {
		w.open(id)
		all, err := rows(w.ctx, w.tx, scanOption, optionsOf, id)
		w.fail(err)
		for _, o := range all {
			if o.Position == position {
				gone = o
			} else {
				other = o
			}
		}
		if gone.Position == 0 {
			w.fail(ErrNotFound)
		}
		w.do("DELETE FROM quote_option WHERE quote_id = ? AND pos = ?", id, position)
		firstLeads(w, id)
		left := len(all) - 1
		if left == 1 {
			w.do("DELETE FROM quote_option WHERE quote_id = ?", id)
			w.do("UPDATE quote SET draft = json_set(draft, '$.Option', 0) WHERE id = ?", id)
			left = 0
		}
		w.do("UPDATE quote SET options = ?, changed = ? WHERE id = ?", left, s.stamp(), id)
		indexQuotes(w, "id = ?", id)
	})
	return func(ctx context.Context) error { return s.putBack(ctx, id, gone, other) }, err
}

// putBack offers a job again that was removed, at the place it had. Another one that has become the quote's only job
// since is an option again too.
func (s *Store) putBack(ctx context.Context, id int64, gone, other catalog.Option) error {
	return s.book(ctx, id, func(w *writer) {
		w.open(id)
		n := int(w.count("SELECT options FROM quote WHERE id = ?", id))
		if n == 0 {
			ownOption(w, id, other.Position, other.Name)
			n = 1
		}
		if w.count("SELECT count(*) FROM quote_option WHERE quote_id = ? AND pos = ?", id, gone.Position) > 0 {
			w.fail(fmt.Errorf("%w: another is offered in its place", ErrOptions))
		}
		w.do("INSERT INTO quote_option (quote_id, pos, name, draft, pieces, total, margin) VALUES (?, ?, ?, ?, ?, ?, ?)",
			id, gone.Position, gone.Name, asJSON(gone.Draft), gone.Pieces, gone.Total, gone.Margin)
		firstLeads(w, id)
		w.do("UPDATE quote SET options = ?, changed = ? WHERE id = ?", n+1, s.stamp(), id)
		indexQuotes(w, "id = ?", id)
	})
}

// open wants a quote of which nothing has been accepted.
func (w *writer) open(id int64) {
	if w.count("SELECT count(*) FROM quote WHERE id = ? AND accepted_id IS NOT NULL", id) > 0 {
		w.fail(fmt.Errorf("%w: one of them has been accepted", ErrOptions))
	}
}

// lead puts one of the options in front: the quote shows what it comes to.
func lead(w *writer, id int64, position int) {
	w.do(`UPDATE quote SET (draft, pieces, total, margin, title, needed_by) =
		(SELECT draft, pieces, total, margin, draft ->> '$.Title', draft ->> '$.NeededBy' FROM quote_option WHERE quote_id = ?1 AND pos = ?2)
		WHERE id = ?1 AND EXISTS (SELECT 1 FROM quote_option WHERE quote_id = ?1 AND pos = ?2)`, id, position)
}

func firstLeads(w *writer, id int64) {
	lead(w, id, int(w.count("SELECT coalesce(min(pos), 0) FROM quote_option WHERE quote_id = ?", id)))
}

// OptionDraft reads one of a quote's options as it stands in the form.
func (s *Store) OptionDraft(ctx context.Context, id int64, position int) (catalog.Draft, error) {
	d, err := one(ctx, s.read, scanDraft, `SELECT q.id, q.state, o.draft FROM quote_option o JOIN quote q ON q.id = o.quote_id
		WHERE o.quote_id = ? AND o.pos = ?`, id, position)
	if err != nil {
		return d, fmt.Errorf("option %d of quote %d: %w", position, id, err)
	}
	return d, nil
}

const optionsOf = `SELECT o.pos, o.name, o.draft, o.pieces, o.total, o.margin, o.accepted, q.id, q.state FROM quote_option o
	JOIN quote q ON q.id = o.quote_id WHERE o.quote_id = ? ORDER BY o.pos`

func scanOption(r *sql.Rows) (o catalog.Option, err error) {
	var id int64
	var state, doc string
	if err = r.Scan(&o.Position, &o.Name, &doc, &o.Pieces, &o.Total, &o.Margin, &o.Accepted, &id, &state); err == nil {
		err = json.Unmarshal([]byte(doc), &o.Draft)
	}
	o.Draft.ID, o.Draft.State = id, state
	return o, err
}

// Options reads all options of a quote, none where there are none.
func (s *Store) Options(ctx context.Context, id int64) ([]catalog.Option, error) {
	all, err := rows(ctx, s.read, scanOption, optionsOf, id)
	if err != nil {
		return nil, fmt.Errorf("options of quote %d: %w", id, err)
	}
	return all, nil
}

// fail notes what went wrong, unless something has already.
func (w *writer) fail(err error) {
	if w.err == nil {
		w.err = err
	}
}
