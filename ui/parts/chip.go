package parts

import (
	"image/color"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// ParseHex reads a colour like #1f3055; false if it is none.
func ParseHex(hex string) (color.NRGBA, bool) {
	if len(hex) != 7 || hex[0] != '#' {
		return color.NRGBA{}, false
	}
	v, err := strconv.ParseUint(hex[1:], 16, 32)
	if err != nil {
		return color.NRGBA{}, false
	}
	return color.NRGBA{R: uint8(v >> 16), G: uint8(v >> 8), B: uint8(v), A: 0xff}, true
}

// dot draws a colour as a small disc with a hairline round it, so that white shows on white and black on black.
func dot(c *canvas.Circle, fill color.NRGBA) {
	rim := look.Color(look.Rim)
	if c.FillColor == fill && c.StrokeColor == rim {
		return
	}
	c.FillColor, c.StrokeColor, c.StrokeWidth = fill, rim, look.Hairline
	c.Refresh()
}

// Swatch is a colour as a small disc. What colour it is stands beside it in words.
type Swatch struct {
	base
	fill color.NRGBA
}

// NewSwatch makes a swatch of a colour like #1f3055; anything else is grey.
func NewSwatch(hex string) *Swatch {
	s := &Swatch{}
	s.ExtendBaseWidget(s)
	s.SetHex(hex)
	return s
}

// SetHex changes the colour.
func (s *Swatch) SetHex(hex string) {
	fill, ok := ParseHex(hex)
	if !ok {
		fill = color.NRGBA{R: 0xb4, G: 0xb4, B: 0xb4, A: 0xff}
	}
	if s.fill != fill {
		s.fill = fill
		s.repaint()
	}
}

// CreateRenderer is part of the toolkit's Widget.
func (s *Swatch) CreateRenderer() fyne.WidgetRenderer {
	c := canvas.NewCircle(nil)
	s.drawn = true
	return newPainted(painted{
		part: s, objects: []fyne.CanvasObject{c},
		paint: func() { dot(c, s.fill) },
		layout: func(z fyne.Size) {
			d := min(z.Width, z.Height)
			place(c, (z.Width-d)/2, (z.Height-d)/2, d, d)
		},
		min: func() fyne.Size { return fyne.NewSize(look.Px(12), look.Px(12)) },
	})
}

// Chip is a word in a rounded border, with a colour before it where it stands for one: an ink, a filter, a state.
type Chip struct {
	pressable
	word    string
	hex     string
	chosen  bool
	without bool // no colour before the word
}

// NewChip makes a chip with a colour; act may be nil.
func NewChip(word, hex string, act func()) *Chip {
	c := &Chip{word: word, hex: hex}
	c.act, c.self, c.disabled = act, c, act == nil
	c.ExtendBaseWidget(c)
	return c
}

// NewWordChip makes a chip without a colour; act may be nil.
func NewWordChip(word string, act func()) *Chip {
	c := NewChip(word, "", act)
	c.without = true
	return c
}

// Text is the chip's word.
func (c *Chip) Text() string { return c.word }

// Set changes word and colour.
func (c *Chip) Set(word, hex string) {
	if c.word != word || c.hex != hex {
		c.word, c.hex = word, hex
		c.repaint()
	}
}

// SetChosen shows the chip as the chosen one of several.
func (c *Chip) SetChosen(chosen bool) {
	if c.chosen != chosen {
		c.chosen = chosen
		c.repaint()
	}
}

// Chosen tells whether it is the chosen one.
func (c *Chip) Chosen() bool { return c.chosen }

func (c *Chip) style() Style {
	if c.chosen {
		return Style{Color: look.Accent, Weight: Medium}
	}
	return Style{Size: ""}
}

func (c *Chip) textX() float32 {
	if c.without {
		return look.Px(9)
	}
	return look.Px(23)
}

// CreateRenderer is part of the toolkit's Widget.
func (c *Chip) CreateRenderer() fyne.WidgetRenderer {
	box, disc, word := canvas.NewRectangle(nil), canvas.NewCircle(nil), canvas.NewText("", nil)
	c.drawn = true
	return newPainted(painted{
		part: c, objects: []fyne.CanvasObject{box, disc, word},
		paint: func() {
			fill, border, width := look.Fill, look.Rule, float32(look.Hairline)
			if c.chosen {
				fill, border = look.Tint, look.Accent
			}
			if c.hovered && c.act != nil {
				border = look.Muted
			}
			if c.focused {
				border, width = look.Accent, look.FocusBorder
			}
			setRect(box, fill, border, width, look.Px(11))
			setText(word, c.word, c.style())
			show(disc, !c.without)
			if fill, ok := ParseHex(c.hex); ok {
				dot(disc, fill)
			} else {
				dot(disc, color.NRGBA{R: 0xb4, G: 0xb4, B: 0xb4, A: 0xff})
			}
		},
		layout: func(s fyne.Size) {
			place(box, 0, 0, s.Width, s.Height)
			d := look.Px(12)
			place(disc, look.Px(6), (s.Height-d)/2, d, d)
			place(word, c.textX(), 0, max(s.Width-c.textX(), 0), s.Height)
		},
		min: func() fyne.Size {
			return fyne.NewSize(c.style().measure(c.word).Width+c.textX()+look.Px(9), look.Px(22))
		},
	})
}
