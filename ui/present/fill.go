package present

import (
	"strconv"
	"strings"
	"unicode"

	"pressworth/catalog"
	"pressworth/quote/sizes"
)

// FillSizes takes a size run typed or pasted into the cell of one size: "6/11/9/0/3" and rows of a spreadsheet go from
// that cell on, "S12 M24" by name. What could be understood is taken; the rest is said beside the line.
func (c *Counter) FillSizes(key, size, text string) {
	g := garmentAt(&c.draft, key)
	if g == nil {
		return
	}
	counts, err := readSizes(*g, size, text)
	if c.rowProblems == nil {
		c.rowProblems = map[string]string{}
	}
	delete(c.rowProblems, key)
	if err != nil {
		c.rowProblems[key] = err.Error()
	}
	c.garment("fill "+key+size, key, func(g *catalog.DraftGarment) {
		setSize(g, size, "")
		for _, n := range counts {
			setSize(g, n.Size, quantity(n.Qty))
		}
	})
}

func quantity(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// IsSizeRun tells a size run from the quantity of one size.
func IsSizeRun(text string) bool {
	text = strings.TrimSpace(text)
	return strings.ContainsFunc(text, func(r rune) bool { return !unicode.IsDigit(r) && r != '-' && r != '+' && r != '.' })
}

func readSizes(g catalog.DraftGarment, size, text string) ([]sizes.Count, error) {
	named := strings.ContainsFunc(text, unicode.IsLetter)
	if named && g.StyleID == 0 {
		return sizes.Parse(text, nil)
	}
	var run []string
	from := false
	for _, s := range g.Sizes {
		from = from || named || s.Size == size
		if from {
			run = append(run, s.Size)
		}
	}
	return sizes.Parse(text, run)
}

// SizesOf lists what a line holds for the given sizes, and what could not be read of the last size run.
func (c *Counter) SizesOf(key string, run []string) (qty []string, problem string) {
	qty = make([]string, len(run))
	if g := garmentAt(&c.draft, key); g != nil {
		for i, size := range run {
			for _, s := range g.Sizes {
				if s.Size == size {
					qty[i] = s.Qty
				}
			}
		}
	}
	return qty, c.rowProblems[key]
}
