package cards

import "pressworth/ui/parts"

// most rows and columns that a pasted range may make.
const (
	mostRows    = 60
	mostColumns = 12
)

// grid shows one price table, with an empty row below, and an empty column where columns are steps.
func (e *editor) grid(i int) *parts.Grid {
	wide := float32(96)
	if e.text.blocks[i].steps {
		wide = 66
	}
	g := parts.NewGrid(136, wide)
	e.grids = append(e.grids, g)
	g.OnChanged = func(row, col int, text string) {
		e.put(i, row, col, text)
		e.fillGrid(i)
		e.touched("")
	}
	g.OnPaste = func(row, col int, cells [][]string) {
		row, col, cells = placed(row, col, cells, e.text.blocks[i].steps)
		for r, line := range cells {
			for c, text := range line {
				if row+r < mostRows && col+c < mostColumns && !(e.text.blocks[i].steps && row+r == 0 && col+c == 0) {
					e.put(i, row+r, col+c, tidy(text))
				}
			}
		}
		e.fillGrid(i)
		e.touched("")
	}
	e.fillGrid(i)
	return g
}

// put sets a cell, making rows and cells as far as needed.
func (e *editor) put(i, row, col int, text string) {
	b := &e.text.blocks[i]
	for len(b.cells) <= row {
		b.cells = append(b.cells, nil)
	}
	for len(b.cells[row]) <= col {
		b.cells[row] = append(b.cells[row], "")
	}
	b.cells[row][col] = text
}

func (e *editor) fillGrid(i int) {
	b := e.text.blocks[i]
	titles := append([]string{}, b.heads...)
	if b.steps {
		for range widest(b.cells) {
			titles = append(titles, "")
		}
	}
	rows := append([][]string{}, b.cells...)
	if n := len(rows); n == 0 || !blank(rows[n-1]) {
		rows = append(rows, make([]string, len(titles)))
	}
	e.grids[i].Set(titles, rows)
	if b.steps {
		e.grids[i].Cell(0, 0).Disable()
	}
}

// widest is how many steps there are, at least one more than those named.
func widest(cells [][]string) int {
	n := 1
	for _, row := range cells {
		for c, text := range row {
			if text != "" {
				n = max(n, c+1)
			}
		}
	}
	return n
}

func blank(row []string) bool {
	for _, text := range row {
		if text != "" {
			return false
		}
	}
	return true
}
