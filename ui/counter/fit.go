package counter

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// put moves and resizes an object, where it is not there already.
func put(o fyne.CanvasObject, x, y, w, h float32) {
	if p := fyne.NewPos(x, y); o.Position() != p {
		o.Move(p)
	}
	if s := fyne.NewSize(w, h); o.Size() != s {
		o.Resize(s)
	}
}

// visible shows or hides an object, where it is not so already, and tells whether that changed.
func visible(o fyne.CanvasObject, yes bool) bool {
	if o.Visible() == yes {
		return false
	}
	if yes {
		o.Show()
	} else {
		o.Hide()
	}
	return true
}

// relay lays a container out anew without painting what stays.
func relay(c *fyne.Container) {
	if c.Size().Width > 0 {
		c.Layout.Layout(c.Objects, c.Size())
	}
}

// fitScroll gives the content of a scroll, a column, the height it needs now. A paragraph knows its height once it knows its width,
// hence twice.
func fitScroll(s *container.Scroll, column *fyne.Container) {
	if s.Size().Width <= 0 {
		return
	}
	for range 2 {
		want := s.Content.MinSize().Max(s.Size())
		want.Width = s.Size().Width
		if s.Content.Size() != want {
			s.Content.Resize(want)
		}
		relay(column)
	}
	most := max(s.Content.Size().Height-s.Size().Height, 0)
	if s.Offset.Y > most {
		s.ScrollToOffset(fyne.NewPos(0, most))
	}
}
