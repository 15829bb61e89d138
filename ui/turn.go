package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Customer tells whether the window shows the customer's side.
func (w *Window) Customer() bool { return w.customer }

// Turn turns the window to its other side; back to the shop's side only with the PIN, where the shop asks for one.
func (w *Window) Turn() {
	switch {
	case !w.customer:
		w.TurnToCustomer()
	case w.deps.PIN == nil || w.deps.PIN(""):
		w.turnBack()
	default:
		w.askPIN()
	}
}

// TurnToCustomer takes everything of the shop off the screen: places, menu, keys, notices and the window's title.
func (w *Window) TurnToCustomer() {
	if w.customer {
		return
	}
	w.show(counterPlace)
	w.notice.SetText("")
	w.customer = true
	w.win.Canvas().Unfocus()
	w.win.SetMainMenu(nil)
	if w.front == nil {
		w.front = w.side.Content()
	}
	w.root.Objects = []fyne.CanvasObject{w.front}
	w.side.Shown()
	w.title(w.deps.Presenter.View())
	w.root.Refresh()
	w.trace("customer's side")
}

func (w *Window) turnBack() {
	w.customer, w.pin = false, nil
	w.root.Objects = []fyne.CanvasObject{w.shop}
	w.win.SetMainMenu(w.menu())
	w.title(w.deps.Presenter.View())
	w.root.Refresh()
	w.Focus()
	if w.later != "" {
		w.Warn(w.later)
		w.later = ""
	}
	w.trace("shop's side")
}

// pinPrompt asks for the PIN over the customer's side.
type pinPrompt struct {
	field *parts.Captioned
	entry *parts.Field
}

func (w *Window) askPIN() {
	if w.pin != nil {
		parts.Focus(w.pin.entry)
		return
	}
	p := &pinPrompt{entry: parts.NewField("")}
	p.entry.Secret = true
	p.field = parts.NewCaptioned("PIN", p.entry)
	p.entry.OnSubmitted = func(typed string) {
		if w.deps.PIN(typed) {
			w.turnBack()
			return
		}
		p.entry.SetText("")
		p.field.SetProblem("not this one")
	}
	p.entry.OnKey = func(e *fyne.KeyEvent) bool {
		if e.Name == fyne.KeyEscape {
			w.dropPIN()
		}
		return e.Name == fyne.KeyEscape || e.Name == fyne.KeyF2
	}
	box := container.NewStack(parts.NewSheetGround(), parts.Inset(look.SectionPadX, look.SectionPadY,
		parts.Column(8, parts.Gap(200, 0), p.field)))
	w.pin = p
	w.root.Objects = []fyne.CanvasObject{w.front, container.NewCenter(box)}
	w.root.Refresh()
	parts.Focus(p.entry)
}

func (w *Window) dropPIN() {
	w.pin = nil
	w.root.Objects = []fyne.CanvasObject{w.front}
	w.root.Refresh()
}
