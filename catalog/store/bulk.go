package store

import (
	"database/sql"
	"strings"
)

// bulk inserts many rows, several in one statement: a call of the driver costs more than a row. Where a row cannot be
// inserted, those before it stay until the transaction is rolled back, which spares a journal for each statement.
type bulk struct {
	w     *writer
	table string // with its columns
	row   string // values of a row: parameters, and what is the same in every row
	width int    // parameters of a row
	args  []any
	full  *sql.Stmt // of a whole batch
}

// batch is how many rows one statement inserts.
const batch = 40

func newBulk(w *writer, table, row string) *bulk {
	width := strings.Count(row, "?")
	b := &bulk{w: w, table: table, row: row, width: width, args: make([]any, 0, batch*width)}
	if w.err == nil {
		b.full, w.err = w.tx.PrepareContext(w.ctx, b.statement(batch))
	}
	return b
}

func (b *bulk) statement(rows int) string {
	return "INSERT OR FAIL INTO " + b.table + " VALUES " + b.row + strings.Repeat(", "+b.row, rows-1)
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
