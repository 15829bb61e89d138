package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
)

// pressable is what everything has that can be clicked, or pressed with Enter or Space.
type pressable struct {
	base
	self     fyne.Widget
	act      func()
	focused  bool
	hovered  bool
	disabled bool
	deed     bool // it changes the shop file
}

// FocusGained is part of the toolkit's Focusable.
func (p *pressable) FocusGained() {
	p.focused = true
	p.repaint()
	reveal(p.self)
}

// FocusLost is part of the toolkit's Focusable.
func (p *pressable) FocusLost() {
	p.focused = false
	p.repaint()
}

// TypedRune is part of the toolkit's Focusable.
func (p *pressable) TypedRune(rune) {}

// TypedKey is part of the toolkit's Focusable.
func (p *pressable) TypedKey(e *fyne.KeyEvent) {
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter, fyne.KeySpace:
		p.press()
	default:
		passKey(p.self, e)
	}
}

// Tapped is part of the toolkit's Tappable.
func (p *pressable) Tapped(*fyne.PointEvent) { p.press() }

func (p *pressable) press() {
	if !p.disabled && p.act != nil {
		p.act()
	}
}

// Enable lets it be pressed again.
func (p *pressable) Enable() { p.setDisabled(false) }

// Disable keeps it from being pressed.
func (p *pressable) Disable() { p.setDisabled(true) }

// Disabled tells whether it cannot be pressed.
func (p *pressable) Disabled() bool { return p.disabled }

func (p *pressable) setDisabled(d bool) {
	d = d || p.deed && looking
	if p.disabled != d {
		p.disabled = d
		p.repaint()
	}
}

// Cursor is part of the toolkit's Cursorable.
func (p *pressable) Cursor() desktop.Cursor {
	if p.disabled {
		return desktop.DefaultCursor
	}
	return desktop.PointerCursor
}

// MouseIn is part of the toolkit's Hoverable.
func (p *pressable) MouseIn(*desktop.MouseEvent) {
	p.hovered = true
	p.repaint()
}

// MouseMoved is part of the toolkit's Hoverable.
func (p *pressable) MouseMoved(*desktop.MouseEvent) {}

// MouseOut is part of the toolkit's Hoverable.
func (p *pressable) MouseOut() {
	p.hovered = false
	p.repaint()
}
