package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"hash/fnv"
	"maps"
	"slices"
	"strings"
)

// Checked is what a full check of a shop file found.
type Checked struct {
	Schema   int            // number of the file's schema
	Counts   map[string]int // rows by table
	Problems []string       // nil: the file is sound
	Altered  []string       // frozen revisions that do not match their SHA-256; the file is sound nevertheless

	sums map[string]uint64 // of all rows of a table, in any order
}

// mostProblems is how many problems a check lists: a badly damaged file has thousands.
const mostProblems = 100

// Check looks through a whole shop file without changing it: every page, every index, every reference. The error is for
// a file that cannot be looked at, or is no shop file; damage is told in the result.
func Check(ctx context.Context, path string) (Checked, error) {
	if err := examine(ctx, path); err != nil {
		return Checked{}, fmt.Errorf("check %s: %w", path, err)
	}
	db := connect(path, "query_only(1)")
	defer db.Close()
	conn, err := db.Conn(ctx)
	if err != nil {
		return Checked{}, fmt.Errorf("check %s: %w", path, translate(err))
	}
	defer conn.Close()
	c := Checked{Counts: map[string]int{}, sums: map[string]uint64{}}
	if err := c.look(ctx, conn); err != nil {
		if err := translate(err); errors.Is(err, ErrDisk) || errors.Is(err, ErrFull) {
			return Checked{}, fmt.Errorf("check %s: %w", path, err) // says nothing about the file
		}
		c.Problems = append(c.Problems, err.Error())
	}
	return c, ctx.Err()
}

func (c *Checked) look(ctx context.Context, conn *sql.Conn) error {
	if err := conn.QueryRowContext(ctx, "PRAGMA user_version").Scan(&c.Schema); err != nil {
		return err
	}
	for _, question := range []string{
		fmt.Sprintf("SELECT integrity_check FROM pragma_integrity_check WHERE integrity_check <> 'ok' LIMIT %d", mostProblems),
		fmt.Sprintf(`SELECT "table" || ' row ' || coalesce(rowid, '?') || ' names a row of ' || parent || ' that is not there'
			FROM pragma_foreign_key_check LIMIT %d`, mostProblems),
	} {
		found, err := lines(ctx, conn, question)
		c.Problems = append(c.Problems, found...)
		if err != nil {
			return err
		}
	}
	if err := c.count(ctx, conn); err != nil {
		return err
	}
	return c.seals(ctx, conn)
}

// count counts and sums the rows of all tables but those that a search index makes for itself.
func (c *Checked) count(ctx context.Context, conn *sql.Conn) error {
	tables, err := lines(ctx, conn, "SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\'")
	if err != nil {
		return err
	}
	for _, t := range tables {
		if c.Counts[t], c.sums[t], err = sumOf(ctx, conn, t); err != nil {
			return fmt.Errorf("table %s: %w", t, err)
		}
	}
	return nil
}

func lines(ctx context.Context, conn *sql.Conn, question string) (all []string, err error) {
	r, err := conn.QueryContext(ctx, question)
	if err != nil {
		return nil, err
	}
	defer r.Close()
	for r.Next() {
		var s string
		if err := r.Scan(&s); err != nil {
			return all, err
		}
		all = append(all, s)
	}
	return all, r.Err()
}

// sumOf adds up a hash of each row, so that the order of rows says nothing.
func sumOf(ctx context.Context, conn *sql.Conn, table string) (rows int, sum uint64, err error) {
	r, err := conn.QueryContext(ctx, `SELECT * FROM "`+strings.ReplaceAll(table, `"`, `""`)+`"`)
	if err != nil {
		return 0, 0, err
	}
	defer r.Close()
	names, err := r.Columns()
	if err != nil {
		return 0, 0, err
	}
	values, into := make([]any, len(names)), make([]any, len(names))
	for i := range values {
		into[i] = &values[i]
	}
	for r.Next() {
		if err := r.Scan(into...); err != nil {
			return rows, sum, err
		}
		h := fnv.New64a()
		for _, v := range values {
			if b, ok := v.([]byte); ok { // what is frozen, the most by far
				fmt.Fprintf(h, "%d bytes ", len(b))
				_, _ = h.Write(b) // a hash takes everything
				continue
			}
			fmt.Fprintf(h, "%T %v\x00", v, v)
		}
		rows, sum = rows+1, sum+h.Sum64()
	}
	return rows, sum, r.Err()
}

// differs says in which table another file has other rows.
func (c Checked) differs(other Checked) string {
	if !maps.Equal(c.Counts, other.Counts) || !maps.Equal(c.sums, other.sums) {
		for _, t := range slices.Sorted(maps.Keys(c.Counts)) {
			if c.sums[t] != other.sums[t] || c.Counts[t] != other.Counts[t] {
				return t
			}
		}
		return "its list of tables"
	}
	return ""
}
