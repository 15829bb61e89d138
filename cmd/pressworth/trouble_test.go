//go:build linux && cgo

package main

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"pressworth/catalog/store"
)

// Two windows on one file: the second says so, offers to look only, and then nothing typed in it is saved.
func TestTrouble_secondWindowLooksOnly(t *testing.T) {
	first := openWindowed(t, "--demo")
	path := filepath.Join(first.Home, "data", "pressworth", "demo.db")
	before, err := store.Check(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	second := startOn(t, newServer(t), built(t), first.Home, "--demo")
	second.wait("pressworth: trouble: Open to look only")
	second.still()
	second.key("space")
	second.wait("pressworth: first frame")
	second.takeFocus()
	second.key("ctrl+n")
	second.text("somebody")
	second.key("ctrl+s")
	second.still()
	second.key("ctrl+q")
	second.gone(t)
	after, err := store.Check(t.Context(), path)
	if err != nil || after.Problems != nil || after.Counts["quote"] != before.Counts["quote"] || after.Counts["customer"] != before.Counts["customer"] {
		t.Errorf("after looking: %v, %v, %v; before: %v", after.Counts, after.Problems, err, before.Counts)
	}
	first.key("ctrl+q")
	if err := first.Ended(patience); err != nil {
		t.Error(err)
	}
}

// A damaged shop file is recognised at the start; its newest backup is put in its place on a key, and it is kept.
func TestTrouble_damagedFileIsReplacedByItsBackup(t *testing.T) {
	d := openWindowed(t, "--demo")
	d.wait("pressworth: backed up")
	d.key("ctrl+q")
	if err := d.Ended(patience); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(d.Home, "data", "pressworth", "demo.db")
	spoil(t, path)
	again := startOn(t, newServer(t), built(t), d.Home, "--demo")
	again.wait("pressworth: trouble: Put the backup in its place")
	again.still()
	again.key("space")
	again.wait("pressworth: first frame")
	again.takeFocus()
	again.key("ctrl+q")
	again.gone(t)
	if found, err := store.Check(t.Context(), path); err != nil || found.Problems != nil || found.Counts["quote"] < 3 {
		t.Errorf("after restoring: %v, %v, %v", found.Counts, found.Problems, err)
	}
	kept, err := filepath.Glob(filepath.Join(filepath.Dir(path), "demo-before-restore-*.db"))
	if err != nil || len(kept) != 1 {
		t.Errorf("kept: %v, %v, want the damaged file", kept, err)
	}
}

// spoil overwrites a stretch in the middle of a file.
func spoil(t *testing.T, path string) {
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

// gone waits for the end of a program that could not open its shop, and of the one that it started.
func (d *drive) gone(t *testing.T) {
	t.Helper()
	var exit *exec.ExitError
	if err := d.Ended(patience); err != nil && !errors.As(err, &exit) {
		d.server.Stop() // ends the window that is still open
		t.Fatal(err)
	}
}

// takeFocus gives the keyboard to the large window: without a window manager nobody does when the small one closes.
func (d *drive) takeFocus() {
	d.still()
	d.xdotool("search", "--onlyvisible", "--name", "Pressworth", "windowfocus", "%@")
}
