package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

var placeNames = [placeCount]string{"Counter", "Quote book", "Blanks", "Rate cards", "Shop"}

var placeIcons = [placeCount]look.Icon{look.CounterIcon, look.BookIcon, look.BlanksIcon, look.CardsIcon, look.ShopIcon}

// rail is the narrow column at the left.
type rail struct {
	object fyne.CanvasObject
	items  [placeCount]*parts.RailItem
}

func newRail(goTo func(n int)) *rail {
	r := &rail{}
	column := parts.Column(12)
	for i := range r.items {
		r.items[i] = parts.NewRailItem(placeIcons[i], placeNames[i], func() { goTo(i + 1) })
		column.Add(r.items[i])
	}
	edge := container.NewBorder(nil, nil, nil, parts.NewUpright(), parts.Inset(0, 17, column))
	r.object = edge
	return r
}

func (r *rail) mark(at placeID) {
	for i, item := range r.items {
		item.SetActive(placeID(i) == at)
	}
}

// Go shows a place, 1 to 5 as Ctrl+1 to Ctrl+5 do.
func (w *Window) Go(n int) {
	if n < 1 || n > int(placeCount) || w.customer {
		return
	}
	w.show(placeID(n - 1))
	w.Focus()
}

// At is the place that is shown, 1 to 5.
func (w *Window) At() int { return int(w.at) + 1 }

func (w *Window) show(at placeID) {
	w.closePage()
	if w.made[at] == nil {
		w.made[at] = w.places[at].Content()
		w.stage.Add(w.made[at])
	}
	for i, o := range w.made {
		if o != nil && placeID(i) != at {
			o.Hide()
		}
	}
	w.at = at
	w.made[at].Show()
	w.rail.mark(at)
	w.status.forPlace(at)
	w.places[at].Shown()
}
