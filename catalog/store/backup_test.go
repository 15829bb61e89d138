package store_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

func TestBackup_holdsWhatTheShopHolds(t *testing.T) {
	s := demoStore(t)
	folder := filepath.Join(t.TempDir(), "odd name ?#% é")
	b, err := s.Backup(ctx, folder)
	if err != nil {
		t.Fatal(err)
	}
	here, err := store.Check(ctx, s.Path())
	if err != nil || here.Problems != nil {
		t.Fatalf("shop: %v, %v", here.Problems, err)
	}
	there, err := store.Check(ctx, b.Path)
	if err != nil || there.Problems != nil || there.Counts["style"] != here.Counts["style"] || here.Counts["style"] < 40 {
		t.Errorf("backup: %d styles, %v, %v; the shop has %d", there.Counts["style"], there.Problems, err, here.Counts["style"])
	}
	if info, err := os.Stat(b.Path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("backup has mode %v, %v, want 0600", info.Mode().Perm(), err)
	}
	if left, err := os.ReadDir(folder); err != nil || len(left) != 1 {
		t.Errorf("left in the folder: %v, %v, want the backup alone", left, err)
	}
}

// A quote is saved over and over while backups are made: each backup must be a moment of the shop, whole.
func TestBackup_isConsistentWhileTheShopIsWrittenTo(t *testing.T) {
	s := demoStore(t)
	stop, stopped := make(chan struct{}), make(chan error, 1)
	go func() {
		for {
			select {
			case <-stop:
				stopped <- nil
				return
			default:
				if _, err := s.SaveDraft(ctx, catalog.Draft{Title: "Again", QuotedOn: day}, nil); err != nil {
					stopped <- err
					return
				}
			}
		}
	}()
	for range 8 {
		b, err := s.Backup(ctx, t.TempDir())
		if err != nil {
			t.Fatal(err)
		}
		if c, err := store.Check(ctx, b.Path); err != nil || c.Problems != nil {
			t.Errorf("backup: %v, %v", c.Problems, err)
		}
	}
	close(stop)
	if err := <-stopped; err != nil {
		t.Fatal(err)
	}
}

