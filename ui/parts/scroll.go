package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// NewScroll shows content that may be higher than its room. What gets the focus inside is brought into sight.
func NewScroll(content fyne.CanvasObject) *container.Scroll { return container.NewVScroll(content) }

// NewPageScroll is a scroll for panels that stand on the page: it leaves room for its bar at the right and for the page
// below the last panel.
func NewPageScroll(content fyne.CanvasObject) *container.Scroll {
	return container.NewVScroll(container.New(pageScroll{}, content))
}

type pageScroll struct{}

const barRoom = 10

func (pageScroll) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().AddWidthHeight(barRoom, look.Px(look.PageMargin))
}

func (pageScroll) Layout(o []fyne.CanvasObject, s fyne.Size) {
	place(o[0], 0, 0, max(s.Width-barRoom, 0), max(s.Height-look.Px(look.PageMargin), 0))
}

// revealMargin is how far inside the edge the focused part is brought.
const revealMargin = 12

// reveal brings an object into sight in every scroll around it.
func reveal(o fyne.CanvasObject) {
	c := canvasOf(o)
	if c == nil {
		return
	}
	d := fyne.CurrentApp().Driver()
	for _, s := range scrollsAround(c.Content(), o, nil) {
		top := d.AbsolutePositionForObject(o).Y - d.AbsolutePositionForObject(s).Y
		bottom := top + o.Size().Height
		offset := s.Offset
		switch {
		case top < revealMargin:
			offset.Y += top - revealMargin
		case bottom > s.Size().Height-revealMargin:
			offset.Y += bottom - s.Size().Height + revealMargin
		default:
			continue
		}
		s.ScrollToOffset(fyne.NewPos(offset.X, max(offset.Y, 0)))
	}
}

// scrollsAround finds the scrolls between root and an object, the outermost first; nil if the object is not below root.
func scrollsAround(root, o fyne.CanvasObject, around []*container.Scroll) []*container.Scroll {
	if root == o {
		return append([]*container.Scroll{}, around...)
	}
	switch r := root.(type) {
	case interface{ inner() fyne.CanvasObject }:
		return scrollsAround(r.inner(), o, around)
	case *container.Scroll:
		return scrollsAround(r.Content, o, append(around, r))
	case *fyne.Container:
		for _, child := range r.Objects {
			if child.Visible() {
				if found := scrollsAround(child, o, around); found != nil {
					return found
				}
			}
		}
	}
	return nil
}
