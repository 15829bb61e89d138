package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Guide is a page of questions, typed into from its first on.
type Guide interface {
	Content() fyne.CanvasObject
	Focus()
}

// Begin shows a page over everything of the shop's side before the Counter is used for the first time. make gets what
// the page calls when it is done with.
func (w *Window) Begin(make func(done func()) Guide) {
	w.closePage()
	w.guide = make(func() {
		w.closePage()
		w.deps.Presenter.Reload()
		w.Go(1)
	})
	w.page = container.NewStack(parts.NewGround(look.Page), w.guide.Content())
	w.stage.Add(w.page)
}
