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

// row sets one row; the columns of wrap are broken over lines, others are cut with an ellipsis.
func (t *table) row(texts []string, styles []paper.Style, wrap int) {
	lines := []string{""}
	if wrap >= 0 {
		if w := letters.Wrap(texts[wrap], styles[wrap].Weight, styles[wrap].Size, t.columns[wrap].width); len(w) > 0 {
			lines = w
		}
	}
	const lead = 12.5
	t.d.need(lead*float64(min(len(lines), 4)) + 5)
	t.d.y += 3
	for i, c := range t.columns {
		if i != wrap {
			s := styles[i]
			if s.Width(texts[i]) > c.width && s.Size > small.Size {
				s.Size = small.Size // a little smaller before it is cut
			}
			t.cell(c, texts[i], s, t.d.y+lead-3.2)
		}
	}
	for _, l := range lines {
		t.d.need(lead)
		if wrap >= 0 {
			t.cell(t.columns[wrap], l, styles[wrap], t.d.y+lead-3.2)
		}
		t.d.y += lead
	}
	t.d.y += 2
	t.d.hairline()
}

// plain is one style for every column.
func plain(n int, s paper.Style) []paper.Style {
	out := make([]paper.Style, n)
	for i := range out {
		out[i] = s
	}
	return out
}
