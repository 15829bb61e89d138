//go:build linux && cgo

package main

import (
	"database/sql"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// soakRounds says how many rounds of work the window goes through: minutes of them in the long form, seconds where
// nothing is said.
const soakRounds = "PRESSWORTH_SOAK_ROUNDS"

// warmUp is how many rounds fill caches, fonts and pages that are made once.
const warmUp = 2

// windowLoad is what must not grow with the work.
type windowLoad struct {
	goroutines, handles int
	heap, memory        float64 // megabytes: of Go's after a collection, and of the process with its pictures
}

func (l windowLoad) String() string {
	return fmt.Sprintf("%d goroutines, %d handles, %.1f MB heap, %.0f MB in all", l.goroutines, l.handles, l.heap, l.memory)
}

func (d *drive) load() (l windowLoad) {
	d.tb.Helper()
	d.still()
	if err := syscall.Kill(d.Pid(), syscall.SIGUSR1); err != nil {
		d.tb.Fatal(err)
	}
	if _, err := fmt.Sscan(d.wait("pressworth: load"), &l.goroutines, &l.heap); err != nil {
		d.tb.Fatal(err)
	}
	handles, err := os.ReadDir(fmt.Sprintf("/proc/%d/fd", d.Pid()))
	if err != nil {
		d.tb.Fatal(err)
	}
	l.handles, l.heap, l.memory = len(handles), l.heap/1e6, d.megabytes("VmRSS")
	return l
}

// The real window goes through rounds of work by its keys: a quote is typed, saved, revised, sent and accepted, a price
// file is imported, blanks are searched. Goroutines, handles and memory stay as after the first rounds, and the shop
// file grows by what was kept: a quote, its frozen revision with the prices it was made with, what is to buy for it, and
// the prices that changed.
func TestSoak_windowStaysAsItWas(t *testing.T) {
	rounds := 1
	if text := os.Getenv(soakRounds); text != "" {
		n, err := strconv.Atoi(text)
		if err != nil {
			t.Fatal(err)
		}
		rounds = n
	}
	d := openWindowed(t, "--demo")
	d.wait("pressworth: backed up")
	path := filepath.Join(d.Home, "data", "pressworth", "demo.db")
	before := shopCounts(t, path)
	for round := range warmUp {
		d.round(round)
	}
	first, size := d.load(), fileSize(t, path)
	t.Logf("after %d rounds to begin with: %v", warmUp, first)
	for round := warmUp; round < warmUp+rounds; round++ {
		d.round(round)
	}
	last := d.load()
	d.key("ctrl+q")
	if err := d.Ended(patience); err != nil {
		t.Fatal(err)
	}
	each := float64(fileSize(t, path)-size) / float64(rounds)
	t.Logf("after %d rounds more: %v; %.0f bytes of file a round", rounds, last, each)
	if last.goroutines > first.goroutines+2 || last.handles > first.handles+2 || last.heap > 1.25*first.heap+8 || last.memory > 1.25*first.memory+20 {
		t.Errorf("after the first rounds %v, after the last %v", first, last)
	}
	if each > 96<<10 {
		t.Errorf("the file grew by %.0f bytes a round: more than was kept", each)
	}
	after := shopCounts(t, path)
	for what, n := range after {
		if n-before[what] != warmUp+rounds {
			t.Errorf("%s: %d before, %d after %d rounds: the keys did not do the work", what, before[what], n, warmUp+rounds)
		}
	}
}

// round is one piece of work after the other, by keys alone.
func (d *drive) round(n int) {
	d.tb.Helper()
	title := fmt.Sprintf("soak%d", n)
	d.key("ctrl+n")
	for _, step := range teamQuote {
		if step.text != "" {
			d.text(step.text)
		}
		d.key(step.then)
	}
	d.key("ctrl+s", "ctrl+1", "Tab", "Tab", "Tab")
	d.text(title)
	d.key("ctrl+s")
	d.calm()
	d.key("ctrl+2")
	d.text(title)
	d.calm()
	d.key("Return")
	for range 3 { // Send, that it is meant, Accepted
		d.calm()
		d.key("space")
	}
	d.calm()
	d.key("Escape", "ctrl+3")
	for _, words := range []string{"hood", "tee nav", "ls"} {
		d.key("ctrl+a")
		d.text(words)
		d.calm()
	}
	d.importPrices(n)
}

// importPrices takes a small price file in, from the search of the Blanks through the three steps.
func (d *drive) importPrices(n int) {
	d.tb.Helper()
	file := filepath.Join(d.Home, "list.csv")
	list := fmt.Sprintf("Style,Name,Color,Size,Price\nSOAK1,Tee,Navy,M,%d.%02d\nSOAK2,Tee,Navy,L,%d.10\n", 3+n/90, 10+n%90, 4+n)
	if err := os.WriteFile(file, []byte(list), 0o600); err != nil {
		d.tb.Fatal(err)
	}
	d.key("Tab", "Tab", "Tab", "Tab", "Tab", "Tab", "Tab", "space")
	d.calm()
	d.text(file)
	d.key("Tab", "Tab", "Tab", "Tab", "Tab", "space")
	for range 2 { // Compare, Take these prices
		d.calm()
		d.key("space")
	}
	d.calm()
	d.key("Escape")
	d.calm()
}

// shopCounts is what a round adds one of each of.
func shopCounts(t *testing.T, path string) map[string]int {
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
	counts := map[string]int{"quotes": 0, "accepted": 0}
	for _, r := range rows {
		if strings.HasPrefix(r.Title, "soak") {
			counts["quotes"]++
			if r.State == catalog.Accepted {
				counts["accepted"]++
			}
		}
	}
	check, err := store.Check(t.Context(), path)
	if err != nil {
		t.Fatal(err)
	}
	counts["imports"] = check.Counts["price_file"]
	return counts
}

// fileSize is how large the shop is in bytes, with what still lies in its log.
func fileSize(t *testing.T, path string) (bytes int64) {
	t.Helper()
	db, err := sql.Open("sqlite", path)
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	if err := db.QueryRowContext(t.Context(), "SELECT page_count * page_size FROM pragma_page_count, pragma_page_size").Scan(&bytes); err != nil {
		t.Fatal(err)
	}
	return bytes
}

// calm waits until nothing has moved for a while: a page of the book is read in the background before it is drawn.
func (d *drive) calm() {
	d.tb.Helper()
	if _, err := d.Settled(whole, 500*time.Millisecond, patience); err != nil {
		d.tb.Fatal(err)
	}
}
