//go:build linux && cgo

package main

import (
	"bufio"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"
)

// What the window costs while nobody touches it, with 250 000 blanks in the shop: processor time with a focused field
// and, on the customer's side, without one; memory beside that of an empty window, and how much of it is the program's
// own, which the system cannot read again from a file.
func BenchmarkWindow_idle(b *testing.B) {
	b.Run("empty window", func(b *testing.B) {
		d := startOn(b, newServer(b), bare(b), b.TempDir())
		d.lit()
		d.still()
		d.measureIdle(b)
	})
	binary, home := built(b), b.TempDir()
	demo := stocked(b, binary, home)
	at := func(b *testing.B) *drive {
		d := startOn(b, newServer(b), binary, home, "--demo", "--shop", demo)
		d.wait("pressworth: at rest")
		return d
	}
	b.Run("a focused field", func(b *testing.B) { at(b).measureIdle(b) })
	b.Run("none", func(b *testing.B) {
		d := at(b)
		d.key("ctrl+t")
		d.wait("pressworth: customer's side")
		d.wait("pressworth: at rest")
		d.measureIdle(b)
	})
	b.Run("after typing", func(b *testing.B) {
		d := at(b)
		for range 20 {
			d.key("a", "BackSpace")
		}
		d.wait("pressworth: at rest")
		d.measureIdle(b)
	})
}

// stocked makes the demo shop and takes a list of 250 000 rows into it, ten colours and five sizes of 5 000 styles.
func stocked(b *testing.B, binary, home string) (shop string) {
	b.Helper()
	shop = filepath.Join(home, "demo.db")
	d := startOn(b, newServer(b), binary, home, "--demo", "--shop", shop)
	d.wait("pressworth: first frame")
	d.Kill()
	list := filepath.Join(home, "list.csv")
	f, err := os.Create(list)
	if err != nil {
		b.Fatal(err)
	}
	w := bufio.NewWriter(f)
	fmt.Fprintln(w, "Style,Description,Category,Colour,Size,Piece")
	for i := range 250_000 {
		style, size := i/50, []string{"S", "M", "L", "XL", "2XL"}[i%5]
		fmt.Fprintf(w, "Z%05d,Harbour tee,Tee,Colour %d,%s,%d.%02d\n", style, i/5%10, size, 3+style%20, style%100)
	}
	if err := w.Flush(); err != nil {
		b.Fatal(err)
	}
	if err := f.Close(); err != nil {
		b.Fatal(err)
	}
	cmd := exec.Command(binary, "blanks", "import", list, "--supplier", "Ravenna", "--shop", shop)
	if out, err := cmd.CombinedOutput(); err != nil {
		b.Fatalf("%v: %s", err, out)
	}
	return shop
}

// measureIdle looks at the window while nobody touches it.
func (d *drive) measureIdle(b *testing.B) {
	b.Helper()
	const look = 8 * time.Second
	for b.Loop() {
		before := d.ticks()
		<-time.After(look)
		b.ReportMetric(float64(d.ticks()-before)/look.Seconds(), "cpu%") // a tick is a hundredth of a second
	}
	b.ReportMetric(d.megabytes("VmRSS"), "MB")
	b.ReportMetric(d.megabytes("RssAnon"), "own-MB")
	b.ReportMetric(0, "ns/op")
}

// ticks is the processor time used so far, in hundredths of a second: fields 14 and 15 of proc(5)'s stat.
func (d *drive) ticks() (sum int) {
	d.tb.Helper()
	stat, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", d.Pid()))
	if err != nil {
		d.tb.Fatal(err)
	}
	fields := strings.Fields(string(stat[strings.LastIndexByte(string(stat), ')')+1:]))
	for _, f := range fields[11:13] {
		n, err := strconv.Atoi(f)
		if err != nil {
			d.tb.Fatal(err)
		}
		sum += n
	}
	return sum
}

// megabytes is the memory held: a line of proc(5)'s status.
func (d *drive) megabytes(line string) float64 {
	d.tb.Helper()
	status, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", d.Pid()))
	if err != nil {
		d.tb.Fatal(err)
	}
	_, rest, _ := strings.Cut(string(status), line+":")
	kb, err := strconv.Atoi(strings.Fields(rest)[0])
	if err != nil {
		d.tb.Fatal(err)
	}
	return float64(kb) / 1024
}
