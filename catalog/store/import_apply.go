package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"pressworth/catalog"
)

// ErrChanged means that the catalog is not what a plan was made for.
var ErrChanged = errors.New("the catalog has changed since the file was compared with it: compare it again")

// Apply does what a plan says, in one transaction: all of it, or nothing where it fails or ctx ends. A plan is used
// once.
func (s *Store) Apply(ctx context.Context, p *ImportPlan, progress Progress) (catalog.PriceFile, error) {
	var file catalog.PriceFile
	if progress == nil {
		progress = func(int, int) {}
	}
	err := s.changeUnchecked(ctx, func(tx *sql.Tx) error {
		if p.version != s.version.Load() {
			return ErrChanged
		}
		a := applying{writer: writer{ctx: ctx, tx: tx}, plan: p, progress: progress, total: 2*len(p.fresh) + len(p.changed) + len(p.gone)}
		a.file = catalog.PriceFile{
			SupplierID: p.Options.SupplierID, Name: p.Options.FileName, Source: "file", ValidFrom: p.Options.ValidFrom,
			TakenAt: s.stamp(), Whole: p.Options.Whole,
		}
		a.file.ID = insertFile(&a.writer, a.file)
		a.fresh()
		a.changed()
		a.gone()
		file = a.file
		return a.err
	})
	if err != nil {
		return file, fmt.Errorf("import %s: %w", p.Options.FileName, err)
	}
	s.version.Add(1)
	return file, nil
}

// applying is a plan being carried out.
type applying struct {
	writer
	plan     *ImportPlan
	file     catalog.PriceFile
	progress Progress
	done     int
	total    int
}

// often is how many styles lie between two words of progress.
const often = 2000

func (a *applying) step() {
	if a.done++; a.done%often == 0 {
		a.progress(a.done, a.total)
		if a.err == nil {
			a.err = a.ctx.Err()
		}
	}
}

// fresh adds the styles that the catalog has not.
func (a *applying) fresh() {
	first := a.firstID()
	in := a.inserts()
	for i := 0; i < len(a.plan.fresh) && a.err == nil; i += batch {
		chunk := a.plan.fresh[i:min(i+batch, len(a.plan.fresh))]
		for k, at := range chunk { // a whole batch: the styles are in before what refers to them
			a.insertStyle(in.styles, first+int64(i+k), at)
		}
		if len(chunk) < batch {
			in.styles.flush()
		}
		for k, at := range chunk {
			a.insertRest(in, first+int64(i+k), at)
			a.step()
		}
	}
	for _, b := range []*bulk{in.styles, in.colors, in.prices, in.plainColors, in.plainPrices} {
		b.flush()
	}
	a.index(first)
}

// inserts are the statements of an import. Most colours are only a name, and most prices those of the list for every colour:
// these have statements of their own with fewer parameters, each of which costs time.
type inserts struct{ styles, colors, prices, plainColors, plainPrices *bulk }

// inserts are prepared with what is the same in all rows of this import.
func (a *applying) inserts() inserts {
	f := a.file
	return inserts{
		styles: newBulk(&a.writer, "style (id, supplier_id, number, name, mill, category, fabric, weight, tags, heat_limit, caution, handling, clothing, usual, retired, said, file_id)",
			fmt.Sprintf("(?, %d, ?, ?, ?, ?, ?, ?, ?, ?, '', NULL, 1, 0, 0, ?, %d)", f.SupplierID, f.ID)),
		colors: newBulk(&a.writer, "color (style_id, pos, name, hex, shade, sizes, file_id)", fmt.Sprintf("(?, ?, ?, ?, ?, ?, %d)", f.ID)),
		prices: newBulk(&a.writer, "price (style_id, seq, color, size, kind, breaks, valid_to, valid_from, file_id)",
			fmt.Sprintf("(?, ?, ?, ?, ?, ?, ?, '%s', %d)", f.ValidFrom, f.ID)),
		plainColors: newBulk(&a.writer, "color (style_id, pos, name, hex, shade, sizes, file_id)", fmt.Sprintf("(?, ?, ?, '', '', '', %d)", f.ID)),
		plainPrices: newBulk(&a.writer, "price (style_id, seq, color, size, kind, breaks, valid_to, valid_from, file_id)",
			fmt.Sprintf("(?, ?, '', ?, 'list', ?, '', '%s', %d)", f.ValidFrom, f.ID)),
	}
}

func (a *applying) firstID() (id int64) {
	if a.err == nil {
		a.err = a.tx.QueryRowContext(a.ctx, "SELECT coalesce(max(id), 0) + 1 FROM style").Scan(&id)
	}
	return id
}

