package parts

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"

	"pressworth/ui/look"
)

// Field is a line of text to type into. It selects everything when it is reached, sets numbers against the right edge,
// and passes on the keys it does not use, so that F-keys, Esc and shortcuts work wherever the focus is.
//
// It is written for the window instead of using the toolkit's own because a form holds a hundred of them: it draws
// five objects, has no cursor that blinks, and measures nothing while it stands still.
type Field struct {
	base
	Hint   string // shown muted while the field is empty
	Unit   string // shown muted at the right edge
	Secret bool   // shows dots

	OnChanged   func(text string)         // after the user changed the text
	OnSubmitted func(text string)         // Enter; nil: the focus moves on
	OnFocus     func(focused bool)        // the focus came or went
	OnKey       func(*fyne.KeyEvent) bool // sees every key first; true: it was used
	OnPaste     func(text string) bool    // sees pasted text first; true: it was used

	line   editLine
	align  fyne.TextAlign
	height float32
	strong bool
	bare   bool // no border until it is reached

	focused, hovered, wrong, disabled, shift, pressed bool
	first                                             int // first rune in sight
}

// NewField makes a field of text.
func NewField(hint string) *Field {
	f := &Field{Hint: hint, height: look.FieldHeight}
	f.ExtendBaseWidget(f)
	return f
}

// NewNumber makes a field whose text stands against the right edge.
func NewNumber(hint string) *Field {
	f := NewField(hint)
	f.align = fyne.TextAlignTrailing
	return f
}

// NewCell makes a field for inside a table: lower, and against the right edge.
func NewCell() *Field {
	f := NewNumber("")
	f.height = look.CellHeight
	return f
}

// NewSmallField makes a field of text for inside a table.
func NewSmallField(hint string) *Field {
	f := NewField(hint)
	f.height = look.CellHeight
	return f
}

// SetStrong shows the text semibold: a price that was typed.
func (f *Field) SetStrong(strong bool) {
	if f.strong != strong {
		f.strong = strong
		f.repaint()
	}
}

// Text is what stands in the field.
func (f *Field) Text() string { return string(f.line.text) }

// SetText sets what stands in the field; OnChanged is not told.
func (f *Field) SetText(text string) {
	if f.Text() == text {
		return
	}
	f.line.set(clean(text))
	if f.focused {
		f.line.selectAll()
	}
	f.repaint()
}

// SetHint changes what an empty field shows.
func (f *Field) SetHint(hint string) {
	if f.Hint != hint {
		f.Hint = hint
		f.repaint()
	}
}

// SetUnit changes what stands at the right edge.
func (f *Field) SetUnit(unit string) {
	if f.Unit != unit {
		f.Unit = unit
		f.repaint()
	}
}

// SetWrong marks the field's border as wrong. The words stand beside it.
func (f *Field) SetWrong(wrong bool) {
	if f.wrong != wrong {
		f.wrong = wrong
		f.repaint()
	}
}

// Wrong tells whether the field is marked.
func (f *Field) Wrong() bool { return f.wrong }

// Enable makes the field one to type into again.
func (f *Field) Enable() { f.setDisabled(false) }

// Disable makes the field one that can only be read.
func (f *Field) Disable() { f.setDisabled(true) }

// Disabled tells whether the field can only be read.
func (f *Field) Disabled() bool { return f.disabled }

func (f *Field) setDisabled(d bool) {
	if f.disabled != d {
		f.disabled = d
		f.repaint()
	}
}

// SelectedText is what is selected.
func (f *Field) SelectedText() string { return f.line.selected() }

// SelectAll selects the whole text.
func (f *Field) SelectAll() {
	f.line.selectAll()
	f.repaint()
}

// FocusGained is part of the toolkit's Focusable.
func (f *Field) FocusGained() {
	f.focused, f.shift = true, false
	f.line.selectAll()
	f.repaint()
	reveal(f)
	if f.OnFocus != nil {
		f.OnFocus(true)
	}
}

// FocusLost is part of the toolkit's Focusable.
func (f *Field) FocusLost() {
	f.focused, f.first = false, 0
	f.line.anchor = f.line.caret
	f.repaint()
	if f.OnFocus != nil {
		f.OnFocus(false)
	}
}

// Focused tells whether the field has the focus.
func (f *Field) Focused() bool { return f.focused }

// Cursor is part of the toolkit's Cursorable.
func (f *Field) Cursor() desktop.Cursor { return desktop.TextCursor }

// MouseIn is part of the toolkit's Hoverable.
func (f *Field) MouseIn(*desktop.MouseEvent) {
	f.hovered = true
	f.repaint()
}

// MouseMoved is part of the toolkit's Hoverable.
func (f *Field) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of the toolkit's Hoverable.
func (f *Field) MouseOut() {
	f.hovered = false
	f.repaint()
}

// KeyDown is part of the toolkit's Keyable: it watches Shift.
func (f *Field) KeyDown(e *fyne.KeyEvent) {
	if e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight {
		f.shift = true
	}
}

// KeyUp is part of the toolkit's Keyable.
func (f *Field) KeyUp(e *fyne.KeyEvent) {
	if e.Name == desktop.KeyShiftLeft || e.Name == desktop.KeyShiftRight {
		f.shift = false
	}
}

// clean makes one line of pasted or given text.
func clean(text string) string {
	if !strings.ContainsAny(text, "\r\n\t\x00") {
		return text
	}
	return strings.TrimSpace(strings.NewReplacer("\r\n", " ", "\r", " ", "\n", " ", "\t", " ", "\x00", "").Replace(text))
}
