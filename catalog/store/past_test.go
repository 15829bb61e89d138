package store_test

import (
	"bytes"
	"compress/gzip"
	"database/sql"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
)

var update = flag.Bool("update", false, "write the file of a schema version that has none yet")

// pastFile holds the demo shop as a program of that schema version left it.
func pastFile(version int) string {
	return filepath.Join("..", "..", "testdata", "schema", fmt.Sprintf("%03d.db.gz", version))
}

func unpackPast(t *testing.T, version int, path string) {
	t.Helper()
	packed, err := os.Open(pastFile(version))
	if err != nil {
		t.Fatalf("%v: a schema version without its file; go test ./catalog/store -run TestMigrate -update writes it", err)
	}
	defer packed.Close()
	in, err := gzip.NewReader(packed)
	if err != nil {
		t.Fatal(err)
	}
	content, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}

func oldestFile(t *testing.T, path string) {
	t.Helper()
	unpackPast(t, 1, path)
}

// Every past version's file opens, is brought up to date, holds in every column what it held, and prices its quotes as
// a new demo shop does.
func TestMigrate_everyPastVersionKeepsWhatItHeld(t *testing.T) {
	if *update {
		for version := 1; version <= store.Version(); version++ {
			writePast(t, version)
		}
	}
	fresh := demoStore(t)
	for version := 1; version < store.Version(); version++ {
		t.Run(fmt.Sprintf("version %d", version), func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "shop.db")
			unpackPast(t, version, path)
			before := contents(t, path, nil)
			if got := wholeNumber(t, path, "PRAGMA user_version"); got != version {
				t.Fatalf("%s says it is of version %d", pastFile(version), got)
			}
			s := open(t, path)
			checkMoved(t, s, fresh)
			if err := s.Close(); err != nil {
				t.Fatal(err)
			}
			checked, err := store.Check(ctx, path)
			if err != nil || checked.Problems != nil || checked.Schema != store.Version() {
				t.Errorf("after moving: schema %d, want %d; %v, %v", checked.Schema, store.Version(), checked.Problems, err)
			}
			after := contents(t, path, columnsOf(before))
			for table, rows := range before {
				if got := after[table].rows; !slices.Equal(rows.rows, got) {
					t.Errorf("%s (%s) is not what it was: %d rows, then %d", table, rows.columns, len(rows.rows), len(got))
				}
			}
		})
	}
}

// checkMoved holds a moved demo shop against a new one: what is read, found and priced.
func checkMoved(t *testing.T, moved, fresh *store.Store) {
	t.Helper()
	for _, words := range []string{"hoodie", "nav", "tee"} {
		if got, want := namesFound(t, moved, words), namesFound(t, fresh, words); !slices.Equal(got, want) || len(want) == 0 {
			t.Errorf("%q finds %v, in a new shop %v", words, got, want)
		}
	}
	got, want := totals(t, moved), totals(t, fresh)
	if !slices.Equal(got, want) || len(want) != demoQuotes {
		t.Errorf("the quotes come to %v, in a new shop to %v", got, want)
	}
}

func namesFound(t *testing.T, s *store.Store, words string) (names []string) {
	t.Helper()
	found, err := s.FindBlanks(ctx, words, 100)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range found {
		names = append(names, f.Number)
	}
	return names
}

func totals(t *testing.T, s *store.Store) (all []string) {
	t.Helper()
	rows, err := s.Quotes(ctx, store.QuoteFilter{})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		draft, err := s.Draft(ctx, r.ID)
		if err != nil {
			t.Fatal(err)
		}
		book, err := s.Book(ctx, draft, draft.QuotedOn)
		if err != nil {
			t.Fatal(err)
		}
		job, problems := catalog.Freeze(draft, book, draft.QuotedOn)
		if problems != nil {
			t.Fatalf("quote %s: %v", r.Number, problems)
		}
		result, err := quote.Price(job)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, r.Number+" "+result.Price.Total.String())
	}
	slices.Sort(all)
	return all
}

// table is what a table holds, in the columns that are asked for.
type table struct {
	columns string
	rows    []string // sorted
}

func columnsOf(all map[string]table) map[string]string {
	columns := map[string]string{}
	for name, t := range all {
		columns[name] = t.columns
	}
	return columns
}

