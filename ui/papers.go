package ui

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/parts"
)

// The papers of jobs with names and numbers.
const (
	BagPaper   Paper = "Bag list"
	LabelPaper Paper = "Labels"
)

// Write has a document of the quote on the counter written and opened. Where it cannot be written the reason is said,
// where it can its path is, because opening a file with the system's viewer does not tell whether it worked.
func (w *Window) Write(p Paper) {
	if w.customer {
		return
	}
	if !w.deps.Presenter.Ready() {
		w.say(parts.Warning, "The "+string(p)+" needs a job that can be priced: see the notes beside the fields.")
		return
	}
	if !w.save() {
		return
	}
	job, result, _ := w.deps.Presenter.Job()
	w.say(parts.Note, "Writing the "+string(p)+" …")
	parts.Background(func() func() {
		path, err := w.deps.Papers.Write(p, job, result)
		if err == nil {
			w.trace("wrote " + path)
			if failed := w.deps.Papers.Open(path); failed != nil {
				return func() { w.say(parts.Warning, "Written to "+path+", but it could not be opened: "+failed.Error()) }
			}
		}
		return func() {
			if err != nil {
				w.say(parts.Fault, "The "+string(p)+" could not be written: "+err.Error())
				return
			}
			w.say(parts.Note, string(p)+" written to "+path)
			w.offerSent(p)
		}
	})
}

// CopyText puts the quote as plain text on the clipboard, for a message.
func (w *Window) CopyText() {
	if !w.deps.Presenter.Ready() {
		w.say(parts.Warning, "There is nothing to copy yet: the job cannot be priced.")
		return
	}
	job, result, _ := w.deps.Presenter.Job()
	fyne.CurrentApp().Clipboard().SetContent(w.deps.Papers.Text(job, result))
	w.say(parts.Note, "The quote is on the clipboard as text.")
}

// say shows a sentence over the bar at the bottom, until the next one or until it is dismissed.
func (w *Window) say(kind parts.BandKind, text string) {
	w.notice.Set(kind, text)
	w.notice.Offer("Dismiss", func() { w.notice.SetText(""); w.shop.Refresh() })
	w.shop.Refresh()
}

// Notice is what was said last and still stands.
func (w *Window) Notice() string { return w.notice.Text() }

// Warn says that something went wrong behind the window. On the customer's side it waits for the way back.
func (w *Window) Warn(text string) {
	if w.customer {
		w.later = text
		return
	}
	w.say(parts.Fault, text)
}
