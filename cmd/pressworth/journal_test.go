package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pressworth/catalog/store"
)

func TestJournal_turnsOverAndStaysSmall(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "data")
	j := newJournal(folder)
	line := strings.Repeat("x", 1000)
	for range (journalFiles + 3) * journalBytes / 1000 {
		j.note(line)
	}
	entries, err := os.ReadDir(folder)
	if err != nil || len(entries) != 1+journalFiles {
		t.Fatalf("%d files, %v, want the log and %d older ones", len(entries), err, journalFiles)
	}
	for _, e := range entries {
		info, err := e.Info()
		if err != nil || info.Size() > journalBytes+2000 || info.Mode().Perm() != 0o600 {
			t.Errorf("%s: %d bytes, mode %v, %v", e.Name(), info.Size(), info.Mode().Perm(), err)
		}
	}
}

func TestJournal_quotesNothingThatWasTypedOrRead(t *testing.T) {
	j := newJournal(t.TempDir())
	name := "Ottilie Brandvold"
	for _, err := range []error{
		fmt.Errorf("save quote of %s: %w", name, store.ErrFull),
		fmt.Errorf("import %s.csv: %w", name, errors.New("line 3: price of "+name)),
		&fs.PathError{Op: "open", Path: "/home/" + name, Err: errors.New(name)},
	} {
		j.trouble("save", err)
	}
	said := j.details()
	if strings.Contains(said, "Ottilie") || strings.Contains(said, "Brandvold") {
		t.Errorf("the details quote a name:\n%s", said)
	}
	for _, want := range []string{"save: disk full", "save: *fmt.wrapError of *errors.errorString", version} {
		if !strings.Contains(said, want) {
			t.Errorf("the details do not say %q:\n%s", want, said)
		}
	}
}
