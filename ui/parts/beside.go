package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// beside sets two objects side by side over the whole height; the right one has a width of its own, which gives way
// where the window is narrow.
type beside struct{ right float32 }

// Beside sets right beside left, wide at 100 %, in narrow windows down to two fifths of the room.
func Beside(left, right fyne.CanvasObject, wide float32) *fyne.Container {
	return container.New(beside{wide}, left, right)
}

func (b beside) MinSize(o []fyne.CanvasObject) fyne.Size {
	l, r := o[0].MinSize(), o[1].MinSize()
	return fyne.NewSize(l.Width+r.Width+look.Px(look.SectionApart), max(l.Height, r.Height))
}

func (b beside) Layout(o []fyne.CanvasObject, s fyne.Size) {
	gap := look.Px(look.SectionApart)
	right := min(look.Px(b.right), s.Width*0.4)
	if !o[1].Visible() {
		right, gap = 0, 0
	}
	place(o[0], 0, 0, max(s.Width-right-gap, 0), s.Height)
	place(o[1], s.Width-right, 0, right, s.Height)
}
