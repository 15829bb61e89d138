package store

import (
	"database/sql"
	"strings"
)

// bulk inserts many rows, several in one statement: a call of the driver costs more than a row.
type bulk struct {
	w     *writer
	table string // with its columns
	width int    // columns
	args  []any
	full  *sql.Stmt // of a whole batch
}

// batch is how many rows one statement inserts.
const batch = 40

func newBulk(w *writer, table string, width int) *bulk {
	b := &bulk{w: w, table: table, width: width, args: make([]any, 0, batch*width)}
	if w.err == nil {
		b.full, w.err = w.tx.PrepareContext(w.ctx, b.statement(batch))
	}
	return b
}

func (b *bulk) statement(rows int) string {
	row := "(?" + strings.Repeat(",?", b.width-1) + ")"
	return "INSERT INTO " + b.table + " VALUES " + row + strings.Repeat(","+row, rows-1)
}

// add takes a row; it is in the table after flush at the latest.
func (b *bulk) add(row ...any) {
	b.args = append(b.args, row...)
	if len(b.args) < batch*b.width || b.w.err != nil {
		return
	}
	_, b.w.err = b.full.ExecContext(b.w.ctx, b.args...)
	b.args = b.args[:0]
}

// flush inserts what is left and ends the work.
func (b *bulk) flush() {
	if b.w.err == nil && len(b.args) > 0 {
		b.w.do(b.statement(len(b.args)/b.width), b.args...)
	}
	b.args = nil
	if b.full != nil {
		if err := b.full.Close(); b.w.err == nil {
			b.w.err = err
		}
	}
}
