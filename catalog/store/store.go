// Package store keeps the shop in one SQLite file: one writer at a time, readers beside it, changes in whole
// transactions, older files brought up to date by numbered migrations.
//
// Not in this package: any pricing, the reading of price files (catalog/pricefile), anything of a window.
package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"sync/atomic"
	"time"

	_ "modernc.org/sqlite" // the driver
)

// Options are what a store may be told at opening.
type Options struct {
	ReadOnly bool             // look only: no lock, no migration; works beside an open window
	Now      func() time.Time // nil: time.Now
}

// Store is an open shop file. Its methods may be used from any goroutine.
type Store struct {
	path  string
	write *sql.DB // a single connection; nil where only read
	read  *sql.DB
	lock  *sql.DB // holds the lock as long as it is open
	now   func() time.Time

	version atomic.Int64 // counts changes of the catalog
}

// busy is how long a connection waits for another program's transaction, in milliseconds.
const busy = 2000

// Open opens the shop file at path, makes it if there is none, and brings an older one up to date. A file that is
// refused is left as it is.
func Open(ctx context.Context, path string, o Options) (*Store, error) {
	s, err := open(ctx, path, o)
	if err != nil {
		return nil, fmt.Errorf("shop file %s: %w", path, translate(err))
	}
	return s, nil
}

func open(ctx context.Context, path string, o Options) (*Store, error) {
	s := &Store{path: path, now: o.Now}
	if s.now == nil {
		s.now = time.Now
	}
	if err := examine(ctx, path); err != nil && (o.ReadOnly || !errors.Is(err, os.ErrNotExist)) {
		return nil, err
	}
	if !o.ReadOnly {
		if err := s.openWriter(ctx); err != nil {
			return nil, errors.Join(err, s.Close())
		}
	}
	s.read = connect(path, "query_only(1)")
	s.read.SetMaxOpenConns(4)
	if err := s.read.PingContext(ctx); err != nil {
		return nil, errors.Join(err, s.Close())
	}
	return s, nil
}

func (s *Store) openWriter(ctx context.Context) error {
	if err := create(s.path); err != nil {
		return err
	}
	if err := s.takeLock(ctx); err != nil {
		return err
	}
	s.write = connect(s.path, "journal_mode(WAL)", "synchronous(FULL)", "cache_size(-65536)", "temp_store(MEMORY)")
	s.write.SetMaxOpenConns(1)
	if err := s.soundAtOpening(ctx); err != nil {
		return err
	}
	return s.migrate(ctx)
}

// create makes an empty file that only its owner may read, with its folder, where there is none.
func create(path string) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_CREATE|os.O_RDWR, 0o600)
	if err != nil {
		return err
	}
	return f.Close()
}

// takeLock holds an exclusive lock on a file of its own beside the shop file. The system gives it back when the program
// ends, however it ends.
func (s *Store) takeLock(ctx context.Context) error {
	path := s.path + ".lock"
	if err := create(path); err != nil {
		return err
	}
	s.lock = connectWith(path, 0, "journal_mode(DELETE)", "locking_mode(EXCLUSIVE)")
	s.lock.SetMaxOpenConns(1)
	if _, err := s.lock.ExecContext(ctx, "BEGIN EXCLUSIVE"); err != nil {
		return err
	}
	return nil
}

// Close lets go of the file.
func (s *Store) Close() error {
	var errs []error
	for _, db := range []*sql.DB{s.read, s.write, s.lock} {
		if db != nil {
			errs = append(errs, db.Close())
		}
	}
	return errors.Join(errs...)
}

// Path is where the shop file lies.
func (s *Store) Path() string { return s.path }

// connect prepares connections to a database file; the settings hold on each of them.
func connect(path string, pragmas ...string) *sql.DB { return connectWith(path, busy, pragmas...) }

func connectWith(path string, wait int, pragmas ...string) *sql.DB {
	return dial(path, url.Values{"_pragma": pragmas}, wait)
}

func dial(path string, q url.Values, wait int) *sql.DB {
	q["_txlock"] = []string{"immediate"}
	q["_pragma"] = append([]string{fmt.Sprintf("busy_timeout(%d)", wait), "foreign_keys(1)"}, q["_pragma"]...)
	db, _ := sql.Open("sqlite", fileURI(path)+"?"+q.Encode()) // fails only for an unknown driver
	return db
}

// fileURI names a file to the driver. The path is escaped: a bare # or ? in it would open another file.
func fileURI(path string) string {
	return "file:" + (&url.URL{Path: filepath.ToSlash(path)}).EscapedPath()
}

// today is the day by the store's clock.
func (s *Store) today() string { return s.now().Format(time.DateOnly) }

// stamp is the moment by the store's clock.
func (s *Store) stamp() string { return s.now().UTC().Format(time.RFC3339) }

// change runs work in one transaction of the writer: all of it or none.
func (s *Store) change(ctx context.Context, work func(*sql.Tx) error) error {
	if s.write == nil {
		return ErrReadOnly
	}
	return inOne(ctx, s.write, work)
}

// inOne runs work in one transaction of a database or of one connection to it.
func inOne(ctx context.Context, on interface {
	BeginTx(context.Context, *sql.TxOptions) (*sql.Tx, error)
}, work func(*sql.Tx) error,
) error {
	tx, err := on.BeginTx(ctx, nil)
	if err != nil {
		return translate(err)
	}
	defer func() { _ = tx.Rollback() }() // nothing happens after a commit
	if err := work(tx); err != nil {
		return translate(err)
	}
	return translate(tx.Commit())
}
