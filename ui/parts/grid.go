package parts

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// Grid is a table of cells to type into, which takes a range pasted from a spreadsheet.
type Grid struct {
	holder
	body  *fyne.Container
	heads []*Text
	cells [][]*Field
	wide  float32 // of a column, at 100 %
	words map[int]bool
	first float32 // of the first column

	OnChanged func(row, column int, text string) // a cell was typed into
	OnPaste   func(row, column int, block [][]string)
}

// NewGrid makes a grid without rows; columns are wide at 100 %, the first one first.
func NewGrid(first, wide float32) *Grid {
	g := &Grid{first: first, wide: wide}
	g.body = container.New(gridLayout{g})
	g.hold(g, g.body)
	return g
}

// Words makes columns hold words, which stand against the left edge; others hold numbers.
func (g *Grid) Words(columns ...int) *Grid {
	g.words = map[int]bool{}
	for _, c := range columns {
		g.words[c] = true
	}
	return g
}

// Set shows titles and rows. Cells that are there already are reused, so that the focus stays where it is.
func (g *Grid) Set(titles []string, rows [][]string) {
	if len(titles) != len(g.heads) || len(rows) != len(g.cells) {
		g.build(len(titles), len(rows))
	}
	for c, title := range titles {
		g.heads[c].SetText(title)
	}
	for r, row := range rows {
		for c := range titles {
			text := ""
			if c < len(row) {
				text = row[c]
			}
			if f := g.cells[r][c]; !f.Focused() {
				f.SetText(text)
			}
		}
	}
}

// Cell is the cell at a place, or nil.
func (g *Grid) Cell(row, column int) *Field {
	if row < 0 || row >= len(g.cells) || column < 0 || column >= len(g.cells[row]) {
		return nil
	}
	return g.cells[row][column]
}

// SetProblem marks a cell as wrong or right again.
func (g *Grid) SetProblem(row, column int, wrong bool) {
	if f := g.Cell(row, column); f != nil {
		f.SetWrong(wrong)
	}
}

// ClearWrong marks no cell as wrong.
func (g *Grid) ClearWrong() {
	for _, row := range g.cells {
		for _, f := range row {
			f.SetWrong(false)
		}
	}
}

// build makes the heads and cells that are missing and drops those that are too many. Cells that stay keep the focus.
func (g *Grid) build(columns, rows int) {
	for len(g.heads) < columns {
		style := CaptionStyle.Right().Shortened()
		if g.words[len(g.heads)] {
			style.Align = fyne.TextAlignLeading
		}
		g.heads = append(g.heads, NewText("", style))
	}
	for len(g.cells) < rows {
		g.cells = append(g.cells, nil)
	}
	g.heads, g.cells = g.heads[:columns], g.cells[:rows]
	for r := range g.cells {
		for c := len(g.cells[r]); c < columns; c++ {
			f := NewCell()
			if g.words[c] {
				f.align = fyne.TextAlignLeading
			}
			g.wire(f, r, c)
			g.cells[r] = append(g.cells[r], f)
		}
		g.cells[r] = g.cells[r][:columns]
	}
	var objects []fyne.CanvasObject
	for _, h := range g.heads {
		objects = append(objects, h)
	}
	for _, row := range g.cells {
		for _, f := range row {
			objects = append(objects, f)
		}
	}
	g.body.Objects = objects
	g.body.Refresh()
}

func (g *Grid) wire(f *Field, r, c int) {
	f.OnChanged = func(text string) {
		if g.OnChanged != nil {
			g.OnChanged(r, c, text)
		}
	}
	f.OnPaste = func(text string) bool {
		block := Block(text)
		if len(block) <= 1 && (len(block) == 0 || len(block[0]) <= 1) || g.OnPaste == nil {
			return false
		}
		g.OnPaste(r, c, block)
		return true
	}
	f.OnKey = func(e *fyne.KeyEvent) bool { return g.key(f, r, c, e) }
}

func (g *Grid) key(f *Field, r, c int, e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyUp:
		r--
	case fyne.KeyDown, fyne.KeyReturn, fyne.KeyEnter:
		r++
	case fyne.KeyLeft:
		if !f.atStart() {
			return false
		}
		c--
	case fyne.KeyRight:
		if !f.atEnd() {
			return false
		}
		c++
	default:
		return false
	}
	next := g.Cell(r, c)
	if next == nil {
		return e.Name == fyne.KeyUp || e.Name == fyne.KeyDown
	}
	Focus(next)
	return true
}

// Block reads a range copied from a spreadsheet: lines of cells divided by tabs.
func Block(text string) [][]string {
	text = strings.TrimRight(strings.ReplaceAll(text, "\r\n", "\n"), "\n")
	if text == "" {
		return nil
	}
	var block [][]string
	for _, line := range strings.Split(text, "\n") {
		cells := strings.Split(line, "\t")
		for i := range cells {
			cells[i] = strings.TrimSpace(cells[i])
		}
		block = append(block, cells)
	}
	return block
}

type gridLayout struct{ g *Grid }

const gridGap = 6

func (l gridLayout) width(c int) float32 {
	if c == 0 {
		return look.Px(l.g.first)
	}
	return look.Px(l.g.wide)
}

func (l gridLayout) rowHeight() float32 { return look.Px(look.CellHeight + gridGap - 2) }

func (l gridLayout) headHeight() float32 { return look.Px(18) }

// full is the width at which every column is as wide as it should be.
func (l gridLayout) full() float32 {
	w := float32(0)
	for c := range l.g.heads {
		w += l.width(c) + look.Px(gridGap)
	}
	return w
}

func (l gridLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(0.45*l.full(), l.headHeight()+float32(len(l.g.cells))*l.rowHeight())
}

// Layout sets the columns side by side, narrower where there is no room for all.
func (l gridLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	shrink := min(size.Width/max(l.full(), 1), 1)
	x := float32(0)
	for c, h := range l.g.heads {
		w := l.width(c) * shrink
		indent := look.Px(7)
		if !l.g.words[c] {
			indent = 0
		}
		place(h, x+indent, 0, w-look.Px(7), l.headHeight())
		for r, row := range l.g.cells {
			place(row[c], x, l.headHeight()+float32(r)*l.rowHeight(), w, look.Px(look.CellHeight))
		}
		x += w + look.Px(gridGap)*shrink
	}
}