// contents reads every row of every table that is no search index's own; columns says which, nil: all.
func contents(t *testing.T, path string, columns map[string]string) map[string]table {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if columns == nil {
		columns = map[string]string{}
		for _, name := range texts(t, db, plainTables) {
			columns[name] = strings.Join(texts(t, db, fmt.Sprintf("SELECT name FROM pragma_table_info('%s') ORDER BY name", name)), ", ")
		}
	}
	all := map[string]table{}
	for name, c := range columns {
		rows := texts(t, db, fmt.Sprintf("SELECT json_array(%s) FROM %s", c, name))
		slices.Sort(rows)
		all[name] = table{c, rows}
	}
	return all
}

const plainTables = `SELECT name FROM pragma_table_list WHERE schema = 'main' AND type = 'table'
	AND name NOT LIKE 'sqlite\_%' ESCAPE '\' AND name NOT LIKE '%\_words\_%' ESCAPE '\' ORDER BY name`

func texts(t *testing.T, db *sql.DB, question string) (all []string) {
	t.Helper()
	r, err := db.QueryContext(ctx, question)
	if err != nil {
		t.Fatalf("%s: %v", question, err)
	}
	defer r.Close()
	for r.Next() {
		var s string
		if err := r.Scan(&s); err != nil {
			t.Fatal(err)
		}
		all = append(all, s)
	}
	if err := r.Err(); err != nil {
		t.Fatal(err)
	}
	return all
}

func wholeNumber(t *testing.T, path, question string) (n int) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := db.QueryRowContext(ctx, question).Scan(&n); err != nil {
		t.Fatal(err)
	}
	return n
}

// writePast makes a version's file where there is none yet: its own schema, filled from a new demo shop as far as that
// version had the columns. A file that is there stays as it is, whatever later versions look like.
func writePast(t *testing.T, version int) {
	t.Helper()
	if _, err := os.Stat(pastFile(version)); err == nil {
		return
	}
	full, path := filepath.Join(t.TempDir(), "full.db"), filepath.Join(t.TempDir(), "past.db")
	demoFile(t, full)
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	db.SetMaxOpenConns(1)
	fill(t, db, version, full)
	if err := db.Close(); err != nil {
		t.Fatal(err)
	}
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var packed bytes.Buffer
	out, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := out.Write(content); err != nil {
		t.Fatal(err)
	}
	err = errors.Join(out.Close(), os.MkdirAll(filepath.Dir(pastFile(version)), 0o755), os.WriteFile(pastFile(version), packed.Bytes(), 0o644))
	if err != nil {
		t.Fatal(err)
	}
}

// fill makes the schema of a version and takes over what a full shop file holds of it. The search indexes are filled
// from the tables, as they hold no text of their own.
func fill(t *testing.T, db *sql.DB, version int, full string) {
	t.Helper()
	run := func(statement string) {
		if _, err := db.ExecContext(ctx, statement); err != nil {
			t.Fatalf("version %d: %v\n%s", version, err, statement)
		}
	}
	steps, err := filepath.Glob(filepath.Join("schema", "*.sql"))
	if err != nil {
		t.Fatal(err)
	}
	for _, step := range steps[:version] {
		content, err := os.ReadFile(step)
		if err != nil {
			t.Fatal(err)
		}
		run(string(content))
	}
	run(fmt.Sprintf("PRAGMA foreign_keys = 0; ATTACH '%s' AS full", full))
	for _, name := range texts(t, db, plainTables) {
		columns := strings.Join(texts(t, db, fmt.Sprintf(`SELECT p.name FROM pragma_table_info('%[1]s', 'main') p
			WHERE p.name IN (SELECT name FROM pragma_table_info('%[1]s', 'full')) ORDER BY cid`, name)), ", ")
		run(fmt.Sprintf("INSERT OR REPLACE INTO main.%[1]s (%[2]s) SELECT %[2]s FROM full.%[1]s", name, columns))
	}
	for _, index := range []string{
		`INSERT INTO %s (rowid, number, name, category, mill, colors) SELECT id, number, name, category, mill,
			(SELECT group_concat(c.name, ' ') FROM main.color c WHERE c.style_id = s.id) FROM main.style s`,
	} {
		run(fmt.Sprintf(index, "style_words"))
		run(fmt.Sprintf(index+" WHERE usual = 1", "usual_words"))
	}
	run("INSERT INTO customer_words (rowid, name, contact, email, phone) SELECT id, name, contact, email, phone FROM main.customer")
	if version < 6 {
		run("INSERT INTO quote_words (rowid, number, customer, title) SELECT id, number, customer, title FROM main.quote")
	} else {
		run("INSERT INTO quote_words (rowid, words) SELECT id, words FROM main.quote_text")
	}
	run(fmt.Sprintf("DETACH full; PRAGMA application_id = %d; PRAGMA user_version = %d; VACUUM", 0x50575346, version))
}
