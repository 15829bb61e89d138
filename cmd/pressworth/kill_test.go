package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"pressworth/catalog"
	"pressworth/catalog/store"
)

// busy is a program that works on a shop file without end, to be killed: it saves quotes, imports price files and takes
// the imports back, and makes backups. What is done and kept it says on standard output, a line each, after it is done.
func busy() {
	ctx := context.Background()
	shop, err := openShop(ctx, os.Args[1], true)
	if err != nil {
		fmt.Println("error:", err)
		os.Exit(1)
	}
	fmt.Println("open")
	for i := 0; ; i++ {
		if err := busyStep(ctx, shop, i); err != nil {
			fmt.Println("error:", err)
			os.Exit(1)
		}
	}
}

func busyStep(ctx context.Context, shop *store.Store, i int) error {
	kept, err := shop.SaveDraft(ctx, catalog.Draft{Title: fmt.Sprint("job ", i), QuotedOn: "2026-05-04"}, nil)
	if err != nil {
		return err
	}
	fmt.Println("saved", kept.Number)
	switch i % 4 {
	case 1:
		err = busyImport(ctx, shop, i)
	case 2:
		_, err = shop.UndoImport(ctx)
	case 3:
		_, err = shop.Backup(ctx, filepath.Join(filepath.Dir(shop.Path()), "backups"))
	}
	return err
}

func busyImport(ctx context.Context, shop *store.Store, i int) error {
	suppliers, err := shop.Suppliers(ctx)
	if err != nil {
		return err
	}
	rows := func(take func(catalog.PriceRow) error, _ func(catalog.Refused)) error {
		for k := range 300 {
			row := catalog.PriceRow{
				Line: k + 2, Style: fmt.Sprint("KILL-", k/3), Name: "Everyday tee", Color: "Navy", Size: []string{"S", "M", "L"}[k%3],
				Piece: catalog.Myriad(40000 + i*100),
			}
			if err := take(row); err != nil {
				return err
			}
		}
		return nil
	}
	plan, err := shop.PlanImport(ctx, rows, catalog.ImportOptions{
		SupplierID: suppliers[0].ID, FileName: "kill.csv", ValidFrom: time.Now().Format(time.DateOnly),
	})
	if err != nil {
		return err
	}
	_, err = shop.Apply(ctx, plan, nil)
	return err
}

// kills is how often the program is killed: a few in a test, hundreds in `go run ./cmd/dev long`.
func kills(t *testing.T) int {
	t.Helper()
	text := os.Getenv("PRESSWORTH_KILLS")
	if text == "" {
		return 20
	}
	n, err := strconv.Atoi(text)
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// The program is killed at random instants while it works, and while it moves an old file to the newest schema; the shop must open each time, sound, with every quote that
// was said to be saved, and imports whole or not at all.
func TestKill_nothingAcknowledgedIsLost(t *testing.T) {
	path := filepath.Join(t.TempDir(), "shop.db")
	program, err := exec.LookPath("busy")
	if err != nil {
		t.Fatal(err)
	}
	saved, left := map[string]bool{}, map[int]int{}
	moving := newMover(t, program)
	for i := range kills(t) {
		if i%5 == 4 {
			left[moving.kill(t, i)]++
			continue
		}
		// one in four is killed while it opens the shop, or makes it
		fresh := runAndKill(t, program, path, i%4 == 0, time.Duration(rand.IntN(400))*time.Millisecond)
		for _, number := range fresh {
			saved[number] = true
		}
		if i%50 == 0 { // looking for every one each time would take longer than the kills
			fresh = slices.Collect(maps.Keys(saved))
		}
		lookThrough(t, i, path, fresh, len(saved))
	}
	lookThrough(t, kills(t), path, slices.Collect(maps.Keys(saved)), len(saved))
	if len(saved) < 20 {
		t.Errorf("only %d quotes were saved in all: the kills came too early to test anything", len(saved))
	}
	t.Logf("%d kills, %d quotes saved, none lost; schemas at which moving was cut off: %v", kills(t), len(saved), left)
}

// runAndKill starts the program, kills it some time after its start or after its shop is open, and returns the quotes it
// said it saved.
func runAndKill(t *testing.T, program, path string, early bool, after time.Duration) (saved []string) {
	t.Helper()
	cmd := exec.Command(program, path)
	out, err := cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	kill := func() { _ = cmd.Process.Kill() }
	if early {
		time.AfterFunc(after, kill)
	}
	for in := bufio.NewScanner(out); in.Scan(); {
		word, rest, _ := strings.Cut(in.Text(), " ")
		switch word {
		case "open":
			if !early {
				time.AfterFunc(after, kill)
			}
		case "saved":
			saved = append(saved, rest)
		default:
			t.Errorf("the program said: %s", in.Text())
		}
	}
	_ = cmd.Wait() // killed: its exit says nothing
	return saved
}

// lookThrough wants a sound shop with as many quotes as were ever saved at the least, and the named ones among them.
func lookThrough(t *testing.T, kill int, path string, saved []string, all int) {
	t.Helper()
	found, err := store.Check(t.Context(), path)
	if errors.Is(err, os.ErrNotExist) && all == 0 {
		return // killed before there was a shop at all
	}
	if err != nil || found.Problems != nil || found.Counts["quote"] < all {
		t.Fatalf("after kill %d: %d quotes of %d, %v, %v", kill, found.Counts["quote"], all, found.Problems, err)
	}
	shop, err := store.Open(t.Context(), path, store.Options{})
	if err != nil {
		t.Fatalf("after kill %d: %v", kill, err)
	}
	defer shop.Close()
	for _, number := range saved {
		if rows, err := shop.Quotes(t.Context(), store.QuoteFilter{Words: number, Limit: 1}); err != nil || len(rows) != 1 {
			t.Fatalf("after kill %d: quote %s was saved and is not there: %v, %v", kill, number, rows, err)
		}
	}
	if styles, err := shop.FindBlanks(t.Context(), "kill", 1000); err != nil || len(styles) != 0 && len(styles) != 100 {
		t.Fatalf("after kill %d: %d of 100 imported styles, %v: an import was half done", kill, len(styles), err)
	}
	backups, err := store.Backups(filepath.Join(filepath.Dir(path), "backups"))
	if err != nil {
		t.Fatal(err)
	}
	for _, b := range backups[:min(len(backups), 2)] { // the older ones were looked through before
		if c, err := store.Check(t.Context(), b.Path); err != nil || c.Problems != nil {
			t.Fatalf("after kill %d: backup %s: %v, %v", kill, b.Path, c.Problems, err)
		}
	}
}
