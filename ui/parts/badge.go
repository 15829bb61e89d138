package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// Badge is a word in a border of its own colour: DEMO, or the state of a quote.
type Badge struct {
	base
	word  string
	color fyne.ThemeColorName
}

// NewBadge makes a badge.
func NewBadge(word string, color fyne.ThemeColorName) *Badge {
	b := &Badge{word: word, color: color}
	b.ExtendBaseWidget(b)
	return b
}

// Text is the badge's word.
func (b *Badge) Text() string { return b.word }

// Set changes word and colour.
func (b *Badge) Set(word string, color fyne.ThemeColorName) {
	if b.word != word || b.color != color {
		b.word, b.color = word, color
		b.repaint()
	}
}

func (b *Badge) style() Style {
	return Style{Size: look.Caption, Weight: Medium, Color: b.color, Align: fyne.TextAlignCenter}
}

// CreateRenderer is part of the toolkit's Widget.
func (b *Badge) CreateRenderer() fyne.WidgetRenderer {
	box, word := canvas.NewRectangle(nil), canvas.NewText("", nil)
	b.drawn = true
	return newPainted(painted{
		part: b, objects: []fyne.CanvasObject{box, word},
		paint: func() {
			setRect(box, look.Clear, b.color, look.Hairline, 4)
			setText(word, b.word, b.style())
		},
		layout: func(s fyne.Size) {
			place(box, 0, 0, s.Width, s.Height)
			place(word, 0, 0, s.Width, s.Height)
		},
		min: func() fyne.Size {
			return fyne.NewSize(b.style().measure(b.word).Width+look.Px(14), look.Px(19))
		},
	})
}
