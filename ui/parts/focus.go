package parts

import "fyne.io/fyne/v2"

func canvasOf(o fyne.CanvasObject) fyne.Canvas {
	return fyne.CurrentApp().Driver().CanvasForObject(o)
}

// Focus gives an object the focus, where it is on a canvas.
func Focus(o fyne.Focusable) {
	if c := canvasOf(o.(fyne.CanvasObject)); c != nil {
		c.Focus(o)
	}
}

func focusNext(o fyne.CanvasObject) {
	if c := canvasOf(o); c != nil {
		c.FocusNext()
	}
}

// passKey hands a key that a part does not use to the window.
func passKey(o fyne.CanvasObject, e *fyne.KeyEvent) {
	if c := canvasOf(o); c != nil && c.OnTypedKey() != nil {
		c.OnTypedKey()(e)
	}
}

// passShortcut hands a shortcut that a part does not use to the window.
func passShortcut(o fyne.CanvasObject, s fyne.Shortcut) {
	if c, ok := canvasOf(o).(fyne.Shortcutable); ok {
		c.TypedShortcut(s)
	}
}
