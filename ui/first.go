package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Begin shows a page over everything of the shop's side before the Counter is used for the first time. make gets what
// the page calls when it is done with.
func (w *Window) Begin(make func(done func()) fyne.CanvasObject) {
	w.closePage()
	page := make(func() {
		w.closePage()
		w.deps.Presenter.Reload()
		w.Go(1)
	})
	w.page = container.NewStack(parts.NewGround(look.Page), page)
	w.stage.Add(w.page)
}
