package shop

import (
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
)

// table makes the grid of a list, with what is wrong in it below.
func (p *Place) table(t table, first, wide float32) fyne.CanvasObject {
	g := parts.NewGrid(first, wide).Words(t.words...)
	p.grids[t.path] = g
	put := func(row, col int, text string) {
		rows := p.rows[t.path]
		for len(rows) <= row {
			rows = append(rows, nil)
		}
		for len(rows[row]) < len(t.heads) {
			rows[row] = append(rows[row], "")
		}
		if col < len(t.heads) {
			rows[row][col] = text
		}
		p.rows[t.path] = rows
	}
	g.OnChanged = func(row, col int, text string) {
		put(row, col, text)
		p.fillTable(t)
		p.touched()
	}
	g.OnPaste = func(row, col int, cells [][]string) {
		for r, line := range cells {
			for c, text := range line {
				put(row+r, col+c, text)
			}
		}
		p.fillTable(t)
		p.touched()
	}
	return p.form.Around(t.path, t.caption, g)
}

// fillTable shows a table's rows with an empty one below.
func (p *Place) fillTable(t table) {
	rows := slices.Clone(p.rows[t.path])
	if n := len(rows); n == 0 || len(filled(rows[n-1:])) > 0 {
		rows = append(rows, make([]string, len(t.heads)))
	}
	p.grids[t.path].Set(t.heads, rows)
}
