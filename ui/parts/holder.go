package parts

import "fyne.io/fyne/v2"

// holder is a part that is put together of others: it shows one object and is as large as that. The toolkit knows
// containers by their exact type, so a part cannot be one by embedding it.
type holder struct {
	base
	content fyne.CanvasObject
}

func (h *holder) hold(self fyne.Widget, content fyne.CanvasObject) {
	h.content = content
	h.ExtendBaseWidget(self)
}

// inner is what scrolls look into to find the focused part.
func (h *holder) inner() fyne.CanvasObject { return h.content }

// CreateRenderer is part of the toolkit's Widget.
func (h *holder) CreateRenderer() fyne.WidgetRenderer {
	return newPainted(painted{
		part: h, objects: []fyne.CanvasObject{h.content}, paint: func() {},
		layout: func(s fyne.Size) { place(h.content, 0, 0, s.Width, s.Height) },
		min:    func() fyne.Size { return h.content.MinSize() },
	})
}
