package ui

import "pressworth/catalog"

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
