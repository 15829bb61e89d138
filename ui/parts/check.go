package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// Check is a box to tick with its words beside it.
type Check struct {
	pressable
	words   string
	checked bool

	OnChanged func(checked bool)
}

// NewCheck makes a box that is not ticked.
func NewCheck(words string, changed func(bool)) *Check {
	c := &Check{words: words, OnChanged: changed}
	c.self = c
	c.act = func() {
		c.checked = !c.checked
		c.repaint()
		if c.OnChanged != nil {
			c.OnChanged(c.checked)
		}
	}
	c.ExtendBaseWidget(c)
	return c
}

// Text is what stands beside the box.
func (c *Check) Text() string { return c.words }

// Checked tells whether the box is ticked.
func (c *Check) Checked() bool { return c.checked }

// SetChecked ticks the box or not; OnChanged is not told.
func (c *Check) SetChecked(checked bool) {
	if c.checked != checked {
		c.checked = checked
		c.repaint()
	}
}

// CreateRenderer is part of the toolkit's Widget.
func (c *Check) CreateRenderer() fyne.WidgetRenderer {
	box, word := canvas.NewRectangle(nil), canvas.NewText("", nil)
	short, long := canvas.NewLine(nil), canvas.NewLine(nil)
	c.drawn = true
	return newPainted(painted{
		part: c, objects: []fyne.CanvasObject{box, short, long, word},
		paint: func() {
			fill, border, width := look.Fill, look.Muted, float32(look.Hairline)
			if c.checked {
				fill, border = look.Accent, look.Accent
			}
			if c.focused {
				border, width = look.Accent, look.FocusBorder
				if c.checked {
					border = look.Ink
				}
			}
			setRect(box, fill, border, width, 4)
			style := Style{}
			if c.disabled {
				style = MutedStyle
			}
			setText(word, c.words, style)
			for _, l := range []*canvas.Line{short, long} {
				show(l, c.checked)
				l.StrokeColor, l.StrokeWidth = look.Color(look.OnAccent), 1.8
			}
		},
		layout: func(s fyne.Size) {
			side := look.Px(16)
			top := (s.Height - side) / 2
			place(box, 0, top, side, side)
			at := func(x, y float32) fyne.Position { return fyne.NewPos(side*x, top+side*y) }
			short.Position1, short.Position2 = at(0.24, 0.53), at(0.43, 0.72)
			long.Position1, long.Position2 = at(0.43, 0.72), at(0.78, 0.30)
			place(word, side+look.Px(8), 0, max(s.Width-side-look.Px(8), 0), s.Height)
		},
		min: func() fyne.Size {
			return fyne.NewSize(look.Px(24)+Style{}.measure(c.words).Width, look.Px(24))
		},
	})
}
