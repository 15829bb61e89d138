package store

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// Restore puts a backup in the place of a shop file and returns where the file that was there is kept; nothing is kept
// where there was none. A damaged backup is refused, and so is a shop file that is in use.
func Restore(ctx context.Context, backup, path string, now time.Time) (kept string, err error) {
	if kept, err = restore(ctx, backup, path, now); err != nil {
		return "", fmt.Errorf("restore %s: %w", backup, translate(err))
	}
	return kept, nil
}

func restore(ctx context.Context, backup, path string, now time.Time) (kept string, err error) {
	found, err := Check(ctx, backup)
	if err != nil {
		return "", err
	}
	if found.Problems != nil {
		return "", fmt.Errorf("%w: %s", ErrDamaged, found.Problems[0])
	}
	s := &Store{path: path, now: time.Now}
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return "", err
	}
	if err := s.takeLock(ctx); err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, s.Close()) }()
	fresh, err := copyBeside(backup, path)
	if err != nil {
		return "", err
	}
	defer os.Remove(fresh) // gone already where all went well
	if kept, err = keep(ctx, path, now); err != nil {
		return "", err
	}
	return kept, os.Rename(fresh, path)
}

// copyBeside copies a file into the folder of another, to its owner alone, onto the disk.
func copyBeside(from, beside string) (path string, err error) {
	in, err := os.Open(from)
	if err != nil {
		return "", err
	}
	defer in.Close()
	out, err := os.CreateTemp(filepath.Dir(beside), ".restore-*") // mode 0600
	if err != nil {
		return "", err
	}
	_, err = io.Copy(out, in)
	return out.Name(), errors.Join(err, out.Sync(), out.Close())
}

// keep gives the current file a second name and empties its log, which would be taken for the new file's. What cannot
// be brought from the log of a damaged file is kept with it.
func keep(ctx context.Context, path string, now time.Time) (kept string, err error) {
	if _, err := os.Stat(path); errors.Is(err, os.ErrNotExist) {
		return "", nil
	}
	db := connect(path)
	_, _ = db.ExecContext(ctx, "PRAGMA wal_checkpoint(TRUNCATE)") // fails for a damaged file, whose log is moved below
	if err := db.Close(); err != nil {
		return "", err
	}
	kept = strings.TrimSuffix(path, filepath.Ext(path)) + "-before-restore-" + now.Format(backupStamp) + filepath.Ext(path)
	if err := os.Link(path, kept); err != nil {
		copied, err := copyBeside(path, path)
		if err == nil {
			err = os.Rename(copied, kept)
		}
		if err != nil {
			return "", err
		}
	}
	if err := os.Rename(path+"-wal", kept+"-wal"); err != nil && !errors.Is(err, os.ErrNotExist) {
		return "", err
	}
	if err := os.Remove(path + "-shm"); err != nil && !errors.Is(err, os.ErrNotExist) {
		return "", err
	}
	return kept, nil
}
