package sizes

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// MaxPieces is the most of one size that is read.
const MaxPieces = 100_000

// Count is a number of pieces of one size.
type Count struct {
	Size string
	Qty  int
}

// Problems are all the things wrong with what was typed.
type Problems []string

// Error joins them to one line.
func (p Problems) Error() string { return strings.Join(p, "; ") }

// Parse reads a size run as it is typed or pasted: "S12 M24 2XL6" by names; "6/11/9/0/3", "6 11 9" or a row of a
// spreadsheet by the order of run, the sizes at hand, where a dash or nothing stands for 0; or two rows of a
// spreadsheet, sizes over quantities. Without run every usual size is known, and sizes go by name only. The counts come
// in the order of run, else in the order of sizes; what was understood is given beside the error, which is Problems.
func Parse(text string, run []string) ([]Count, error) {
	p := parser{run: run, got: map[string]int{}}
	switch cells, header := split(text); {
	case header != nil:
		p.columns(header, cells)
	case cells != nil:
		p.positions(cells)
	default:
		p.named(text)
	}
	if len(p.problems) > 0 {
		return p.counts(), p.problems
	}
	return p.counts(), nil
}

var (
	cell    = regexp.MustCompile(`^([0-9]*|[-–—])$`)
	numbers = regexp.MustCompile(`^[0-9]+$`)
)

// split finds out whether the text goes by position, and gives its cells; header holds the sizes over them, if any.
func split(text string) (cells, header []string) {
	lines := strings.Split(strings.Trim(strings.ReplaceAll(text, "\r\n", "\n"), "\n"), "\n")
	if len(lines) == 2 && strings.Contains(lines[0], "\t") {
		header, cells = trimmed(strings.Split(lines[0], "\t")), trimmed(strings.Split(lines[1], "\t"))
		if quantities(cells) && !quantities(header) {
			return cells, header
		}
	}
	if len(lines) > 1 {
		return nil, nil
	}
	for _, mark := range []string{"\t", "/"} {
		if cells := trimmed(strings.Split(lines[0], mark)); len(cells) > 1 && quantities(cells) {
			return cells, nil
		}
	}
	words := strings.FieldsFunc(lines[0], separators)
	if len(words) > 0 && quantities(words) {
		return words, nil
	}
	return nil, nil
}

func separators(r rune) bool { return strings.ContainsRune(" \t\n\r,;\u00a0", r) }

func trimmed(cells []string) []string {
	for i, c := range cells {
		cells[i] = strings.TrimSpace(c)
	}
	return cells
}

func quantities(cells []string) bool {
	return !slices.ContainsFunc(cells, func(c string) bool { return !cell.MatchString(c) })
}

type parser struct {
	run      []string
	got      map[string]int
	problems Problems
}

func (p *parser) fail(format string, args ...any) {
	p.problems = append(p.problems, fmt.Sprintf(format, args...))
}

// counts lists what was understood.
func (p *parser) counts() []Count {
	var counts []Count
	for size, qty := range p.got {
		counts = append(counts, Count{size, qty})
	}
	slices.SortFunc(counts, func(a, b Count) int {
		if i, j := slices.Index(p.run, a.Size), slices.Index(p.run, b.Size); i != j {
			return i - j
		}
		return compare(a.Size, b.Size)
	})
	return counts
}

// positions gives the cells to the sizes of the run in their order.
func (p *parser) positions(cells []string) {
	for len(cells) > 1 && cells[len(cells)-1] == "" {
		cells = cells[:len(cells)-1]
	}
	switch {
	case len(p.run) == 0:
		p.fail("write each quantity behind its size, like S12 M24")
		return
	case len(cells) == 1 && len(p.run) > 1:
		p.fail("%s of which size? Write %s%s, or one quantity a size: %s", clip(cells[0]), p.run[0], clip(cells[0]), p.list())
		return
	case len(cells) > len(p.run):
		p.fail("%d quantities, but %d sizes: %s", len(cells), len(p.run), p.list())
		return
	}
	for i, c := range cells {
		p.add(p.run[i], c)
	}
}

// columns gives the cells to the sizes above them.
func (p *parser) columns(header, cells []string) {
	for i, name := range header {
		if name == "" || i >= len(cells) {
			continue
		}
		if size, ok := p.size(name); ok {
			p.add(size, cells[i])
		}
	}
	if len(cells) > len(header) {
		p.fail("%d quantities under %d sizes", len(cells), len(header))
	}
}

// size finds the size that is meant by a name.
func (p *parser) size(name string) (string, bool) {
	normal := Normal(name)
	for _, s := range p.run {
		if Normal(s) == normal {
			return s, true
		}
	}
	class, _ := place(normal)
	switch {
	case len(p.run) > 0:
		p.fail("%s is none of the sizes here: %s", clip(name), p.list())
		return "", false
	case class == other || class == numbered:
		p.fail("%s is no size known here: write one like S, 2XL, YM, 3T or OS", clip(name))
		return "", false
	}
	return normal, true
}

func (p *parser) list() string { return clip(strings.Join(p.run, ", ")) }

func (p *parser) add(size, quantity string) {
	n, err := quantityOf(quantity)
	if err != nil {
		p.fail("%s %v", size, err)
		return
	}
	if _, twice := p.got[size]; twice {
		p.fail("%s is given twice: write it once", size)
		return
	}
	p.got[size] = n
}

func quantityOf(s string) (int, error) {
	if !numbers.MatchString(s) {
		return 0, nil // a dash or nothing
	}
	n, err := strconv.Atoi(s)
	if err != nil || n > MaxPieces {
		return 0, errors.New(clip(s) + ": enter at most 100000")
	}
	return n, nil
}

func clip(s string) string {
	if r := []rune(s); len(r) > 80 {
		return string(r[:80]) + "…"
	}
	return s
}
