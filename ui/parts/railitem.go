package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// RailItem is a place in the rail: an icon over its word, with a bar at the left while the place is shown.
type RailItem struct {
	pressable
	icon   look.Icon
	word   string
	active bool
}

// NewRailItem makes an item.
func NewRailItem(icon look.Icon, word string, act func()) *RailItem {
	r := &RailItem{icon: icon, word: word}
	r.act, r.self = act, r
	r.ExtendBaseWidget(r)
	return r
}

// Text is the place's word.
func (r *RailItem) Text() string { return r.word }

// SetActive marks the place as the one that is shown.
func (r *RailItem) SetActive(active bool) {
	if r.active != active {
		r.active = active
		r.repaint()
	}
}

// Active tells whether the place is shown.
func (r *RailItem) Active() bool { return r.active }

func (r *RailItem) style() Style {
	s := Style{Size: look.Caption, Color: look.Muted, Align: fyne.TextAlignCenter}
	if r.active {
		s.Color, s.Weight = look.Accent, Semibold
	}
	return s
}

// CreateRenderer is part of the toolkit's Widget.
func (r *RailItem) CreateRenderer() fyne.WidgetRenderer {
	bar, over, word := canvas.NewRectangle(nil), canvas.NewRectangle(nil), canvas.NewText("", nil)
	picture := canvas.NewImageFromResource(nil)
	picture.FillMode = canvas.ImageFillContain
	r.drawn = true
	return newPainted(painted{
		part: r, objects: []fyne.CanvasObject{over, bar, picture, word},
		paint: func() {
			setRect(bar, look.Accent, look.Clear, 0, 0)
			show(bar, r.active)
			fill, border, width := look.Clear, look.Clear, float32(0)
			if r.hovered {
				fill = look.Hover
			}
			if r.focused {
				border, width = look.Accent, look.FocusBorder
			}
			setRect(over, fill, border, width, look.FieldRadius)
			setText(word, r.word, r.style())
			if d := r.icon.Drawing(r.style().color()); picture.Resource == nil || picture.Resource.Name() != d.Name() {
				picture.Resource = d
				picture.Refresh()
			}
		},
		layout: func(s fyne.Size) {
			place(over, look.Px(5), 0, s.Width-look.Px(10), s.Height)
			place(bar, 0, 0, 3, s.Height)
			side := look.Px(22)
			top := (s.Height - side - look.Px(18)) / 2
			place(picture, (s.Width-side)/2, top, side, side)
			place(word, 0, top+side+look.Px(2), s.Width, look.Px(16))
		},
		min: func() fyne.Size { return fyne.NewSize(look.Px(look.RailWidth), look.Px(54)) },
	})
}
