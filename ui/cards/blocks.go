package cards

import (
	"fmt"
	"slices"
	"strconv"

	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
)

// block is one price table of a card as text: for a sheet card one for each size of sheet, else one.
type block struct {
	path  string     // of the job file, under which the engine names problems
	heads []string   // titles over the columns
	cells [][]string // with steps, the first row says up to what each column reaches
	steps bool
}

// stepWord is what the first row counts.
func stepWord(by string) string {
	switch by {
	case "stitches":
		return "thousand stitches up to"
	case "area":
		return "square inches up to"
	case "character":
		return "characters up to"
	}
	return "inks up to"
}

// blocksOf writes a card's prices as text.
func blocksOf(c quote.RateCard) []block {
	switch c.Kind {
	case quote.AreaCard:
		return []block{{path: at("rates"), heads: []string{"transfers from", "a square inch"}, cells: listCells(c.Rates)}}
	case quote.RollCard:
		b := block{path: at("lengths"), heads: []string{"length, in", "price"}}
		for _, l := range c.Lengths {
			b.cells = append(b.cells, []string{l.Length.String(), l.Each.String()})
		}
		return []block{b}
	case quote.PieceCard:
		return []block{pieceBlock(c)}
	}
	var all []block
	for i, s := range c.Sizes {
		columns := make([]column, len(s.Prices))
		for j, row := range s.Prices {
			columns[j] = column{strconv.Itoa(row.Inks), row.Each}
		}
		all = append(all, block{
			path: fmt.Sprintf("%s[%d]", at("sizes"), i), heads: []string{"sheets from"}, steps: true,
			cells: stepCells(stepWord(""), columns),
		})
	}
	return all
}

const fullColor = "full colour"

func pieceBlock(c quote.RateCard) block {
	columns := make([]column, len(c.Prices))
	for i, row := range c.Prices {
		columns[i] = column{row.Upto.String(), row.Each}
	}
	if len(c.FullColorEach) > 0 {
		columns = append(columns, column{fullColor, c.FullColorEach})
	}
	return block{path: at("prices"), heads: []string{"pieces from"}, steps: true, cells: stepCells(stepWord(c.By), columns)}
}

func at(field string) string { return "rate_cards[0]." + field }

func listCells(breaks []quote.Break) [][]string {
	var cells [][]string
	for _, b := range breaks {
		cells = append(cells, []string{strconv.Itoa(b.From), b.Each.String()})
	}
	return cells
}

// column is the prices up to one step.
type column struct {
	upto string
	each []quote.Break
}

// stepCells sets quantities down and steps across. A quantity that a column has no price for stays empty.
func stepCells(word string, columns []column) [][]string {
	var froms []int
	for _, c := range columns {
		for _, b := range c.each {
			if !slices.Contains(froms, b.From) {
				froms = append(froms, b.From)
			}
		}
	}
	slices.Sort(froms)
	head := []string{word}
	for _, c := range columns {
		head = append(head, c.upto)
	}
	cells := [][]string{head}
	for _, from := range froms {
		row := []string{strconv.Itoa(from)}
		for _, c := range columns {
			text := ""
			for _, b := range c.each {
				if b.From == from {
					text = b.Each.String()
				}
			}
			row = append(row, text)
		}
		cells = append(cells, row)
	}
	return cells
}

// cellReader reads cells, naming each by its row and column for the marks in the grid.
type cellReader struct {
	form.Reader
	block int
	cells [][]string
	wrong [][3]int // block, row, column
}

func (r *cellReader) text(row, col int) string {
	if row < len(r.cells) && col < len(r.cells[row]) {
		return r.cells[row][col]
	}
	return ""
}

// read has one cell read; what is wrong with it is said with its place, and the cell is marked.
func (r *cellReader) read(row, col int, what string, with func(*form.Reader)) {
	one := form.Reader{Get: func(string) string { return r.text(row, col) }}
	with(&one)
	for _, p := range one.Problems {
		r.Say("prices", fmt.Sprintf("row %d, %s %q: %s", row+1, what, r.text(row, col), p.Problem))
		r.wrong = append(r.wrong, [3]int{r.block, row, col})
	}
}

func (r *cellReader) amount(row, col int) (a money.Amount) {
	r.read(row, col, "price", func(one *form.Reader) { a = one.Amount("") })
	return a
}

func (r *cellReader) count(row, col int) (n int) {
	r.read(row, col, "quantity", func(one *form.Reader) { n = one.Count("") })
	return n
}

// breaks reads the prices of a column, from a row on.
func (r *cellReader) breaks(col, first int) []quote.Break {
	var out []quote.Break
	for row := first; row < len(r.cells); row++ {
		if r.text(row, col) != "" {
			out = append(out, quote.Break{From: r.count(row, 0), Each: r.amount(row, col)})
		}
	}
	return out
}

func (r *cellReader) lengths() []quote.RollLength {
	var out []quote.RollLength
	for row := range r.cells {
		if r.text(row, 0) == "" && r.text(row, 1) == "" {
			continue
		}
		var l quote.RollLength
		r.read(row, 0, "length", func(one *form.Reader) { l.Length = one.Length("") })
		l.Each = r.amount(row, 1)
		out = append(out, l)
	}
	return out
}

// columns are how many steps the first row names.
func (r *cellReader) columns() []int {
	var out []int
	if len(r.cells) == 0 {
		return nil
	}
	for col := 1; col < len(r.cells[0]); col++ {
		if r.text(0, col) != "" {
			out = append(out, col)
		}
	}
	return out
}

func (r *cellReader) inkRows() []quote.InkRow {
	var out []quote.InkRow
	for _, col := range r.columns() {
		out = append(out, quote.InkRow{Inks: r.count(0, col), Each: r.breaks(col, 1)})
	}
	return out
}

func (r *cellReader) pieceRows() (rows []quote.PieceRow, full []quote.Break) {
	for _, col := range r.columns() {
		if r.text(0, col) == fullColor {
			full = r.breaks(col, 1)
			continue
		}
		row := quote.PieceRow{Each: r.breaks(col, 1)}
		r.read(0, col, "step", func(one *form.Reader) { row.Upto = one.Number("") })
		rows = append(rows, row)
	}
	return rows, full
}
