//go:build cgo

// Command bare opens a window of the toolkit with a number of entries in it and nothing else. The benchmarks of the
// program's window are held against it: what it needs, the toolkit needs.
package main

import (
	"os"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"
)

func main() {
	count := 0
	if len(os.Args) > 1 {
		count, _ = strconv.Atoi(os.Args[1])
	}
	a := app.NewWithID("org.pressworth.bare")
	w := a.NewWindow("Pressworth bare")
	var entries []fyne.CanvasObject
	for range count {
		entries = append(entries, widget.NewEntry())
	}
	w.SetContent(container.NewGridWithColumns(10, entries...))
	w.SetPadded(false)
	w.Resize(fyne.NewSize(1400, 900))
	w.Show()
	if count > 0 {
		w.Canvas().Focus(entries[0].(*widget.Entry))
	}
	a.Run()
}
