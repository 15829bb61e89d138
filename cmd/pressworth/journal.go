package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"time"

	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/ui"
)

// The log is small and turns over: so many bytes in the current file, so many older files beside it.
const (
	journalBytes = 128 << 10
	journalFiles = 3
)

// journal is the program's log: when it started and ended, on what, and what kinds of trouble it met. Texts of errors
// can quote what was typed or read, so only kinds stand in it, never the texts: no data of the shop or its customers.
type journal struct {
	path string
	now  func() time.Time
	mu   sync.Mutex
}

// newJournal keeps the log in a folder.
func newJournal(folder string) *journal {
	return &journal{path: filepath.Join(folder, "pressworth.log"), now: time.Now}
}

// openJournal opens the log in the folder of the user's data and notes the start.
func openJournal() *journal {
	j := &journal{path: os.DevNull, now: time.Now}
	if folder, err := dataFolder(); err == nil {
		j = newJournal(folder)
	}
	j.note("start " + version + " " + runtime.GOOS + "/" + runtime.GOARCH)
	return j
}

// note writes a line: a fixed text of the program's. A log that cannot be written is done without.
func (j *journal) note(event string) {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.turnOver() != nil {
		return
	}
	f, err := os.OpenFile(j.path, os.O_CREATE|os.O_APPEND|os.O_WRONLY, 0o600)
	if err != nil {
		return
	}
	fmt.Fprintf(f, "%s %s\n", j.now().UTC().Format(time.RFC3339), event)
	_ = f.Close() // nothing depends on it
}

// trouble writes the kind of an error.
func (j *journal) trouble(event string, err error) {
	if err != nil {
		j.note(event + ": " + kindOf(err))
	}
}

// turnOver moves a full log aside, and the oldest one away.
func (j *journal) turnOver() error {
	info, err := os.Stat(j.path)
	if errors.Is(err, os.ErrNotExist) {
		return os.MkdirAll(filepath.Dir(j.path), 0o700)
	}
	if err != nil || info.Size() < journalBytes {
		return err
	}
	for i := journalFiles - 1; i > 0; i-- {
		if err := os.Rename(j.older(i), j.older(i+1)); err != nil && !errors.Is(err, os.ErrNotExist) {
			return err
		}
	}
	return os.Rename(j.path, j.older(1))
}

func (j *journal) older(i int) string { return fmt.Sprintf("%s.%d", j.path, i) }

// kinds are the errors that the log names.
var kinds = []struct {
	err  error
	name string
}{
	{store.ErrDamaged, "damaged"},
	{store.ErrNewer, "newer"},
	{store.ErrNotShop, "not a shop file"},
	{store.ErrLocked, "in use"},
	{store.ErrReadOnly, "looking only"},
	{store.ErrFull, "disk full"},
	{store.ErrDisk, "disk error"},
	{store.ErrNotFound, "not found"},
	{os.ErrPermission, "not permitted"},
	{os.ErrNotExist, "no such file"},
}

// kindOf names an error without quoting it: by what it is known to be, else by the types it is made of.
func kindOf(err error) string {
	for _, k := range kinds {
		if errors.Is(err, k.err) {
			return k.name
		}
	}
	var types []string
	for ; err != nil; err = errors.Unwrap(err) {
		types = append(types, fmt.Sprintf("%T", err))
	}
	return strings.Join(types, " of ")
}

// told writes documents, and notes the kind of trouble that one met.
type told struct {
	papers
	log *journal
}

// Write is part of the window's Papers.
func (t told) Write(p ui.Paper, job quote.Job, result quote.Result) (string, error) {
	path, err := t.papers.Write(p, job, result)
	t.log.trouble(string(p), err)
	return path, err
}

// detailLines is how many lines of the log go with the details.
const detailLines = 40

// details are what helps to answer a question about the program.
func (j *journal) details() string {
	j.mu.Lock()
	defer j.mu.Unlock()
	text := fmt.Sprintf("Pressworth %s, toolkit %s, schema %d, %s %s/%s\n", version, toolkit(), store.Version(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
	content, err := os.ReadFile(j.path)
	if err != nil {
		return text + "no log\n"
	}
	lines := strings.SplitAfter(string(content), "\n")
	return text + strings.Join(lines[max(0, len(lines)-1-detailLines):], "")
}
