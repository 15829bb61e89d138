//go:build linux && cgo

package main

import (
	"image"
	"os"
	"slices"
	"testing"
	"time"

	"pressworth/cmd/internal/offscreen"
)

// The window's benchmarks run the built program on an X server without a monitor and look at its pixels; each figure
// stands beside the same one of a bare window of the toolkit, in the same run. PRESSWORTH_BARE names that window's
// binary.

func bare(b *testing.B) string {
	b.Helper()
	binary := os.Getenv("PRESSWORTH_BARE")
	if binary == "" || os.Getenv("PRESSWORTH_BINARY") == "" {
		b.Skip("PRESSWORTH_BINARY and PRESSWORTH_BARE name no binaries to measure: `go run ./cmd/dev bench` builds them")
	}
	return binary
}

// whole is the area of the window, form that of the form on the Counter: what stands beside it may move on its own.
var (
	whole = image.Rect(0, 0, 1400, 900)
	form  = image.Rect(0, 0, 930, 840)
)

// Start to first frame: from the start of the process to the first pixel that is not black, by turns with a bare window.
// Pressworth's first frame holds the grounds alone; filled is when the form stood in it, ready to be typed into.
func BenchmarkWindow_firstFrame(b *testing.B) {
	runs := []struct {
		name, binary, home string
		args               []string
		took               []time.Duration
	}{
		{name: "bare", binary: bare(b), home: b.TempDir()},
		{name: "demo", binary: built(b), home: b.TempDir(), args: []string{"--demo"}},
	}
	var filled []time.Duration
	start := func(binary, home string, args []string) time.Duration {
		server := newServer(b)
		defer server.Stop()
		began := time.Now()
		d := startOn(b, server, binary, home, args...)
		defer d.Kill()
		d.lit()
		lit := time.Since(began)
		if args != nil {
			d.wait("pressworth: first frame")
			filled = append(filled, time.Since(began))
		}
		return lit
	}
	start(runs[1].binary, runs[1].home, runs[1].args) // the demo shop is made once
	filled = nil
	for b.Loop() {
		for i, r := range runs {
			runs[i].took = append(r.took, start(r.binary, r.home, r.args))
		}
	}
	for _, r := range runs {
		b.ReportMetric(milliseconds(r.took, 50), r.name+"-p50-ms")
	}
	b.ReportMetric(milliseconds(filled, 50), "filled-p50-ms")
	b.ReportMetric(milliseconds(runs[1].took, 50)/milliseconds(runs[0].took, 50), "ratio")
	b.ReportMetric(0, "ns/op")
}

func (d *drive) lit() {
	d.tb.Helper()
	if err := d.Lit(image.Rect(690, 440, 710, 460), patience); err != nil {
		d.tb.Fatal(err, d.Said())
	}
}

// Key press to changed pixel, in the field that is typed into.
func BenchmarkWindow_keyToPixel(b *testing.B) {
	entries := bare(b)
	b.Run("bare window with 60 entries", func(b *testing.B) {
		d := startOn(b, newServer(b), entries, b.TempDir(), "60")
		d.lit()
		d.measureKeys(b)
	})
	b.Run("empty form", func(b *testing.B) {
		d := openWindowed(b, "--demo")
		d.key("ctrl+n")
		d.measureKeys(b)
	})
	b.Run("demo job", func(b *testing.B) {
		d := openWindowed(b, "--demo")
		d.wait("pressworth: priced")
		d.key("Return", "Tab", "Tab", "Tab") // past the search and the colour, into the first size
		d.measureKeys(b)
	})
}

// measureKeys types a digit and takes it back, over and over, in the field that has the focus.
func (d *drive) measureKeys(b *testing.B) {
	b.Helper()
	area := d.typedArea()
	keys := []rune{'1', offscreen.BackSpace}
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		t, err := d.Answer(keys[i%2], area, patience)
		if err != nil {
			b.Fatal(err)
		}
		took = append(took, t)
		d.still()
	}
	report(b, took)
}

// typedArea finds a small area that a typed digit changes. The whole window is drawn in one frame, so what changes
// first is as good as any other.
func (d *drive) typedArea() image.Rectangle {
	d.tb.Helper()
	var with, without *image.RGBA
	for _, shown := range []struct {
		key     rune
		picture **image.RGBA
	}{{'1', &with}, {offscreen.BackSpace, &without}} {
		d.still()
		if _, err := d.Answer(shown.key, whole, patience); err != nil {
			d.tb.Fatal(err)
		}
		*shown.picture = d.still()
	}
	at, differ := offscreen.FirstDifference(with, without, form)
	if !differ {
		d.tb.Fatal("a typed digit shows nowhere")
	}
	return image.Rect(at.X, at.Y, at.X+16, at.Y+16)
}

// still waits until nothing moves, and returns the picture.
func (d *drive) still() *image.RGBA {
	d.tb.Helper()
	img, err := d.Settled(whole, 150*time.Millisecond, patience)
	if err != nil {
		d.tb.Fatal(err)
	}
	return img
}

// report gives the middle and the ninth tenth of the times in place of their mean.
func report(b *testing.B, took []time.Duration) {
	b.ReportMetric(milliseconds(took, 50), "p50-ms")
	b.ReportMetric(milliseconds(took, 90), "p90-ms")
	b.ReportMetric(0, "ns/op")
}

// milliseconds is the time that so many percent of all stayed within.
func milliseconds(took []time.Duration, percent int) float64 {
	sorted := slices.Sorted(slices.Values(took))
	return float64(sorted[len(sorted)*percent/100].Microseconds()) / 1000
}
