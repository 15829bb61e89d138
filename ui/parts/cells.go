package parts

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// Measures of size cells at 100 %.
const (
	CellWide  = 53
	CellApart = 10
)

// SizeCells is one row of cells, one a size, for the quantities of a garment line.
type SizeCells struct {
	holder
	cells []*Field

	OnChanged func(at int, qty string) // a quantity was typed
	// Spread understands shorthand that was typed or pasted into the cell at, like 6/11/9/0/3 or S12 M24: it returns a
	// quantity for every cell, or says what is wrong.
	Spread func(at int, text string) (all []string, problem string)
	// OnSpread is told after shorthand filled the cells.
	OnSpread  func(all []string)
	OnProblem func(text string)       // shorthand was not understood; empty: it is again
	OnLeave   func(at int, rows int)  // Up and Down: to the same size some rows away
	OnEnter   func()                  // Enter: to the next garment
	OnFocus   func(at int, gain bool) // a cell was reached or left
}

// NewSizeCells makes a row of n empty cells.
func NewSizeCells(n int) *SizeCells {
	s := &SizeCells{}
	objects := make([]fyne.CanvasObject, n)
	for i := range n {
		f := NewCell()
		f.height = look.FieldHeight
		s.wire(i, f)
		s.cells = append(s.cells, f)
		objects[i] = f
	}
	s.hold(s, container.New(equal{CellWide, CellApart}, objects...))
	return s
}

// Cell is the cell at a place, for tests and for focus.
func (s *SizeCells) Cell(at int) *Field { return s.cells[at] }

// Len is how many cells there are.
func (s *SizeCells) Len() int { return len(s.cells) }

// SetQty fills a cell; OnChanged is not told. A cell that is being typed into is left alone.
func (s *SizeCells) SetQty(at int, qty string) {
	if !s.cells[at].Focused() {
		s.cells[at].SetText(qty)
	}
}

// Focus goes to a cell, or the nearest there is.
func (s *SizeCells) Focus(at int) {
	if len(s.cells) > 0 {
		Focus(s.cells[min(max(at, 0), len(s.cells)-1)])
	}
}

func (s *SizeCells) wire(i int, f *Field) {
	f.OnChanged = func(text string) {
		if isShorthand(text) {
			return // until it is whole: Enter, Tab or leaving the cell
		}
		s.tell("")
		if s.OnChanged != nil {
			s.OnChanged(i, text)
		}
	}
	f.OnPaste = func(text string) bool { return s.paste(i, text) }
	f.OnKey = func(e *fyne.KeyEvent) bool { return s.key(i, e) }
	f.OnFocus = func(gained bool) {
		if !gained && isShorthand(f.Text()) {
			s.spread(i, f.Text())
		}
		if s.OnFocus != nil {
			s.OnFocus(i, gained)
		}
	}
}

// isShorthand tells a size run from a quantity: letters, a slash, or several words.
func isShorthand(text string) bool {
	return strings.ContainsFunc(strings.TrimSpace(text), func(r rune) bool {
		return r == '/' || r == ' ' || r == ',' || r == ':' || r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z'
	})
}

func (s *SizeCells) tell(problem string) {
	if s.OnProblem != nil {
		s.OnProblem(problem)
	}
}

func (s *SizeCells) spread(at int, text string) bool {
	if s.Spread == nil {
		return false
	}
	all, problem := s.Spread(at, text)
	s.tell(problem)
	s.cells[at].SetWrong(problem != "")
	if problem != "" {
		return false
	}
	for i, qty := range all {
		if i < len(s.cells) {
			s.cells[i].SetText(qty)
		}
	}
	if s.OnSpread != nil {
		s.OnSpread(all)
	}
	return true
}

// paste takes a spreadsheet's row: its cells go to this one and those right of it.
func (s *SizeCells) paste(at int, text string) bool {
	text = strings.TrimRight(text, "\r\n")
	if !strings.Contains(text, "\t") {
		return isShorthand(text) && s.spread(at, text)
	}
	line, _, _ := strings.Cut(text, "\n")
	for i, qty := range strings.Split(strings.TrimRight(line, "\r"), "\t") {
		if at+i >= len(s.cells) {
			break
		}
		qty = strings.TrimSpace(qty)
		s.cells[at+i].SetText(qty)
		if s.OnChanged != nil {
			s.OnChanged(at+i, qty)
		}
	}
	return true
}

func (s *SizeCells) key(at int, e *fyne.KeyEvent) bool {
	f := s.cells[at]
	switch e.Name {
	case fyne.KeyUp, fyne.KeyDown:
		if s.OnLeave != nil {
			s.OnLeave(at, map[fyne.KeyName]int{fyne.KeyUp: -1, fyne.KeyDown: 1}[e.Name])
		}
	case fyne.KeyLeft:
		if !f.atStart() || at == 0 {
			return false
		}
		s.Focus(at - 1)
	case fyne.KeyRight:
		if !f.atEnd() || at == len(s.cells)-1 {
			return false
		}
		s.Focus(at + 1)
	case fyne.KeyReturn, fyne.KeyEnter:
		if isShorthand(f.Text()) && !s.spread(at, f.Text()) {
			return true
		}
		if s.OnEnter == nil {
			return false
		}
		s.OnEnter()
	default:
		return false
	}
	return true
}

// atStart tells whether Left has nothing more to do in the field: the caret is first, or everything is selected.
func (f *Field) atStart() bool {
	from, to := f.line.span()
	return !f.shift && (f.line.caret == 0 || from == 0 && to == len(f.line.text))
}

func (f *Field) atEnd() bool {
	from, to := f.line.span()
	return !f.shift && (f.line.caret == len(f.line.text) || from == 0 && to == len(f.line.text))
}

// equal sets objects of one width side by side, against the right edge; narrower where there is no room for all.
type equal struct{ wide, apart float32 }

const narrow = 0.64 // of the full width, at the narrowest

func (e equal) full(n int) float32 {
	return float32(n)*look.Px(e.wide) + float32(max(n-1, 0))*look.Px(e.apart)
}

func (e equal) MinSize(objects []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	for _, o := range objects {
		h = max(h, o.MinSize().Height)
	}
	return fyne.NewSize(narrow*e.full(len(objects)), h)
}

func (e equal) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	full := e.full(len(objects))
	shrink := min(size.Width/max(full, 1), 1)
	wide, apart := look.Px(e.wide)*shrink, look.Px(e.apart)*shrink
	x := size.Width - full*shrink
	for _, o := range objects {
		place(o, x, 0, wide, size.Height)
		x += wide + apart
	}
}

// SizeHeads are the names of sizes over the cells below.
func SizeHeads(sizes []string) *fyne.Container {
	objects := make([]fyne.CanvasObject, len(sizes))
	for i, size := range sizes {
		objects[i] = NewText(size, CaptionStyle.Right())
	}
	return container.New(equal{CellWide, CellApart}, objects...)
}
