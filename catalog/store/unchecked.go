package store

import (
	"context"
	"database/sql"
	"errors"
)

// changeUnchecked is change without a look at the references and constraints of every row: for work that makes what it
// refers to itself, and of what it has checked itself, by the hundred thousand, as an import does. Checking resumes with the
// next change; the full check of a shop file looks at all of it.
func (s *Store) changeUnchecked(ctx context.Context, work func(*sql.Tx) error) (err error) {
	if s.write == nil {
		return s.change(ctx, work) // which refuses it
	}
	conn, err := s.write.Conn(ctx) // the setting belongs to a connection, and has no effect within a transaction
	if err != nil {
		return translate(err)
	}
	defer func() { err = errors.Join(err, conn.Close()) }()
	if _, err := conn.ExecContext(ctx, "PRAGMA foreign_keys = 0; PRAGMA ignore_check_constraints = 1"); err != nil {
		return translate(err)
	}
	defer func() {
		_, on := conn.ExecContext(context.WithoutCancel(ctx), "PRAGMA foreign_keys = 1; PRAGMA ignore_check_constraints = 0")
		err = errors.Join(err, translate(on))
	}()
	return inOne(ctx, conn, work)
}
