package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// narrowed keeps an object to a width that is good to read.
type narrowed struct{ most float32 }

// Narrow keeps an object to at most a width, at 100 %, against the left edge.
func Narrow(most float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(narrowed{most}, o)
}

func (n narrowed) MinSize(o []fyne.CanvasObject) fyne.Size { return o[0].MinSize() }

func (n narrowed) Layout(o []fyne.CanvasObject, s fyne.Size) {
	place(o[0], 0, 0, min(s.Width, look.Px(n.most)), s.Height)
}
