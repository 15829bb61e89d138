package store_test

import (
	"bytes"
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	_ "modernc.org/sqlite"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/catalog/store"
)

const day = "2026-05-04"

func clock() time.Time { return time.Date(2026, 5, 4, 10, 30, 0, 0, time.UTC) }

var ctx = context.Background()

func demo(t testing.TB) catalog.Demo {
	t.Helper()
	d, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, day)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func open(t testing.TB, path string) *store.Store {
	t.Helper()
	s, err := store.Open(ctx, path, store.Options{Now: clock})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := s.Close(); err != nil {
			t.Errorf("close: %v", err)
		}
	})
	return s
}

// demoStore is a shop file with the demo shop in it.
func demoStore(t testing.TB) *store.Store {
	t.Helper()
	s := open(t, filepath.Join(t.TempDir(), "shop.db"))
	if err := s.Seed(ctx, demo(t)); err != nil {
		t.Fatal(err)
	}
	return s
}

func TestOpen_oddNameIsOneFile(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "new folder")
	path := filepath.Join(dir, "odd name ?#% é.db")
	s := open(t, path)
	if err := s.Seed(ctx, demo(t)); err != nil {
		t.Fatal(err)
	}
	if err := s.Close(); err != nil {
		t.Fatal(err)
	}
	for name, want := range map[string]os.FileMode{path: 0o600, dir: 0o700} {
		info, err := os.Stat(name)
		if err != nil {
			t.Fatal(err)
		}
		if got := info.Mode().Perm(); got != want {
			t.Errorf("%s: got mode %o, want %o", name, got, want)
		}
	}
	again := open(t, path)
	quotes, err := again.Quotes(ctx, store.QuoteFilter{})
	if err != nil || len(quotes) != 3 {
		t.Errorf("opened again: got %d quotes, %v, want the 3 of the demo", len(quotes), err)
	}
}

func TestOpen_refusesWithoutTouching(t *testing.T) {
	newer := func(path string) error {
		s, err := store.Open(ctx, path, store.Options{})
		if err != nil {
			return err
		}
		if err := s.Close(); err != nil {
			return err
		}
		return execute(path, fmt.Sprintf("PRAGMA user_version = %d", store.Version()+1))
	}
	text := func(path string) error {
		return os.WriteFile(path, bytes.Repeat([]byte("not a database\n"), 400), 0o600)
	}
	other := func(path string) error { return execute(path, "CREATE TABLE recipe (name TEXT)") }
	short := func(path string) error { return os.WriteFile(path, []byte("SQLite format 3\x00"), 0o600) }
	crashed := func(path string) error { // a newer file whose version lies in the log only
		if err := newer(path); err != nil {
			return err
		}
		return copyWhileOpen(path)
	}
	cases := map[string]struct {
		prepare func(string) error
		want    error
	}{
		"a newer file with a log":      {crashed, store.ErrNewer},
		"a newer file":                 {newer, store.ErrNewer},
		"a text":                       {text, store.ErrNotShop},
		"a database of something else": {other, store.ErrNotShop},
		"a file cut off in its header": {short, store.ErrNotShop},
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "file.db")
			if err := c.prepare(path); err != nil {
				t.Fatal(err)
			}
			before, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			log, _ := os.ReadFile(path + "-wal") // mostly there is none
			files := beside(t, path)
			for _, readOnly := range []bool{false, true} {
				_, err = store.Open(ctx, path, store.Options{ReadOnly: readOnly})
				if !errors.Is(err, c.want) {
					t.Errorf("read only %v: got error %v, want %v", readOnly, err, c.want)
				}
			}
			after, err := os.ReadFile(path)
			if err != nil {
				t.Fatal(err)
			}
			logAfter, _ := os.ReadFile(path + "-wal")
			if !bytes.Equal(before, after) || !bytes.Equal(log, logAfter) {
				t.Error("the refused file or its log was changed")
			}
			if now := beside(t, path); now != files {
				t.Errorf("files beside the refused one: got %s, want %s", now, files)
			}
		})
	}
}

