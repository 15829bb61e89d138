package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"

	"pressworth/catalog"
)

// ErrNothingToUndo means that the last import was undone already, or that there was none.
var ErrNothingToUndo = errors.New("there is no import to undo")

// LastImport reads the last price file taken, ErrNothingToUndo where there is none that can be undone.
func (s *Store) LastImport(ctx context.Context) (catalog.PriceFile, error) {
	return lastImport(ctx, s.read)
}

func lastImport(ctx context.Context, db querier) (catalog.PriceFile, error) {
	f, err := one(ctx, db, func(r *sql.Rows) (f catalog.PriceFile, err error) {
		return f, r.Scan(&f.ID, &f.SupplierID, &f.Name, &f.Source, &f.ValidFrom, &f.TakenAt, &f.Whole, &f.Undone)
	}, "SELECT id, supplier_id, name, source, valid_from, taken_at, whole, undone FROM price_file WHERE source = 'file' ORDER BY id DESC LIMIT 1")
	if errors.Is(err, ErrNotFound) || err == nil && f.Undone {
		return f, ErrNothingToUndo
	}
	return f, err
}

// UndoImport takes the last import back, in one transaction. Where styles were edited since, or quotes use styles that
// it brought, it is refused with a *catalog.EditedError.
func (s *Store) UndoImport(ctx context.Context) (catalog.PriceFile, error) {
	var file catalog.PriceFile
	err := s.change(ctx, func(tx *sql.Tx) (err error) {
		if file, err = lastImport(ctx, tx); err != nil {
			return err
		}
		if err := editedSince(ctx, tx, file.ID); err != nil {
			return err
		}
		return undo(ctx, tx, file.ID)
	})
	if err != nil {
		return file, fmt.Errorf("undo import: %w", err)
	}
	s.version.Add(1)
	return file, nil
}

func editedSince(ctx context.Context, tx *sql.Tx, file int64) error {
	word := func(r *sql.Rows) (w string, err error) { return w, r.Scan(&w) }
	styles, err := rows(ctx, tx, word, `SELECT number FROM style WHERE file_id = ? AND edits > 0
		UNION ALL SELECT s.number FROM import_note n JOIN style s ON s.id = n.style_id WHERE n.file_id = ? AND s.edits <> n.edits`, file, file)
	if err != nil {
		return err
	}
	if len(styles) > 0 {
		return &catalog.EditedError{Styles: styles}
	}
	quotes, err := rows(ctx, tx, word, `SELECT DISTINCT q.number FROM quote q, json_each(q.draft, '$.Garments') g
		JOIN style s ON s.id = json_extract(g.value, '$.StyleID') WHERE s.file_id = ? ORDER BY q.number`, file)
	if err != nil {
		return err
	}
	if len(quotes) > 0 {
		return &catalog.EditedError{Quotes: quotes}
	}
	return nil
}

func undo(ctx context.Context, tx *sql.Tx, file int64) error {
	w := writer{ctx: ctx, tx: tx}
	type noted struct {
		id   int64
		note styleNote
	}
	notes, err := rows(ctx, tx, func(r *sql.Rows) (n noted, err error) {
		var doc string
		if err = r.Scan(&n.id, &doc); err == nil {
			err = json.Unmarshal([]byte(doc), &n.note)
		}
		return n, err
	}, "SELECT style_id, before FROM import_note WHERE file_id = ?", file)
	if err != nil {
		return err
	}
	w.do("DELETE FROM price WHERE file_id = ?", file)
	for _, n := range notes {
		w.giveBack(file, n.id, n.note)
	}
	w.do("DELETE FROM style_words WHERE rowid IN (SELECT id FROM style WHERE file_id = ?)", file)
	w.do("DELETE FROM usual_words WHERE rowid IN (SELECT id FROM style WHERE file_id = ?)", file)
	w.do("DELETE FROM style WHERE file_id = ?", file)
	w.do("DELETE FROM import_note WHERE file_id = ?", file)
	w.do("UPDATE price_file SET undone = 1 WHERE id = ?", file)
	return w.err
}

func (w *writer) giveBack(file, id int64, n styleNote) {
	w.do("UPDATE style SET retired = ?, said = ? WHERE id = ?", n.Retired, n.Said, id)
	if n.Attrs != (oldAttrs{}) {
		w.setAttrs(id, n.Attrs)
	}
	w.do("DELETE FROM color WHERE style_id = ? AND file_id = ?", id, file)
	for _, c := range n.Colors {
		w.do("UPDATE color SET sizes = ?, retired = ? WHERE style_id = ? AND pos = ?", c.Sizes, c.Retired, id, c.Pos)
	}
	indexWords(w, id)
}
