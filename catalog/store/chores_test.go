package store_test

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// A process of this test binary's own does one chore on a shop file where these name one, so that it can be killed, or
// its disk can fail.
const (
	choreName = "PRESSWORTH_TEST_CHORE"
	choreShop = "PRESSWORTH_TEST_SHOP"
	choreDisk = "PRESSWORTH_TEST_DISK" // on a disk of its own of so many KiB; empty: where the shop lies
)

// chore is one thing that the program does with a shop file. It is done twice where the first time fails: a window
// stays open, and a person tries again.
type chore struct {
	shop func(t *testing.T, path string)                    // makes the file it begins with
	act  func(s *store.Store) error                         // nil: opening the file is the chore
	look func(s *store.Store, acknowledged bool) error      // what must be true whatever happened
	done func(t *testing.T, path string, acknowledged bool) // the same for what lies beside the file; nil: nothing
}

const (
	choreTitle  = "Kept whole or not at all"
	choreStyles = 120
	demoQuotes  = 3
)

func choreList() string {
	var b strings.Builder
	b.WriteString("Style,Name,Color,Size,Price\n")
	for i := range choreStyles {
		fmt.Fprintf(&b, "CHORE%03d,Tee,Navy,M,%d.50\n", i, 3+i%9)
	}
	return b.String()
}

func chores() map[string]chore {
	return map[string]chore{
		"save":    {shop: demoFile, act: choreSave, look: lookForQuote},
		"import":  {shop: demoFile, act: choreImport, look: func(s *store.Store, ok bool) error { return lookForStyles(s, 0, choreStyles, ok) }},
		"undo":    {shop: importedFile, act: choreUndo, look: func(s *store.Store, ok bool) error { return lookForStyles(s, choreStyles, 0, ok) }},
		"backup":  {shop: demoFile, act: choreBackup, look: lookUnchanged, done: backupsAreSound},
		"migrate": {shop: oldestFile, look: lookUnchanged},
	}
}

// TestMain does a chore in a process of its own where one is asked for.
func TestMain(m *testing.M) {
	path := os.Getenv(choreShop)
	switch name := os.Getenv(choreName); name {
	case "":
		os.Exit(m.Run())
	case "slow import":
		os.Exit(told(importAndTell(path)))
	default:
		if size := os.Getenv(choreDisk); size != "" {
			os.Exit(told(choreOnDisk(chores()[name], path, size)))
		}
		os.Exit(told(doChore(chores()[name], path)))
	}
}

func told(err error) (code int) {
	if err != nil {
		fmt.Println("error:", err)
		return 1
	}
	return 0
}

// doChore works on one thread, so that the n-th write of the process is the n-th of that thread, which is how a tracer
// counts.
func doChore(c chore, path string) error {
	runtime.LockOSThread()
	s, err := store.Open(context.Background(), path, store.Options{Now: clock})
	if err != nil {
		return err
	}
	fmt.Println("open")
	for try := 0; c.act != nil && try < 2; try++ {
		if err = c.act(s); err == nil {
			fmt.Println("done")
			break
		}
		fmt.Println("failed:", err)
	}
	return errors.Join(err, s.Close())
}

func choreSave(s *store.Store) error {
	_, err := s.SaveDraft(ctx, catalog.Draft{Title: choreTitle, QuotedOn: day}, nil)
	return err
}

func choreImport(s *store.Store) error {
	t := &testing.T{} // listOf wants one to fail on; this list cannot
	p, err := s.PlanImport(ctx, listOf(t, choreList()), options("chore.csv", day))
	if err != nil {
		return err
	}
	_, err = s.Apply(ctx, p, nil)
	return err
}

func choreUndo(s *store.Store) error {
	_, err := s.UndoImport(ctx)
	return err
}

func choreBackup(s *store.Store) error {
	_, err := s.Backup(ctx, filepath.Join(filepath.Dir(s.Path()), "backups"))
	return err
}

func demoFile(t *testing.T, path string) {
	t.Helper()
	shop := open(t, path)
	if err := errors.Join(shop.Seed(ctx, demo(t)), shop.Close()); err != nil {
		t.Fatal(err)
	}
}

func importedFile(t *testing.T, path string) {
	t.Helper()
	demoFile(t, path)
	shop := open(t, path)
	if err := errors.Join(choreImport(shop), shop.Close()); err != nil {
		t.Fatal(err)
	}
}

func lookForQuote(s *store.Store, acknowledged bool) error {
	all, err := s.Quotes(ctx, store.QuoteFilter{})
	if err != nil {
		return err
	}
	found, err := s.Quotes(ctx, store.QuoteFilter{Words: "kept whole"})
	switch {
	case err != nil:
		return err
	case len(all)-demoQuotes != len(found) || len(found) > 1:
		return fmt.Errorf("%d quotes more than before, the search finds %d", len(all)-demoQuotes, len(found))
	case acknowledged && len(found) == 0:
		return errors.New("a quote was said to be saved and is not there")
	case len(found) == 0:
		return nil
	}
	draft, err := s.Draft(ctx, found[0].ID)
	if err == nil && draft.Title != choreTitle {
		err = fmt.Errorf("the quote reads %q", draft.Title)
	}
	return err
}

// lookForStyles wants as many styles of the list as before or as after, and all of that number if it was said to be done.
func lookForStyles(s *store.Store, before, after int, acknowledged bool) error {
	found, err := s.FindBlanks(ctx, "chore", choreStyles+1)
	if err != nil {
		return err
	}
	all, err := s.Styles(ctx, 0, 10*choreStyles)
	if err != nil {
		return err
	}
	there := 0
	for _, x := range all {
		if strings.HasPrefix(x.Number, "CHORE") {
			there++
		}
	}
	if there != len(found) || there != before && there != after || acknowledged && there != after {
		return fmt.Errorf("%d of %d styles, the search finds %d; said to be done: %v", there, choreStyles, len(found), acknowledged)
	}
	return nil
}

func lookUnchanged(s *store.Store, _ bool) error {
	if err := lookForStyles(s, 0, 0, false); err != nil {
		return err
	}
	all, err := s.Quotes(ctx, store.QuoteFilter{})
	if err == nil && len(all) != demoQuotes {
		err = fmt.Errorf("%d quotes, want the demo's %d", len(all), demoQuotes)
	}
	return err
}

func backupsAreSound(t *testing.T, path string, acknowledged bool) {
	t.Helper()
	all, err := store.Backups(filepath.Join(filepath.Dir(path), "backups"))
	if err != nil || acknowledged && len(all) == 0 {
		t.Errorf("%d backups, %v; said to be done: %v", len(all), err, acknowledged)
	}
	for _, b := range all {
		if n := quotes(t, b.Path); n != demoQuotes {
			t.Errorf("%d quotes in the backup, want %d", n, demoQuotes)
		}
	}
}
