package store_test

import (
	"errors"
	"os"
	"path/filepath"
	"testing"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// A shop with a good backup of yesterday, a damaged one of today, a quote saved since, and then damage to the file.
func TestRescue_offersTheNewestSoundBackupAndSaysWhatIsMissing(t *testing.T) {
	now := clock()
	folder := t.TempDir()
	path, backups := filepath.Join(folder, "shop.db"), filepath.Join(folder, "backups")
	s, err := store.Open(ctx, path, store.Options{Now: func() time.Time { return now }})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Seed(ctx, demo(t)); err != nil {
		t.Fatal(err)
	}
	good, err := s.Backup(ctx, backups)
	if err != nil {
		t.Fatal(err)
	}
	now = now.Add(24 * time.Hour)
	if _, err := s.SaveDraft(ctx, catalog.Draft{Title: "Since", QuotedOn: day}, nil); err != nil {
		t.Fatal(err)
	}
	bad, err := s.Backup(ctx, backups)
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	damage(t, bad.Path)
	r, err := store.FindRescue(ctx, path, backups)
	if err != nil || r.Backup.Path != good.Path || r.Quotes != 1 {
		t.Errorf("found %+v, %v, want the backup %s and 1 quote missing", r, err, good.Path)
	}
	damage(t, path)
	if _, err := store.Open(ctx, path, store.Options{}); !errors.Is(err, store.ErrDamaged) {
		t.Errorf("a damaged file was opened: %v", err)
	}
	if _, err := store.Restore(ctx, r.Backup.Path, path, now); err != nil {
		t.Fatal(err)
	}
	if n := quotes(t, path); n != demoQuotes {
		t.Errorf("%d quotes after the rescue, want %d", n, demoQuotes)
	}
}

func TestRescue_withoutASoundBackupThereIsNone(t *testing.T) {
	if _, err := store.FindRescue(ctx, filepath.Join(t.TempDir(), "shop.db"), t.TempDir()); !errors.Is(err, store.ErrNotFound) {
		t.Errorf("no backups: %v, want ErrNotFound", err)
	}
}

// What a backup left behind that was cut off is cleared away by a later one; one that may still be at work is not.
func TestBackup_clearsAwayWhatACutOffOneLeft(t *testing.T) {
	s := demoStore(t)
	folder := t.TempDir()
	old, fresh := filepath.Join(folder, ".backup-1"), filepath.Join(folder, ".backup-2")
	for _, d := range []string{old, fresh} {
		if err := os.Mkdir(d, 0o700); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chtimes(old, clock(), clock().Add(-25*time.Hour)); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(fresh, clock(), clock().Add(-time.Minute)); err != nil {
		t.Fatal(err)
	}
	if _, err := s.Backup(ctx, folder); err != nil {
		t.Fatal(err)
	}
	if _, err := os.Stat(old); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("a day-old leftover is still there: %v", err)
	}
	if _, err := os.Stat(fresh); err != nil {
		t.Errorf("a backup that may be at work was taken away: %v", err)
	}
}
