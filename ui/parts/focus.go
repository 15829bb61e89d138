package parts

import "fyne.io/fyne/v2"

func canvasOf(o fyne.CanvasObject) fyne.Canvas {
	return fyne.CurrentApp().Driver().CanvasForObject(o)
}

// Focus gives an object the focus. The toolkit knows the canvas of an object only once it has drawn it; one that has
// just been added is looked for in the window.
func Focus(o fyne.Focusable) {
	if c := canvasOf(o.(fyne.CanvasObject)); c != nil {
		c.Focus(o)
		return
	}
	for _, w := range fyne.CurrentApp().Driver().AllWindows() {
		w.Canvas().Focus(o)
		return
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
