package ui

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
)

// CopyDetails puts on the clipboard what helps to answer a question about the program: versions, the system, what the
// log says. Nothing of the shop's or its customers' data is in it.
func (w *Window) CopyDetails() {
	if w.deps.Details == nil {
		w.say(parts.Warning, "This window keeps no log.")
		return
	}
	fyne.CurrentApp().Clipboard().SetContent(w.deps.Details())
	w.say(parts.Note, "Versions and the end of the log are on the clipboard; no data of yours or your customers is in them.")
}

// saveNow saves because it was asked for, and says so where nothing is saved.
func (w *Window) saveNow() {
	if w.deps.LookOnly {
		w.say(parts.Warning, "Nothing is saved here: another window has this shop open. Close that one and open this one again to work.")
		return
	}
	w.save()
}
