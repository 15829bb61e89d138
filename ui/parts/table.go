package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"pressworth/ui/look"
)

// TableColumn is one column of a Table.
type TableColumn struct {
	Title string
	Width float32 // at 100 %; 0: a share of what is left
	Share float32 // 0 with Width 0: 1
	Right bool    // against the right edge, as amounts are
	Least float32 // the column hides where its table is narrower than this, at 100 %; 0: never
}

// TableCell is what stands in one cell.
type TableCell struct {
	Text   string
	Hex    string // a colour before the text; empty: none
	Color  fyne.ThemeColorName
	Strong bool
	Chip   bool // in a border of its colour, as a state is
}

// Table is rows under a header. Only the rows in sight exist, however many there are; it scrolls by whole rows.
type Table struct {
	base
	columns []TableColumn

	Len func() int
	Row func(i int) []TableCell // asked for the rows in sight, at every refresh

	OnSelect func(i int)  // a row was marked
	OnOpen   func(i int)  // Enter or a double click
	OnHead   func(c int)  // a column's title was clicked
	OnRune   func(r rune) // typing into the table: to the search box
	Empty    string       // said where there are no rows
	Plain    bool         // rows alone, without titles of columns
	Whole    bool         // as high as all its rows: on a page that scrolls by itself

	first, selected, hover int
	focused                bool
	scrolled               float32 // what a fine scroll has gathered towards a row
	dragging               bool
	head                   int // column sorted by, -1: none
	down                   bool
	draw                   *tableDrawing
}

// NewTable makes a table; Len and Row are to be set before it is shown.
func NewTable(columns []TableColumn) *Table {
	t := &Table{columns: columns, selected: -1, hover: -1, head: -1, Len: func() int { return 0 }}
	t.ExtendBaseWidget(t)
	return t
}

// Columns are the table's columns.
func (t *Table) Columns() []TableColumn { return t.columns }

// Reload draws the rows in sight anew, after what lies behind them changed.
func (t *Table) Reload() {
	n := t.Len()
	t.selected = min(t.selected, n-1)
	t.first = min(max(t.first, 0), max(n-t.inSight(), 0))
	t.repaint()
}

// Reset is Reload from the top, with nothing marked.
func (t *Table) Reset() {
	t.first, t.selected, t.hover = 0, -1, -1
	t.repaint()
}

// SetSorted marks the column the rows are sorted by.
func (t *Table) SetSorted(column int, down bool) {
	t.head, t.down = column, down
	t.repaint()
}

// Selected is the marked row, -1 for none.
func (t *Table) Selected() int { return t.selected }

// First is the first row in sight.
func (t *Table) First() int { return t.first }

// Select marks a row, brings it into sight and tells OnSelect.
func (t *Table) Select(i int) {
	n := t.Len()
	if n == 0 {
		return
	}
	t.selected = min(max(i, 0), n-1)
	t.first = min(t.first, t.selected)
	t.first = max(t.first, t.selected-t.inSight()+1)
	t.repaint()
	if t.OnSelect != nil {
		t.OnSelect(t.selected)
	}
}

func (t *Table) rowHeight() float32 { return look.Px(look.RowHeight) }

func (t *Table) headHeight() float32 {
	if t.Plain {
		return 0
	}
	return look.Px(26)
}

// least is how many rows there is to be room for.
func (t *Table) least() int {
	if t.Whole {
		return max(t.Len(), 1)
	}
	return 2
}

// inSight is how many whole rows there is room for.
func (t *Table) inSight() int {
	return max(int((t.Size().Height-t.headHeight())/t.rowHeight()), 1)
}

// ScrollBy moves by whole rows.
func (t *Table) ScrollBy(rows int) {
	first := min(max(t.first+rows, 0), max(t.Len()-t.inSight(), 0))
	if first != t.first {
		t.first = first
		t.repaint()
	}
}

