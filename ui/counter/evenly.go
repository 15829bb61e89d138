package counter

import "fyne.io/fyne/v2"

// cornered puts a second object into the upper right corner of the first.
type cornered struct{}

// MinSize is part of the toolkit's Layout.
func (cornered) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

// Layout is part of the toolkit's Layout.
func (cornered) Layout(o []fyne.CanvasObject, size fyne.Size) {
	put(o[0], 0, 0, size.Width, size.Height)
	m := o[1].MinSize()
	put(o[1], size.Width-m.Width+px(4), -px(5), m.Width, m.Height)
}

// evenly sets objects in equal columns, as many as have room; several lines are filled as evenly as they can be.
type evenly struct{ wide, apart float32 }

func (e evenly) columns(width float32, objects []fyne.CanvasObject) int {
	n := 0
	for _, o := range objects {
		if o.Visible() {
			n++
		}
	}
	room := max(int((width+px(e.apart))/(px(e.wide)+px(e.apart))), 1)
	lines := max((n+room-1)/room, 1)
	return max((n+lines-1)/lines, 1)
}

// MinSize is part of the toolkit's Layout.
func (e evenly) MinSize(objects []fyne.CanvasObject) fyne.Size {
	bottom := float32(0)
	for _, o := range objects {
		if o.Visible() {
			bottom = max(bottom, o.Position().Y+o.MinSize().Height)
		}
	}
	return fyne.NewSize(px(e.wide), bottom)
}

// Layout is part of the toolkit's Layout.
func (e evenly) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	n := e.columns(size.Width, objects)
	wide := (size.Width - float32(n-1)*px(e.apart)) / float32(n)
	i, y, tall := 0, float32(0), float32(0)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		if i == n {
			i, y, tall = 0, y+tall+px(e.apart), 0
		}
		x := float32(i) * (wide + px(e.apart))
		put(o, x, y, wide, o.MinSize().Height)
		h := o.MinSize().Height // a problem knows its height once it knows its width
		put(o, x, y, wide, h)
		tall = max(tall, h)
		i++
	}
}
