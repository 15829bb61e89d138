package export

import (
	"pressworth/export/letters"
	"pressworth/export/paper"
)

// column is one column of a table.
type column struct {
	title string
	x     float64 // where its text begins, or ends where right
	width float64
	right bool
}

// table sets rows under heads, which come again on every page.
type table struct {
	d       *doc
	columns []column
}

// columnsOf spreads columns over the width: shares of what fixed widths leave, right-aligned ones named by a leading ">".
func (d *doc) columnsOf(specs ...columnSpec) []column {
	shares, fixed := 0.0, 0.0
	for _, s := range specs {
		shares += s.share
		fixed += s.width
	}
	const between = 10
	rest := d.right - d.left - fixed - between*float64(len(specs)-1)
	x := d.left
	out := make([]column, len(specs))
	for i, s := range specs {
		w := s.width
		if s.share > 0 {
			w = rest * s.share / shares
		}
		out[i] = column{title: s.title, x: x, width: w, right: s.right}
		if s.right {
			out[i].x = x + w
		}
		x += w + between
	}
	return out
}

type columnSpec struct {
	title string
	share float64
	width float64
	right bool
}

func (d *doc) table(specs ...columnSpec) *table {
	t := &table{d: d, columns: d.columnsOf(specs...)}
	d.need(40)
	t.heads()
	d.repeat = t.heads
	return t
}

// end lets later pages begin without this table's heads.
func (t *table) end() { t.d.repeat = nil }

func (t *table) heads() {
	t.d.y += 12
	for _, c := range t.columns {
		t.cell(c, c.title, caption, t.d.y-3)
	}
	t.d.y += 2
	t.d.hairline()
}

func (t *table) cell(c column, text string, s paper.Style, y float64) {
	text = letters.Clip(text, s.Weight, s.Size, c.width)
	if c.right {
		paper.Right(t.d, c.x, y, text, s)
		return
	}
	t.d.Text(c.x, y, text, s)
}

const lead = 12.5 // from line to line within a row

// row sets one row and returns the height at which it begins. Text breaks over lines, figures stand on the first.
func (t *table) row(texts []string, styles []paper.Style) (top float64) {
	cells := make([][]string, len(texts))
	styles = append([]paper.Style(nil), styles...)
	high := 1
	for i, c := range t.columns {
		cells[i], styles[i] = c.lines(texts[i], styles[i])
		high = max(high, len(cells[i]))
	}
	t.d.need(lead*float64(min(high, 8)) + 5)
	t.d.y += 3
	top = t.d.y
	for k := range high {
		t.d.need(lead)
		for i, c := range t.columns {
			if k < len(cells[i]) {
				t.cell(c, cells[i][k], styles[i], t.d.y+lead-3.2)
			}
		}
		t.d.y += lead
	}
	t.d.y += 2
	t.d.hairline()
	return top
}

// lines breaks a text into those that fit, a little smaller where that saves breaking it.
func (c column) lines(text string, s paper.Style) ([]string, paper.Style) {
	if s.Width(text) <= c.width {
		return []string{text}, s
	}
	smaller := s
	smaller.Size = min(s.Size, small.Size)
	if smaller.Width(text) <= c.width || c.right {
		return []string{text}, smaller
	}
	return letters.Wrap(text, s.Weight, s.Size, c.width), s
}

// tick sets an open box in a column of the row that begins at top.
func (t *table) tick(column int, top float64) {
	paper.Box(t.d, t.columns[column].x, top+2, 9, 9, paper.Look{Stroke: ink, Width: 0.8})
}

// plain is one style for every column.
func plain(n int, s paper.Style) []paper.Style {
	out := make([]paper.Style, n)
	for i := range out {
		out[i] = s
	}
	return out
}
