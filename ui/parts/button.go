package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// ButtonKind is how much a button asks for attention.
type ButtonKind int

// The kinds: one filled button a screen, links where a border would be too much.
const (
	Quiet ButtonKind = iota
	Filled
	Link
)

// Button is a word that does something.
type Button struct {
	pressable
	kind  ButtonKind
	word  string
	key   string // its key, shown muted after the word
	small bool
}

// NewButton makes a button. key, where it has one, is shown muted after the word.
func NewButton(kind ButtonKind, word, key string, act func()) *Button {
	b := &Button{kind: kind, word: word, key: key}
	b.act, b.self = act, b
	b.ExtendBaseWidget(b)
	return b
}

// NewSmallButton makes a button as high as a field in a table.
func NewSmallButton(kind ButtonKind, word string, act func()) *Button {
	b := NewButton(kind, word, "", act)
	b.small = true
	return b
}

// Text is the button's word.
func (b *Button) Text() string { return b.word }

// SetText changes the word.
func (b *Button) SetText(word string) {
	if b.word != word {
		b.word = word
		b.repaint()
	}
}

// SetKind changes how much the button asks for attention.
func (b *Button) SetKind(kind ButtonKind) {
	if b.kind != kind {
		b.kind = kind
		b.repaint()
	}
}

// SetAction changes what the button does.
func (b *Button) SetAction(act func()) { b.act = act }

func (b *Button) styles() (word, key Style) {
	word, key = Style{}, MutedStyle
	switch {
	case b.disabled:
		word.Color = look.Muted
	case b.kind == Filled:
		word, key = Style{Color: look.OnAccent, Weight: Medium}, Style{Color: look.OnAccent}
	case b.kind == Link:
		word.Color = look.Accent
	}
	return word, key
}

func (b *Button) padX() float32 {
	if b.kind == Link {
		return look.Px(4)
	}
	if b.small {
		return look.Px(9)
	}
	return look.Px(12)
}

// CreateRenderer is part of the toolkit's Widget.
func (b *Button) CreateRenderer() fyne.WidgetRenderer {
	box, over := canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	word, key := canvas.NewText("", nil), canvas.NewText("", nil)
	b.drawn = true
	return newPainted(painted{
		part: b, objects: []fyne.CanvasObject{box, over, word, key},
		paint: func() {
			w, k := b.styles()
			setText(word, b.word, w)
			setText(key, b.key, k)
			b.paintBox(box)
			hover := look.Clear
			if b.hovered && !b.disabled && b.kind != Link {
				hover = look.Hover
			}
			setRect(over, hover, look.Clear, 0, look.FieldRadius)
		},
		layout: func(s fyne.Size) {
			place(box, 0, 0, s.Width, s.Height)
			place(over, 0, 0, s.Width, s.Height)
			w, k := b.styles()
			wide, gap := w.measure(b.word).Width, float32(0)
			if b.key != "" {
				gap = look.Px(5) + k.measure(b.key).Width
			}
			x := (s.Width - wide - gap) / 2
			place(word, x, 0, wide, s.Height)
			place(key, x+wide+look.Px(5), 0, gap, s.Height)
		},
		min: b.min,
	})
}

func (b *Button) paintBox(box *canvas.Rectangle) {
	fill, border, width := look.Fill, look.Rule, float32(look.Hairline)
	switch b.kind {
	case Filled:
		fill, border = look.Accent, look.Accent
		if b.disabled {
			fill, border = look.Fill, look.Rule
		}
	case Link:
		fill, border = look.Clear, look.Clear
		if b.hovered && !b.disabled {
			fill = look.Hover
		}
	}
	if b.focused {
		width = look.FocusBorder
		border = look.Accent
		if b.kind == Filled {
			border = look.Ink
		}
	}
	setRect(box, fill, border, width, look.FieldRadius)
}

func (b *Button) min() fyne.Size {
	w, k := b.styles()
	size := w.measure(b.word)
	if b.key != "" {
		size.Width += look.Px(5) + k.measure(b.key).Width
	}
	h := look.Px(look.FieldHeight)
	switch {
	case b.small:
		h = look.Px(look.CellHeight)
	case b.kind == Link:
		h = look.Px(22)
	}
	return fyne.NewSize(size.Width+2*b.padX(), h)
}
