package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// MouseDown gives the focus; in a field that has it already it sets the caret, with Shift it extends the selection.
func (f *Field) MouseDown(e *desktop.MouseEvent) {
	if e.Button != desktop.MouseButtonPrimary {
		return
	}
	f.pressed = f.focused // the first click selects all, dragging begins with the second
	if !f.focused {
		Focus(f)
		return
	}
	f.line.move(f.indexAt(e.Position.X), e.Modifier&fyne.KeyModifierShift != 0)
	f.repaint()
}

// MouseUp is part of the toolkit's Mouseable.
func (f *Field) MouseUp(*desktop.MouseEvent) {}

// Dragged extends the selection.
func (f *Field) Dragged(e *fyne.DragEvent) {
	at := f.indexAt(e.Position.X)
	if !f.pressed {
		f.pressed = true
		f.line.move(f.indexAt(e.Position.X-e.Dragged.DX), false)
	}
	f.line.move(at, true)
	f.repaint()
}

// DragEnd is part of the toolkit's Draggable.
func (f *Field) DragEnd() {}

// Tapped gives the focus, for drivers without a mouse.
func (f *Field) Tapped(*fyne.PointEvent) {
	if !f.focused {
		Focus(f)
	}
}

// indexAt is the rune nearest to a place across the field.
func (f *Field) indexAt(x float32) int {
	shown := f.visible()
	x -= f.origin(shown)
	style := f.style()
	best := 0
	for i := 1; i <= len(shown); i++ {
		left, right := style.measure(string(shown[:i-1])).Width, style.measure(string(shown[:i])).Width
		if x < (left+right)/2 {
			break
		}
		best = i
	}
	return f.first + best
}
