package store

import (
	"context"
	"fmt"
	"os"
	"time"
)

// Rescue is what can be done about a damaged shop file: the newest sound backup, and what would be missing with it.
type Rescue struct {
	Backup  Backup
	Quotes  int       // changed since the backup, as far as the damaged file can be read; -1: it cannot
	Written time.Time // when the damaged file was written last
}

// FindRescue looks in a folder for the newest backup that a full check finds sound; ErrNotFound where there is none.
// Nothing is changed.
func FindRescue(ctx context.Context, path, folder string) (Rescue, error) {
	all, err := Backups(folder)
	if err != nil {
		return Rescue{}, fmt.Errorf("backups of %s: %w", path, translate(err))
	}
	for _, b := range all {
		if found, err := Check(ctx, b.Path); err != nil || found.Problems != nil {
			continue
		}
		r := Rescue{Backup: b, Quotes: changedSince(ctx, path, b.Taken)}
		if info, err := os.Stat(path); err == nil {
			r.Written = info.ModTime()
		}
		return r, nil
	}
	return Rescue{}, fmt.Errorf("backups of %s: %w", path, ErrNotFound)
}

// changedSince counts the quotes of a file, which may be damaged, that were changed after a moment.
func changedSince(ctx context.Context, path string, moment time.Time) (n int) {
	db := connect(path, "query_only(1)")
	defer db.Close()
	err := db.QueryRowContext(ctx, "SELECT count(*) FROM quote WHERE changed > ?", moment.UTC().Format(time.RFC3339)).Scan(&n)
	if err != nil {
		return -1
	}
	return n
}

// mostQuick is up to how many bytes a shop file is looked through whenever it is opened, which takes some milliseconds.
// A larger one is looked through with its daily backup.
const mostQuick = 16 << 20

// soundAtOpening looks through the pages of a file that is to be worked on.
func (s *Store) soundAtOpening(ctx context.Context) error {
	if info, err := os.Stat(s.path); err != nil || info.Size() > mostQuick {
		return err
	}
	var found string
	if err := s.write.QueryRowContext(ctx, "PRAGMA quick_check(1)").Scan(&found); err != nil {
		return err
	}
	if found != "ok" {
		return fmt.Errorf("%w: %s", ErrDamaged, found)
	}
	return nil
}