// copyWhileOpen leaves a file as a program leaves it that dies with changes in its log.
func copyWhileOpen(path string) error {
	db, err := sql.Open("sqlite", path)
	if err != nil {
		return err
	}
	if _, err := db.Exec("CREATE TABLE later (x)"); err != nil {
		return err
	}
	kept := make(map[string][]byte)
	for _, end := range []string{"", "-wal", "-shm"} {
		if kept[end], err = os.ReadFile(path + end); err != nil {
			return err
		}
	}
	if err := db.Close(); err != nil {
		return err
	}
	for end, data := range kept {
		if err := os.WriteFile(path+end, data, 0o600); err != nil {
			return err
		}
	}
	return nil
}

func beside(t *testing.T, path string) string {
	t.Helper()
	files, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	return fmt.Sprint(files)
}

func execute(path, statement string) error {
	db, err := sql.Open("sqlite", path)
	if err != nil {
		return err
	}
	_, err = db.Exec(statement)
	return errors.Join(err, db.Close())
}

func TestOpen_folderIsNoShop(t *testing.T) {
	if _, err := store.Open(ctx, t.TempDir(), store.Options{}); !errors.Is(err, store.ErrNotShop) {
		t.Errorf("got %v, want %v", err, store.ErrNotShop)
	}
}

func TestOpen_secondWindowIsTold(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.db")
	first := open(t, path)
	if err := first.Seed(ctx, demo(t)); err != nil {
		t.Fatal(err)
	}
	if _, err := store.Open(ctx, path, store.Options{}); !errors.Is(err, store.ErrLocked) {
		t.Errorf("second window: got %v, want %v", err, store.ErrLocked)
	}
	look, err := store.Open(ctx, path, store.Options{ReadOnly: true, Now: clock})
	if err != nil {
		t.Fatalf("looking beside a window: %v", err)
	}
	if rows, err := look.FindBlanks(ctx, "hoodie", 5); err != nil || len(rows) == 0 {
		t.Errorf("looking beside a window: got %v, %v, want hoodies", rows, err)
	}
	if err := look.SaveShop(ctx, catalog.Shop{}); err == nil {
		t.Error("a file opened for looking was written")
	}
	if err := errors.Join(look.Close(), first.Close()); err != nil {
		t.Fatal(err)
	}
	second, err := store.Open(ctx, path, store.Options{})
	if err != nil {
		t.Fatalf("after the first window closed: %v", err)
	}
	if err := second.Close(); err != nil {
		t.Error(err)
	}
}

func TestOpen_foreignLockIsTold(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.db")
	if err := open(t, path).Close(); err != nil {
		t.Fatal(err)
	}
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	db.SetMaxOpenConns(1)
	defer db.Close()
	if _, err := db.Exec("BEGIN IMMEDIATE"); err != nil {
		t.Fatal(err)
	}
	s := open(t, path)
	if err := s.Seed(ctx, demo(t)); !errors.Is(err, store.ErrLocked) {
		t.Errorf("another program holds the file: got %v, want %v", err, store.ErrLocked)
	}
}

// A window that died while it made the file leaves it empty, or with a header only.
func TestOpen_halfMadeFileIsMadeAgain(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.db")
	if err := execute(path, "PRAGMA journal_mode = WAL"); err != nil {
		t.Fatal(err)
	}
	s := open(t, path)
	if err := s.Seed(ctx, demo(t)); err != nil {
		t.Error(err)
	}
}

func BenchmarkSeed(b *testing.B) {
	d := demo(b)
	for b.Loop() {
		b.StopTimer()
		s := open(b, filepath.Join(b.TempDir(), "shop.db"))
		b.StartTimer()
		if err := s.Seed(ctx, d); err != nil {
			b.Fatal(err)
		}
	}
}
