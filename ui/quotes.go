package ui

import (
	"pressworth/catalog"
	"pressworth/ui/parts"
)

// OpenQuote keeps what is on the counter and shows another quote there. A draft without an id is a new quote: it is
// kept by itself a moment later, as if it had been typed.
func (w *Window) OpenQuote(d catalog.Draft) {
	if !w.save() {
		return
	}
	w.deps.Presenter.Open(d)
	if d.ID == 0 {
		w.deps.Presenter.Today()
	}
	w.Go(1)
}

// sender is a quote book that can take note that a quote was sent: it freezes the next revision.
type sender interface {
	MarkSent(id int64, how string, then func(words string, err error))
}

// offerSent offers to freeze a revision of the quote whose paper for the customer was just written.
func (w *Window) offerSent(p Paper) {
	how := map[Paper]string{QuotePaper: "PDF", EmailPaper: "e-mail"}[p]
	book, ok := w.deps.Book.(sender)
	id := w.deps.Presenter.Draft().ID
	if how == "" || !ok || id == 0 || w.deps.LookOnly {
		return
	}
	w.notice.Offer("Mark as sent", func() {
		if !w.save() {
			return
		}
		book.MarkSent(id, how, func(words string, err error) {
			if err != nil {
				w.say(parts.Fault, "The quote could not be marked as sent: "+err.Error())
				return
			}
			w.say(parts.Note, words)
		})
	})
}
