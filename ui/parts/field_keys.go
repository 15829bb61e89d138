package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/driver/desktop"
	"fyne.io/fyne/v2/widget"
)

// TypedRune is part of the toolkit's Focusable.
func (f *Field) TypedRune(r rune) {
	if !f.disabled {
		f.changed(f.line.insert(string(r)))
	}
}

// TypedKey is part of the toolkit's Focusable.
func (f *Field) TypedKey(e *fyne.KeyEvent) {
	if f.OnKey != nil && f.OnKey(e) {
		return
	}
	switch e.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		if f.OnSubmitted != nil {
			f.OnSubmitted(f.Text())
		} else {
			focusNext(f)
		}
	case fyne.KeyBackspace, fyne.KeyDelete:
		f.erase(e.Name, false)
	case fyne.KeyLeft, fyne.KeyRight, fyne.KeyHome, fyne.KeyEnd:
		f.travel(e.Name, false, f.shift)
	default:
		passKey(f, e)
	}
}

func (f *Field) erase(key fyne.KeyName, word bool) {
	if f.disabled {
		return
	}
	by := 1
	if key == fyne.KeyBackspace {
		by = -1
	}
	upto := f.line.caret + by
	if word {
		upto = f.line.word(by)
	}
	f.changed(f.line.remove(upto))
}

func (f *Field) travel(key fyne.KeyName, word, keep bool) {
	by := 1
	if key == fyne.KeyLeft {
		by = -1
	}
	switch {
	case key == fyne.KeyHome:
		f.line.move(0, keep)
	case key == fyne.KeyEnd:
		f.line.move(len(f.line.text), keep)
	case word:
		f.line.move(f.line.word(by), keep)
	default:
		f.line.step(by, keep)
	}
	f.repaint()
}

// TypedShortcut is part of the toolkit's Shortcutable.
func (f *Field) TypedShortcut(s fyne.Shortcut) {
	switch s := s.(type) {
	case *fyne.ShortcutSelectAll:
		f.SelectAll()
	case *fyne.ShortcutCopy:
		f.copyTo(s.Clipboard)
	case *fyne.ShortcutCut:
		f.cutTo(s.Clipboard)
	case *fyne.ShortcutPaste:
		f.Paste(s.Clipboard.Content())
	case *desktop.CustomShortcut:
		if !f.wordKey(s) {
			passShortcut(f, s)
		}
	default:
		passShortcut(f, s)
	}
}

// wordKey serves the keys that work by words: Ctrl with an arrow, Backspace or Delete.
func (f *Field) wordKey(s *desktop.CustomShortcut) bool {
	if s.Modifier&^fyne.KeyModifierShift != fyne.KeyModifierControl {
		return false
	}
	switch s.KeyName {
	case fyne.KeyLeft, fyne.KeyRight:
		f.travel(s.KeyName, true, s.Modifier&fyne.KeyModifierShift != 0)
	case fyne.KeyBackspace, fyne.KeyDelete:
		f.erase(s.KeyName, true)
	default:
		return false
	}
	return true
}

func (f *Field) copyTo(c fyne.Clipboard) {
	if text := f.line.selected(); text != "" && !f.Secret {
		c.SetContent(text)
	}
}

func (f *Field) cutTo(c fyne.Clipboard) {
	if f.disabled || f.Secret || f.line.selected() == "" {
		return
	}
	c.SetContent(f.line.selected())
	f.changed(f.line.insert(""))
}

// Paste puts text in place of the selection.
func (f *Field) Paste(text string) {
	if f.disabled || f.OnPaste != nil && f.OnPaste(text) {
		return
	}
	f.changed(f.line.insert(clean(text)))
}

func (f *Field) changed(really bool) {
	if !really {
		return
	}
	f.repaint()
	if f.OnChanged != nil {
		f.OnChanged(f.Text())
	}
}

// TappedSecondary offers the clipboard.
func (f *Field) TappedSecondary(e *fyne.PointEvent) {
	c := canvasOf(f)
	if c == nil {
		return
	}
	c.Focus(f)
	board := fyne.CurrentApp().Clipboard()
	widget.ShowPopUpMenuAtPosition(fyne.NewMenu("",
		fyne.NewMenuItem("Cut", func() { f.cutTo(board) }),
		fyne.NewMenuItem("Copy", func() { f.copyTo(board) }),
		fyne.NewMenuItem("Paste", func() { f.Paste(board.Content()) }),
		fyne.NewMenuItem("Select all", f.SelectAll),
	), c, e.AbsolutePosition)
}
