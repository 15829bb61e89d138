package store

import (
	"database/sql"
	"errors"
	"fmt"
	"syscall"

	sqlite "modernc.org/sqlite"
	sqlite3 "modernc.org/sqlite/lib"
)

// Errors that a person can do something about; tested with errors.Is. Each says what happened, what was kept and what
// to do.
var (
	// ErrNewer is a shop file of a later version of the program.
	ErrNewer = errors.New("the shop file was written by a newer version of the program and was left as it is: update the program")
	// ErrNotShop is a file of another kind.
	ErrNotShop = errors.New("this is not a shop file")
	// ErrLocked is a shop file that another window or command is working on.
	ErrLocked = errors.New("the shop file is in use by another window, and nothing was changed here: close that one first")
	// ErrNotFound is a record that is not there (any more).
	ErrNotFound = errors.New("not found")
	// ErrDamaged is a file that a check found damaged.
	ErrDamaged = errors.New("the file is damaged")
	// ErrReadOnly is a change to a shop file that was opened for looking.
	ErrReadOnly = errors.New("the shop file was opened for looking only, and nothing was saved: close the other window and open this one again")
	// ErrFull is a disk without room.
	ErrFull = errors.New("the disk is full: this was not saved, all that was saved before is safe: make room on the disk and try again")
	// ErrDisk is a disk that does not do what it is told. A write that it did not confirm may turn up after all, whole.
	ErrDisk = errors.New("the disk reports an error: count this as not saved, all that was saved before is kept: " +
		"try again, and if it comes back make a backup to another disk")
)

// translate turns the errors of driver and system into those of this package, by their codes.
func translate(err error) error {
	var e *sqlite.Error
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return ErrNotFound
	case errors.Is(err, syscall.ENOSPC):
		return fmt.Errorf("%w (%w)", ErrFull, err)
	case errors.Is(err, syscall.EIO):
		return fmt.Errorf("%w (%w)", ErrDisk, err)
	case !errors.As(err, &e) || translated(err):
		return err
	}
	switch e.Code() & 0xff {
	case sqlite3.SQLITE_BUSY, sqlite3.SQLITE_LOCKED:
		return ErrLocked
	case sqlite3.SQLITE_NOTADB:
		return ErrNotShop
	case sqlite3.SQLITE_CORRUPT:
		return fmt.Errorf("%w (%w)", ErrDamaged, e)
	case sqlite3.SQLITE_FULL:
		return fmt.Errorf("%w (%w)", ErrFull, e)
	case sqlite3.SQLITE_IOERR:
		return ofDisk(e)
	}
	return err
}

// translated tells whether an error was translated already, by a layer below.
func translated(err error) bool {
	return errors.Is(err, ErrDamaged) || errors.Is(err, ErrFull) || errors.Is(err, ErrDisk)
}

// ofDisk tells a file that ends too soon from a disk in trouble.
func ofDisk(e *sqlite.Error) error {
	if e.Code() == sqlite3.SQLITE_IOERR_SHORT_READ {
		return fmt.Errorf("%w (%w)", ErrDamaged, e)
	}
	return fmt.Errorf("%w (%w)", ErrDisk, e)
}