// Scrolled is part of the toolkit's Scrollable.
func (t *Table) Scrolled(e *fyne.ScrollEvent) {
	t.scrolled -= e.Scrolled.DY
	rows := int(t.scrolled / 10)
	if rows != 0 {
		t.scrolled -= float32(rows) * 10
		t.ScrollBy(rows)
	}
}

// FocusGained is part of the toolkit's Focusable.
func (t *Table) FocusGained() {
	t.focused = true
	if t.selected < 0 && t.Len() > 0 {
		t.Select(t.first)
	}
	t.repaint()
}

// FocusLost is part of the toolkit's Focusable.
func (t *Table) FocusLost() {
	t.focused = false
	t.repaint()
}

// TypedRune hands what is typed to the search box.
func (t *Table) TypedRune(r rune) {
	if t.OnRune != nil {
		t.OnRune(r)
	}
}

// TypedKey moves the mark.
func (t *Table) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyDown:
		t.Select(t.selected + 1)
	case fyne.KeyUp:
		t.Select(t.selected - 1)
	case fyne.KeyPageDown:
		t.Select(t.selected + t.inSight())
	case fyne.KeyPageUp:
		t.Select(t.selected - t.inSight())
	case fyne.KeyHome:
		t.Select(0)
	case fyne.KeyEnd:
		t.Select(t.Len() - 1)
	case fyne.KeyReturn, fyne.KeyEnter:
		t.open()
	default:
		passKey(t, e)
	}
}

func (t *Table) open() {
	if t.OnOpen != nil && t.selected >= 0 && t.selected < t.Len() {
		t.OnOpen(t.selected)
	}
}

// rowAt is the row at a height within the table, -1 for none.
func (t *Table) rowAt(y float32) int {
	y -= t.headHeight()
	i := t.first + int(y/t.rowHeight())
	if y < 0 || i >= t.Len() {
		return -1
	}
	return i
}

// MouseDown marks the row under the pointer.
func (t *Table) MouseDown(e *desktop.MouseEvent) {
	t.dragging = e.Position.X > t.Size().Width-look.Px(14)
	if t.dragging {
		return
	}
	Focus(t)
	switch i := t.rowAt(e.Position.Y); {
	case i >= 0:
		t.Select(i)
	case e.Position.Y < t.headHeight() && t.OnHead != nil && t.draw != nil:
		if c := t.draw.columnAt(e.Position.X); c >= 0 {
			t.OnHead(c)
		}
	}
}

// MouseUp is part of the toolkit's Mouseable.
func (t *Table) MouseUp(*desktop.MouseEvent) { t.dragging = false }

// DoubleTapped opens the row under the pointer.
func (t *Table) DoubleTapped(e *fyne.PointEvent) {
	if i := t.rowAt(e.Position.Y); i >= 0 {
		t.selected = i
		t.open()
	}
}

// Dragged moves the bar at the right edge.
func (t *Table) Dragged(e *fyne.DragEvent) {
	if !t.dragging {
		return
	}
	n, room := t.Len(), t.Size().Height-t.headHeight()
	at := (e.Position.Y - t.headHeight()) / max(room, 1)
	first := int(at * float32(n-t.inSight()))
	t.ScrollBy(first - t.first)
}

// DragEnd is part of the toolkit's Draggable.
func (t *Table) DragEnd() { t.dragging = false }

// MouseIn is part of the toolkit's Hoverable.
func (t *Table) MouseIn(e *desktop.MouseEvent) { t.MouseMoved(e) }

// MouseMoved is part of the toolkit's Hoverable.
func (t *Table) MouseMoved(e *desktop.MouseEvent) {
	if i := t.rowAt(e.Position.Y); i != t.hover {
		t.hover = i
		t.repaint()
	}
}

// MouseOut is part of the toolkit's Hoverable.
func (t *Table) MouseOut() {
	t.hover = -1
	t.repaint()
}
