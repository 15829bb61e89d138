package store

import (
	"database/sql"
	"strings"

	"pressworth/catalog"
)

// insertStyle adds a style with its colours; ID 0 takes the next id.
func insertStyle(w *writer, x catalog.Style, file sql.NullInt64) int64 {
	id := w.do(`INSERT INTO style (id, supplier_id, number, name, mill, category, fabric, weight, tags, heat_limit, caution, handling, clothing,
		usual, retired, printable, file_id) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
		sql.NullInt64{Int64: x.ID, Valid: x.ID != 0}, x.SupplierID, x.Number, x.Name, x.Mill, x.Category, x.Fabric, x.Weight.String(),
		asJSON(x.Tags), x.HeatLimit, x.Caution, handling(x), !x.NotClothing, x.Usual, x.Retired, asJSON(x.Printable), file)
	insertColors(w, id, x.Colors, file)
	indexWords(w, id)
	return id
}

func handling(x catalog.Style) any {
	if x.Handling == nil {
		return nil
	}
	return x.Handling.String()
}

func insertColors(w *writer, style int64, colors []catalog.Color, file sql.NullInt64) {
	for i, c := range colors {
		w.do("INSERT INTO color (style_id, pos, name, hex, shade, sizes, retired, file_id) VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
			style, i, c.Name, c.Hex, c.Shade, strings.Join(c.Sizes, " "), c.Retired, file)
	}
}

// insertPrice adds a price entry behind those the style has.
func insertPrice(w *writer, p catalog.Price) {
	w.do(`INSERT INTO price (style_id, seq, color, size, kind, breaks, valid_from, valid_to, file_id)
		VALUES (?, (SELECT coalesce(max(seq), 0) + 1 FROM price WHERE style_id = ?), ?, ?, ?, ?, ?, ?, ?)`,
		p.StyleID, p.StyleID, p.Color, p.Size, p.Kind, catalog.WriteBreaks(p.Each), p.From, p.Until, p.File.ID)
}

// insertFile notes where prices come from.
func insertFile(w *writer, f catalog.PriceFile) int64 {
	return w.do("INSERT INTO price_file (supplier_id, name, source, valid_from, taken_at, whole) VALUES (?, ?, ?, ?, ?, ?)",
		f.SupplierID, f.Name, f.Source, f.ValidFrom, f.TakenAt, f.Whole)
}

// The number is also found without its marks: LS240 for LS-240.
const wordsOf = `SELECT s.id, s.number || ' ' || replace(replace(replace(s.number, '-', ''), '/', ''), '.', ''), s.name, s.category, s.mill,
	coalesce((SELECT group_concat(c.name, ' ') FROM color c WHERE c.style_id = s.id AND c.retired = 0), '')
	FROM style s WHERE s.retired = 0`

// indexWords makes a style findable by its words, or not any more once it is retired.
func indexWords(w *writer, id int64) {
	for _, table := range []string{"style_words", "usual_words"} {
		w.do("DELETE FROM "+table+" WHERE rowid = ?", id)
	}
	learnWords(w, textsOf(w, id))
	w.do("INSERT INTO style_words (rowid, number, name, category, mill, colors) "+wordsOf+" AND s.id = ?", id)
	w.do("INSERT INTO usual_words (rowid, number, name, category, mill, colors) "+wordsOf+" AND s.usual = 1 AND s.id = ?", id)
}

// textsOf are the texts that a style is found by.
func textsOf(w *writer, id int64) []string {
	if w.err != nil {
		return nil
	}
	texts, err := rows(w.ctx, w.tx, func(r *sql.Rows) (t string, err error) {
		var number, name, category, mill, colors string
		err = r.Scan(&id, &number, &name, &category, &mill, &colors)
		return strings.Join([]string{number, name, category, mill, colors}, " "), err
	}, wordsOf+" AND s.id = ?", id)
	w.err = err
	return texts
}
