//go:build linux && cgo

package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"pressworth/catalog/store"
	"pressworth/cmd/internal/offscreen"
)

// A customer with a striking name is typed and saved, a document and the day's backup fail, the shop file is damaged
// and does not open: the log tells of it all, and neither it nor the details have a word of the customer.
func TestWindow_logHoldsNothingOfTheCustomer(t *testing.T) {
	const name, address = "Quillivere Zandstra", "qzandstra@brambleford.example"
	home := t.TempDir()
	folder := filepath.Join(home, "data", "pressworth")
	if err := os.MkdirAll(folder, 0o700); err != nil {
		t.Fatal(err)
	}
	for _, inTheWay := range []string{"documents", "backups"} { // a file where a folder should be: nothing can be written there
		if err := os.WriteFile(filepath.Join(folder, inTheWay), nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	d := startOn(t, newServer(t), built(t), home, "--demo")
	d.wait("pressworth: first frame")
	d.key("ctrl+n")
	d.text(name)
	d.key("Tab", "Tab", "Tab", "Tab")
	d.text(address)
	d.key("Tab", "Tab")
	for _, step := range teamQuote[1:] {
		d.text(step.text)
		d.key(step.then)
	}
	d.still()
	d.key("ctrl+p")
	d.still()
	d.key("ctrl+q")
	if err := d.Ended(patience); err != nil {
		t.Fatal(err)
	}
	path := filepath.Join(folder, "demo.db")
	if kept := draftsOf(t, path, name, address); kept != 1 {
		t.Fatalf("%d quotes of the customer were kept, want the one that was typed", kept)
	}
	spoil(t, path)
	again := startOn(t, newServer(t), built(t), home, "--demo")
	again.wait("pressworth: trouble")
	again.still()
	again.key("Tab", "space") // from Close to Copy details
	again.still()
	copied := again.clipboard()
	again.Kill()
	log, err := os.ReadFile(filepath.Join(folder, "pressworth.log"))
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"daily backup", "Quote PDF", "open: damaged"} {
		if !strings.Contains(string(log), want) {
			t.Errorf("the log does not tell of %q:\n%s", want, log)
		}
	}
	for _, said := range []string{string(log), copied} {
		for _, word := range []string{"quillivere", "zandstra", "brambleford", "harbour"} {
			if strings.Contains(strings.ToLower(said), word) {
				t.Errorf("%q stands in:\n%s", word, said)
			}
		}
	}
}

// clipboard is the text that the program has copied.
func (d *drive) clipboard() string {
	d.tb.Helper()
	if offscreen.Missing("xclip") != nil {
		d.tb.Skip("xclip is not installed (`go run ./cmd/dev test` installs it)")
	}
	cmd := exec.CommandContext(d.tb.Context(), "xclip", "-o", "-selection", "clipboard")
	cmd.Env = append(os.Environ(), "DISPLAY="+d.server.Display)
	out, err := cmd.CombinedOutput()
	if err != nil || !strings.Contains(string(out), version) {
		d.tb.Fatalf("the clipboard holds %q, %v, want the details", out, err)
	}
	return string(out)
}

// draftsOf counts the quotes of a customer with that name and address.
func draftsOf(t *testing.T, path, name, address string) (n int) {
	t.Helper()
	shop, err := store.Open(t.Context(), path, store.Options{ReadOnly: true})
	if err != nil {
		t.Fatal(err)
	}
	defer shop.Close()
	rows, err := shop.Quotes(t.Context(), store.QuoteFilter{})
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range rows {
		draft, err := shop.Draft(t.Context(), r.ID)
		if err != nil {
			t.Fatal(err)
		}
		if draft.Customer.Name == name && draft.Customer.Email == address {
			n++
		}
	}
	return n
}
