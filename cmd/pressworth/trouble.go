//go:build cgo

package main

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"pressworth/ui"
)

// showTrouble says in a small window why the large one does not open: who started the program from a menu sees no
// standard error.
func showTrouble(a fyne.App, trouble error) {
	w := a.NewWindow(ui.Name)
	text := widget.NewLabel("Pressworth cannot open the shop.\n\n" + trouble.Error() + "\n\nNothing in the file was changed.")
	text.Wrapping = fyne.TextWrapWord
	done := widget.NewButton("Close", w.Close)
	w.SetContent(container.NewPadded(container.NewBorder(nil, container.NewHBox(done), nil, nil, text)))
	w.Resize(fyne.NewSize(520, 240))
	w.Show()
	w.Canvas().Focus(done)
	a.Run()
}