func (a *applying) insertStyle(to *bulk, id int64, at int32) {
	file := a.plan.file
	x := file.attrsOf(at)
	weight := x.Weight
	if weight == "" {
		weight = "0"
	}
	to.add(id, file.styles[at].number, x.Name, x.Mill, x.Category, x.Fabric, weight, catalog.TagsOf(x.Fabric, x.Category),
		x.HeatLimit, file.said(at))
}

// insertRest adds the colours and prices of a style.
func (a *applying) insertRest(in inserts, id int64, at int32) {
	w := a.plan.file.wanted(at)
	for pos, c := range w.colors() {
		switch {
		case c.name == "":
		case c.hex+c.shade+c.sizes == "":
			in.plainColors.add(id, pos, c.name)
		default:
			in.colors.add(id, pos, c.name, c.hex, c.shade, c.sizes)
		}
	}
	seq := 0
	add := func(at listAt, kind, breaks, until string) {
		seq++
		in.prices.add(id, seq, at.color, at.size, kind, breaks, until)
	}
	for _, g := range w.general() {
		seq++
		in.plainPrices.add(id, seq, g.size, g.price)
		for _, c := range g.cells {
			if c.price != g.price {
				add(c.at, catalog.ListPrice, c.price, "")
			}
			if c.sale != "" {
				add(c.at, catalog.SalePrice, c.sale, c.until)
			}
		}
	}
}

// indexed is how many styles are made findable in one statement; between two of them the work can be stopped.
const indexed = 65_536

// index makes the added styles findable.
func (a *applying) index(first int64) {
	n := int64(len(a.plan.fresh))
	learnWords(&a.writer, a.plan.file.spoken(a.plan.fresh))
	for from := int64(0); from < n && a.err == nil; from += indexed {
		a.do("INSERT INTO style_words (rowid, number, name, category, mill, colors) "+wordsOf+" AND s.id >= ? AND s.id < ? ORDER BY s.id",
			first+from, first+min(from+indexed, n))
		a.done += int(min(indexed, n-from))
		a.progress(a.done, a.total)
	}
}

// changed carries out what is new about known styles.
func (a *applying) changed() {
	for i := range a.plan.changed {
		if a.err != nil {
			return
		}
		a.changeStyle(&a.plan.changed[i])
		a.step()
	}
	for id, said := range a.plan.same {
		a.do("UPDATE style SET said = ? WHERE id = ?", said, id)
	}
}

func (a *applying) changeStyle(c *styleChange) {
	a.do("INSERT INTO import_note (file_id, style_id, edits, before) VALUES (?, ?, ?, ?)", a.file.ID, c.id, c.edits, c.note)
	a.do("UPDATE style SET said = ?, retired = 0 WHERE id = ?", c.said, c.id)
	if x := c.attrs; x != nil {
		a.setAttrs(c.id, *x)
	}
	for _, o := range c.resize {
		a.do("UPDATE color SET sizes = ?, retired = ? WHERE style_id = ? AND pos = ?", o.sizes, o.retired, c.id, o.pos)
	}
	for i, n := range c.add {
		a.do("INSERT INTO color (style_id, pos, name, hex, shade, sizes, file_id) VALUES (?, ?, ?, ?, ?, ?, ?)",
			c.id, c.posFrom+i, n.name, n.hex, n.shade, n.sizes, a.file.ID)
	}
	for i, e := range c.entries {
		a.do(`INSERT INTO price (style_id, seq, color, size, kind, breaks, valid_from, valid_to, file_id)
			VALUES (?, (SELECT coalesce(max(seq), 0) + 1 FROM price WHERE style_id = ?), ?, ?, ?, ?, ?, ?, ?)`,
			c.id, c.id, e.Color, e.Size, e.Kind, c.breaks[i], e.From, e.Until, a.file.ID)
	}
	if c.words {
		indexWords(&a.writer, c.id)
	}
}

func (w *writer) setAttrs(id int64, x oldAttrs) {
	w.do("UPDATE style SET name = ?, mill = ?, category = ?, fabric = ?, weight = ?, heat_limit = ? WHERE id = ?",
		x.Name, x.Mill, x.Category, x.Fabric, x.Weight, x.HeatLimit, id)
}

// gone retires the styles that are not listed any more.
func (a *applying) gone() {
	for _, id := range a.plan.gone {
		if a.err != nil {
			return
		}
		a.do(`INSERT INTO import_note (file_id, style_id, edits, before)
			SELECT ?, id, edits, json_object('retired', json('false'), 'said', said) FROM style WHERE id = ?`, a.file.ID, id)
		a.do("UPDATE style SET retired = 1, said = 0 WHERE id = ?", id)
		indexWords(&a.writer, id)
		a.step()
	}
}
