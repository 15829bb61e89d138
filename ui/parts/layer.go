package parts

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/look"
)

// Layered is the window's content with a list over it that does not take the focus away, as a pop-up would. It stands
// at, or near, the root of the canvas.
type Layered struct {
	base
	content fyne.CanvasObject
	list    *dropList
}

// NewLayered puts a layer for lists over content.
func NewLayered(content fyne.CanvasObject) *Layered {
	l := &Layered{content: content, list: newDropList()}
	l.list.Hide()
	l.ExtendBaseWidget(l)
	return l
}

func (l *Layered) inner() fyne.CanvasObject { return l.content }

// CreateRenderer is part of the toolkit's Widget.
func (l *Layered) CreateRenderer() fyne.WidgetRenderer {
	return newPainted(painted{
		part: l, objects: []fyne.CanvasObject{l.content, l.list}, paint: func() {},
		layout: func(s fyne.Size) {
			place(l.content, 0, 0, s.Width, s.Height)
			if l.list.Visible() && l.list.owner != nil {
				l.put()
			}
		},
		min: func() fyne.Size { return l.content.MinSize() },
	})
}

// put sets the list under its owner, or above it where there is more room.
func (l *Layered) put() {
	d := fyne.CurrentApp().Driver()
	owner := l.list.owner
	at := d.AbsolutePositionForObject(owner).Subtract(d.AbsolutePositionForObject(l))
	below := at.Y + owner.Size().Height + 2
	size := l.list.wanted(owner.Size().Width)
	if room := l.Size().Height - below; size.Height > room && at.Y > room {
		size.Height = min(size.Height, at.Y-2)
		below = at.Y - 2 - size.Height
	} else {
		size.Height = min(size.Height, room)
	}
	x := min(at.X, max(l.Size().Width-size.Width, 0))
	place(l.list, x, below, size.Width, size.Height)
}

// layerOf finds the layer over the canvas on which an object is.
func layerOf(o fyne.CanvasObject) *Layered {
	c := canvasOf(o)
	if c == nil {
		return nil
	}
	return findLayer(c.Content(), 3)
}

func findLayer(o fyne.CanvasObject, depth int) *Layered {
	switch o := o.(type) {
	case *Layered:
		return o
	case *fyne.Container:
		if depth == 0 {
			return nil
		}
		for _, child := range o.Objects {
			if l := findLayer(child, depth-1); l != nil {
				return l
			}
		}
	}
	return nil
}

// drop is one use of the layer's list by an owner.
type drop struct {
	owner fyne.CanvasObject
	pick  func(i int)
	wide  float32 // at least so wide, at 100 %; 0: as its owner
}

// open shows options under the owner; at is the one that is marked, -1 for none.
func (d *drop) open(options []Option, at int) {
	l := layerOf(d.owner)
	if l == nil {
		return
	}
	l.list.fill(d, options, at)
	show(l.list, len(options) > 0)
	if len(options) > 0 {
		l.put()
		l.list.repaint()
	}
}

// list is the layer's list while it shows this owner's options, or nil.
func (d *drop) list() *dropList {
	if l := layerOf(d.owner); l != nil && l.list.Visible() && l.list.owner == d.owner {
		return l.list
	}
	return nil
}

// close hides the list if it is this owner's and the pointer is not on it.
func (d *drop) close(even bool) {
	if l := d.list(); l != nil && (even || !l.hovered) {
		l.Hide()
	}
}

// minWide is how wide the list is at least.
func (d *drop) minWide(owner float32) float32 { return max(owner, look.Px(d.wide)) }
