package store

import (
	"context"
	"database/sql"
	"embed"
	"encoding/binary"
	"fmt"
	"io"
	"io/fs"
	"net/url"
	"os"
)

//go:embed schema/*.sql
var schema embed.FS

// applicationID stands in the header of every shop file: "PWSF" as a number.
const applicationID = 0x50575346

// migrations are the names of the numbered steps, in order: the first makes version 1.
func migrations() []string {
	names, _ := fs.Glob(schema, "schema/*.sql") // sorted; the pattern is sound
	return names
}

// Version is the schema number that this program writes.
func Version() int { return len(migrations()) }

// migrate applies the steps a file lacks, each in one transaction with its number.
func (s *Store) migrate(ctx context.Context) error {
	var have int
	if err := s.write.QueryRowContext(ctx, "PRAGMA user_version").Scan(&have); err != nil {
		return err
	}
	if have > Version() {
		return ErrNewer
	}
	for i, name := range migrations() {
		if i < have {
			continue
		}
		step, err := schema.ReadFile(name)
		if err != nil {
			return err
		}
		err = s.change(ctx, func(tx *sql.Tx) error {
			_, err := tx.ExecContext(ctx, fmt.Sprintf("%s;\nPRAGMA application_id = %d;\nPRAGMA user_version = %d;", step, applicationID, i+1))
			return err
		})
		if err != nil {
			return fmt.Errorf("%s: %w", name, err)
		}
	}
	return nil
}

// examine tells whether a file is a shop file that this program can read, without changing anything about it. An empty
// file, or one in which making a shop stopped before anything was in it, counts as not there.
func examine(ctx context.Context, path string) error {
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() {
		return ErrNotShop
	}
	if info.Size() == 0 {
		return os.ErrNotExist
	}
	m, err := header(path)
	if err == nil && unfinished(path) { // the newest header may still lie in the log
		m = ask(ctx, path, m)
	}
	switch {
	case err != nil:
		return err
	case m.app == 0 && m.version == 0 && m.blank:
		return os.ErrNotExist
	case m.app != applicationID:
		return ErrNotShop
	case m.version > Version():
		return ErrNewer
	}
	return nil
}

// marks are what the header of an SQLite file says about what is in it.
type marks struct {
	version, app int
	blank        bool // no table
}

// header reads the marks by the published format of such files.
func header(path string) (m marks, err error) {
	f, err := os.Open(path)
	if err != nil {
		return m, err
	}
	defer f.Close()
	var h [108]byte
	if _, err := io.ReadFull(f, h[:]); err != nil || string(h[:16]) != "SQLite format 3\x00" {
		return m, ErrNotShop
	}
	m.version, m.app = int(binary.BigEndian.Uint32(h[60:])), int(binary.BigEndian.Uint32(h[68:]))
	m.blank = h[100] == 13 && binary.BigEndian.Uint16(h[103:]) == 0 // a leaf of the schema without cells
	return m, nil
}

func unfinished(path string) bool {
	info, err := os.Stat(path + "-wal")
	return err == nil && info.Size() > 0
}

// ask reads the marks through SQLite, which takes the log into account. It opens the file for reading only: the log of a
// file that is refused must stay as it is. Where that cannot be done the header has to do.
func ask(ctx context.Context, path string, fallback marks) marks {
	db := dial(path, url.Values{"mode": {"ro"}}, busy)
	defer db.Close()
	var m marks
	err := db.QueryRowContext(ctx, `SELECT user_version, application_id, NOT EXISTS (SELECT 1 FROM sqlite_schema)
		FROM pragma_user_version, pragma_application_id`).Scan(&m.version, &m.app, &m.blank)
	if err != nil {
		return fallback
	}
	return m
}
