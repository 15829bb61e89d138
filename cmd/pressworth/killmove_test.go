package main

import (
	"bufio"
	"compress/gzip"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"pressworth/catalog/store"
)

// mover kills the program while it brings a shop file of the oldest version up to date.
type mover struct {
	program string
	old     []byte        // the file as the oldest version left it
	opening time.Duration // from the start of the program to its open shop
}

func newMover(t *testing.T, program string) *mover {
	t.Helper()
	packed, err := os.Open(filepath.Join("..", "..", "testdata", "schema", "001.db.gz"))
	if err != nil {
		t.Fatal(err)
	}
	defer packed.Close()
	in, err := gzip.NewReader(packed)
	if err != nil {
		t.Fatal(err)
	}
	m := &mover{program: program}
	if m.old, err = io.ReadAll(in); err != nil {
		t.Fatal(err)
	}
	m.opening = m.timed(t)
	return m
}

// timed lets the program open the old file once and says how long that took.
func (m *mover) timed(t *testing.T) time.Duration {
	t.Helper()
	cmd := exec.Command(m.program, m.fresh(t))
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	began := time.Now()
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	in := bufio.NewScanner(out)
	if !in.Scan() || in.Text() != "open" {
		t.Fatalf("the program said: %s", in.Text())
	}
	took := time.Since(began)
	_ = cmd.Process.Kill()
	_ = cmd.Wait() // killed: its exit says nothing
	return took
}

// fresh is a new folder with the old file in it.
func (m *mover) fresh(t *testing.T) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "shop.db")
	if err := os.WriteFile(path, m.old, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// kill kills the program in the second half of its way to an open shop and returns the version that the file was left
// at; its content must be whole, and move to the newest when it is opened again.
func (m *mover) kill(t *testing.T, kill int) (left int) {
	t.Helper()
	path := m.fresh(t)
	after := m.opening/2 + rand.N(m.opening*2/3)
	runAndKill(t, m.program, path, true, after)
	found, err := store.Check(t.Context(), path)
	if err != nil || found.Problems != nil {
		t.Fatalf("kill %d, while moving: %v, %v", kill, found.Problems, err)
	}
	lookThrough(t, kill, path, nil, 3)
	moved, err := store.Check(t.Context(), path)
	if err != nil || moved.Schema != store.Version() || moved.Counts["quote"] < 3 || moved.Counts["style"] != found.Counts["style"] {
		t.Fatalf("kill %d, while moving from schema %d: then schema %d, %v, %v", kill, found.Schema, moved.Schema, moved.Counts, err)
	}
	return found.Schema
}