func TestRestore_bringsTheShopBackAndKeepsWhatWasThere(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "shop.db")
	s, err := store.Open(ctx, path, store.Options{Now: clock})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.Seed(ctx, demo(t)); err != nil {
		t.Fatal(err)
	}
	b, err := s.Backup(ctx, folder)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := s.SaveDraft(ctx, catalog.Draft{Title: "After the backup", QuotedOn: day}, nil); err != nil {
		t.Fatal(err)
	}
	if _, err := store.Restore(ctx, b.Path, path, clock()); !errors.Is(err, store.ErrLocked) {
		t.Errorf("restore into a shop that is open: %v, want ErrLocked", err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	kept, err := store.Restore(ctx, b.Path, path, clock())
	if err != nil {
		t.Fatal(err)
	}
	if n := quotes(t, path); n != 3 {
		t.Errorf("%d quotes after restoring, want the demo's 3", n)
	}
	if n := quotes(t, kept); n != 4 {
		t.Errorf("%d quotes in the file that was kept, want 4", n)
	}
}

func quotes(t *testing.T, path string) int {
	t.Helper()
	c, err := store.Check(ctx, path)
	if err != nil || c.Problems != nil {
		t.Fatalf("%s: %v, %v", path, c.Problems, err)
	}
	return c.Counts["quote"]
}

func TestRestore_refusesADamagedBackup(t *testing.T) {
	s := demoStore(t)
	b, err := s.Backup(ctx, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	damage(t, b.Path)
	path := filepath.Join(t.TempDir(), "shop.db")
	if err := os.WriteFile(path, []byte("whatever"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := store.Restore(ctx, b.Path, path, clock()); err == nil {
		t.Error("a damaged backup was restored")
	}
	if now, err := os.ReadFile(path); err != nil || string(now) != "whatever" {
		t.Errorf("the file in its place is now %q, %v", now[:min(len(now), 20)], err)
	}
}

// damage writes over a stretch in the middle of a file.
func damage(t *testing.T, path string) {
	t.Helper()
	content, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for i := len(content) / 3; i < len(content)/3+20000; i++ {
		content[i] = 0xA5
	}
	if err := os.WriteFile(path, content, 0o600); err != nil {
		t.Fatal(err)
	}
}

func TestCheck_seesDamage(t *testing.T) {
	s := demoStore(t)
	b, err := s.Backup(ctx, t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	damage(t, b.Path)
	if c, err := store.Check(ctx, b.Path); err == nil && c.Problems == nil {
		t.Error("a damaged file was found sound")
	}
	notes := filepath.Join(t.TempDir(), "notes.txt")
	if err := os.WriteFile(notes, bytes.Repeat([]byte("notes "), 100), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := store.Check(ctx, notes); !errors.Is(err, store.ErrNotShop) {
		t.Errorf("a text: %v, want ErrNotShop", err)
	}
}

func TestExpired_keepsDaysWeeksAndMonths(t *testing.T) {
	var all []store.Backup // one a day for two years, the newest first, and a second one on the newest day
	newest := time.Date(2026, 5, 31, 18, 0, 0, 0, time.UTC)
	all = append(all, store.Backup{Path: "second", Taken: newest.Add(time.Hour)})
	for i := range 730 {
		at := newest.AddDate(0, 0, -i)
		all = append(all, store.Backup{Path: at.Format(time.DateOnly), Taken: at})
	}
	expired := store.Expired(all)
	var kept []string
	for _, b := range all {
		if !slices.Contains(expired, b) {
			kept = append(kept, b.Path)
		}
	}
	// 31 May 2026 is a Sunday, the end of a week: 7 days; 8 ends of weeks, of which the first is that Sunday; 12 ends of
	// months, of which the first is that Sunday too
	want := []string{
		"second", "2026-05-30", "2026-05-29", "2026-05-28", "2026-05-27", "2026-05-26", "2026-05-25",
		"2026-05-24", "2026-05-17", "2026-05-10", "2026-05-03", "2026-04-30", "2026-04-26", "2026-04-19", "2026-04-12",
		"2026-03-31", "2026-02-28", "2026-01-31", "2025-12-31", "2025-11-30", "2025-10-31", "2025-09-30", "2025-08-31",
		"2025-07-31", "2025-06-30",
	}
	if !slices.Equal(kept, want) {
		t.Errorf("kept\n%v, want\n%v", kept, want)
	}
	if e := store.Expired(all[:1]); e != nil {
		t.Errorf("the only backup expired: %v", e)
	}
}

func TestBackupDaily_makesOneADay(t *testing.T) {
	s := demoStore(t)
	folder := filepath.Join(t.TempDir(), "backups")
	for range 2 {
		if _, err := s.BackupDaily(ctx, folder); err != nil {
			t.Fatal(err)
		}
	}
	all, err := store.Backups(folder)
	if err != nil || len(all) != 1 {
		t.Errorf("%d backups after two calls on one day, %v, want 1", len(all), err)
	}
}

// A revision that was altered outside the program is named by every check; it keeps no backup from being made or put
// back, and nothing else is lost.
func TestBackup_namesAlteredRevisionsAndIsMadeNevertheless(t *testing.T) {
	s := demoStore(t)
	sent(t, s, 1)
	sent(t, s, 2)
	db := rawWriter(t, s.Path())
	for _, statement := range []string{
		"DROP TRIGGER revision_doc_is_kept",
		"UPDATE revision_doc SET result = zeroblob(40) WHERE revision_id = 2",
	} {
		_, err := db.ExecContext(ctx, statement)
		must(t, err)
	}
	folder := t.TempDir()
	b, err := s.Backup(ctx, folder)
	must(t, err)
	want := "revision 1 of quote " + head(t, s, 2).Number + " does not match its SHA-256"
	if !strings.HasPrefix(b.Altered, want) {
		t.Errorf("altered: %q, want it to begin %q", b.Altered, want)
	}
	found, err := store.Check(ctx, b.Path)
	if err != nil || found.Problems != nil || len(found.Altered) != 1 || found.Counts["revision_doc"] != 2 {
		t.Errorf("the backup: %+v, %v", found, err)
	}
	put := filepath.Join(folder, "put.db")
	if _, err := store.Restore(ctx, b.Path, put, time.Now()); err != nil {
		t.Errorf("putting it back: %v", err)
	}
}
