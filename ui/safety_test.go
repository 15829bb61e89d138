package ui

import (
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/parts"
	"pressworth/ui/parts/partstest"
)

// copies stands in for the backups of a shop file.
type copies struct {
	all      []Backup
	restored string
	altered  string
	err      error
}

func (c *copies) List() ([]Backup, error) { return c.all, c.err }

func (c *copies) Make() (string, string, error) {
	c.all = append([]Backup{{Path: "/b/new.db", Taken: time.Date(2026, 5, 5, 9, 0, 0, 0, time.UTC)}}, c.all...)
	return "/b/new.db", c.altered, c.err
}

func (c *copies) Restore(path string) error {
	c.restored = path
	return c.err
}

func oneBackup() *copies {
	return &copies{all: []Backup{{Path: "/b/old.db", Taken: time.Date(2026, 5, 4, 8, 30, 0, 0, time.UTC), Bytes: 412000}}}
}

// tapWord taps the button with a word on it.
func (d *desk) tapWord(t *testing.T, word string) {
	t.Helper()
	var found *parts.Button
	partstest.Walk(d.win.Content(), func(o fyne.CanvasObject) {
		if b, ok := o.(*parts.Button); ok && b.Text() == word {
			found = b
		}
	})
	if found == nil {
		t.Fatalf("no button %q", word)
	}
	test.Tap(found)
}

func TestBackups_areListedMadeAndPutBackAfterASecondWord(t *testing.T) {
	c := oneBackup()
	d := open(t, 0, func(deps *Deps) { deps.Backups = c })
	d.BackupsPage()
	if !d.shows("Mon 4 May 2026, 08:30") {
		t.Fatalf("the backup is not listed: %v", d.texts())
	}
	d.tapWord(t, "Back up now")
	if !d.shows("Tue 5 May 2026, 09:00") || !strings.Contains(d.Notice(), "/b/new.db") {
		t.Errorf("the new backup is not told of: %q", d.Notice())
	}
	c.altered = "revision 1 of quote 2026-0004 does not match its SHA-256"
	d.tapWord(t, "Back up now")
	if !strings.Contains(d.Notice(), "/b/new.db. But revision 1 of quote 2026-0004") {
		t.Errorf("an altered revision is not told of: %q", d.Notice())
	}
	c.all = c.all[2:]
	d.BackupsPage()
	d.tapWord(t, "Restore")
	if c.restored != "" {
		t.Error("one tap restored: it has to ask")
	}
	c.err = errors.New("the file is damaged")
	d.tapWord(t, "Put it in place of the shop")
	if c.restored != "/b/old.db" || !strings.Contains(d.Notice(), "the shop is as it was") {
		t.Errorf("restored %q, said %q", c.restored, d.Notice())
	}
}

func TestLookOnly_savesNothingAndSaysSo(t *testing.T) {
	t.Cleanup(parts.LookOnly())
	d := open(t, -1, func(deps *Deps) {
		deps.LookOnly, deps.Backups = true, oneBackup()
		deps.After = func(time.Duration) <-chan time.Time {
			c := make(chan time.Time, 1)
			c <- time.Time{}
			return c
		}
	})
	d.Focus()
	test.Type(d.win.Canvas().Focused(), "Someone")
	if !d.shows("LOOK ONLY") || !d.shows("nothing is saved here") {
		t.Errorf("the bar does not say so: %v", d.texts())
	}
	d.menuShortcut(ctrl(fyne.KeyS))
	if !strings.Contains(d.Notice(), "Nothing is saved here") {
		t.Errorf("Ctrl+S said %q", d.Notice())
	}
	if len(d.shop.Saved) != 0 {
		t.Errorf("saved: %v", d.shop.Saved)
	}
	d.BackupsPage()
	partstest.Walk(d.win.Content(), func(o fyne.CanvasObject) {
		if b, ok := o.(*parts.Button); ok && (b.Text() == "Restore" || b.Text() == "Back up now") && !b.Disabled() {
			t.Errorf("%q can be pressed", b.Text())
		}
	})
}

func TestDetails_goToTheClipboard(t *testing.T) {
	d := open(t, 0, func(deps *Deps) { deps.Details = func() string { return "Pressworth 1.0" } })
	d.CopyDetails()
	if got := fyne.CurrentApp().Clipboard().Content(); got != "Pressworth 1.0" {
		t.Errorf("the clipboard holds %q", got)
	}
}
