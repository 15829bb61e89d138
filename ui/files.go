package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/dialog"
)

// ChooseFile lets a person choose a file to read, in the toolkit's own dialog; nothing is called where none is chosen.
// Esc closes it.
func (w *Window) ChooseFile(done func(path string)) {
	d := dialog.NewFileOpen(func(f fyne.URIReadCloser, err error) {
		if err != nil || f == nil {
			return
		}
		path := f.URI().Path()
		if err := f.Close(); err == nil {
			done(path)
		}
	}, w.win)
	d.SetOnClosed(func() {
		w.chooser = nil
		w.Focus()
	})
	w.chooser = d
	d.Show()
	d.Resize(w.win.Canvas().Size()) // it has no size before it is shown
}
