package compare

import (
	"bytes"
	"embed"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"pressworth/quote/nest"
)

//go:embed pack.js
var script embed.FS

const (
	version = "2.7.3" // later ones have no entry that node can require
	sets    = 200
	steps   = 2_000_000 // of effort a set
)

// BenchmarkAgainstMaxrectsPacker prints what each packer takes. It fetches the npm package, and so runs only when asked.
func BenchmarkAgainstMaxrectsPacker(b *testing.B) {
	if os.Getenv("PRESSWORTH_COMPARE") == "" {
		b.Skip("PRESSWORTH_COMPARE is not set: the comparison needs node, npm and the npm registry")
	}
	for b.Loop() {
		if err := run(); err != nil {
			b.Fatal(err)
		}
	}
}

// set is what both packers get; lengths in eighths of an inch, h 0 for a roll.
type set struct {
	W     int64      `json:"w"`
	H     int64      `json:"h"`
	Gap   int64      `json:"gap"`
	Edge  int64      `json:"edge"`
	Rects [][2]int64 `json:"rects"`

	pieces []nest.Piece
}

func run() error {
	all := draw()
	theirs, err := theirs(all)
	if err != nil {
		return err
	}
	tallies := [2]tally{{name: "its defaults, turning allowed"}, {name: "the best of all its options and five orders"}}
	for i, s := range all {
		ours, err := ours(s)
		if err != nil {
			return err
		}
		for k := range tallies {
			tallies[k].add(i, ours, theirs[i][k])
		}
	}
	for _, t := range tallies {
		t.print()
	}
	if tallies[0].worse+tallies[1].worse > 0 || tallies[0].mean() < 4 {
		return errors.New("wanted: never more, and at least 4 % less than its defaults on average")
	}
	return nil
}

// tally gathers what the sets took here and there, on rolls (even sets) and on sheets.
type tally struct {
	name         string
	ours, theirs [2]int64
	saved        [2]float64
	n            [2]int
	worse        int
}

func (t *tally) add(i int, ours, theirs int64) {
	if theirs == 0 {
		return // no valid answer
	}
	if ours > theirs {
		t.worse++
		fmt.Printf("set %d: %d here, %d there (%s)\n", i, ours, theirs, t.name)
	}
	k := i % 2
	t.ours[k] += ours
	t.theirs[k] += theirs
	t.saved[k] += float64(theirs-ours) / float64(theirs)
	t.n[k]++
}

func (t *tally) mean() float64 {
	return 100 * (t.saved[0] + t.saved[1]) / float64(t.n[0]+t.n[1])
}

func (t *tally) print() {
	fmt.Printf("against maxrects-packer %s, %s:\n", version, t.name)
	for k, what := range []string{"22 in roll, eighths of an inch", "13 x 19 in, sheets"} {
		fmt.Printf("  %-31s %d sets  %6d here  %6d there  %4.1f %% less on average\n", what, t.n[k], t.ours[k], t.theirs[k], 100*t.saved[k]/float64(t.n[k]))
	}
	fmt.Printf("  together %.1f %% less on average, %d worse\n", t.mean(), t.worse)
}

func ours(s set) (int64, error) {
	sheet, effort := nest.Sheet{W: s.W, H: s.H, Edge: s.Edge, Gap: s.Gap}, nest.Effort{Steps: steps}
	if s.H == 0 {
		r, err := nest.Strip(sheet, s.pieces, effort)
		if err == nil {
			err = nest.Check(sheet, s.pieces, r.Placed)
		}
		return r.Length, err
	}
	r, err := nest.Bins(sheet, s.pieces, effort)
	if err == nil {
		err = nest.Check(sheet, s.pieces, r.Placed)
	}
	return int64(r.Sheets), err
}

// theirs asks the npm package.
func theirs(all []set) (out [][2]int64, err error) {
	folder, err := os.MkdirTemp("", "compare-")
	if err != nil {
		return nil, err
	}
	defer func() { err = errors.Join(err, os.RemoveAll(folder)) }()
	js, err := script.ReadFile("pack.js")
	if err != nil {
		return nil, err
	}
	if err := os.WriteFile(filepath.Join(folder, "pack.js"), js, 0o600); err != nil {
		return nil, err
	}
	install := exec.Command("npm", "install", "--no-audit", "--no-fund", "--silent", "--prefix", folder, "maxrects-packer@"+version)
	if text, err := install.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("npm install: %w\n%s", err, text)
	}
	in, err := json.Marshal(all)
	if err != nil {
		return nil, err
	}
	node := exec.Command("node", "pack.js")
	node.Dir, node.Stdin, node.Stderr = folder, bytes.NewReader(in), os.Stderr
	text, err := node.Output()
	if err != nil {
		return nil, fmt.Errorf("node: %w", err)
	}
	return out, json.Unmarshal(text, &out)
}

// draw draws the sets: 3 to 6 designs of a shop's sizes, 10 to 120 copies in all, in turn on a roll and on sheets.
func draw() []set {
	var d dice = 20260
	sizes := [][4]int64{ // width from, to, height from, to, in eighths of an inch
		{72, 96, 48, 100}, {24, 36, 16, 36}, {12, 24, 56, 96}, {24, 32, 24, 32}, {12, 24, 8, 16}, {40, 64, 40, 64}, {32, 48, 16, 32},
	}
	all := make([]set, sets)
	for i := range all {
		s := set{W: 176, Gap: 2}
		if i%2 == 1 {
			s = set{W: 104, H: 152, Gap: 2, Edge: 2}
		}
		designs := 3 + d.below(4)
		for range designs {
			z := sizes[d.below(int64(len(sizes)))]
			s.pieces = append(s.pieces, nest.Piece{W: z[0] + d.below(z[1]-z[0]+1), H: z[2] + d.below(z[3]-z[2]+1), Turn: true, Count: 1})
		}
		for range 10 + d.below(111) - designs {
			s.pieces[d.below(designs)].Count++
		}
		for _, p := range s.pieces {
			for range p.Count {
				s.Rects = append(s.Rects, [2]int64{p.W, p.H})
			}
		}
		all[i] = s
	}
	return all
}

// dice is a small generator of its own, so that the sets are the same everywhere (D. Lehmer 1951, with the constants
// of S. Park and K. Miller 1988).
type dice uint64

func (d *dice) below(n int64) int64 {
	*d = *d * 48271 % 2147483647
	return int64(*d) % n
}
