package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// BandKind is what a band says.
type BandKind int

// The kinds of band.
const (
	Warning BandKind = iota
	Fault
	Note
)

// Band is a sentence on a coloured ground, with something to do about it at the right where there is something.
type Band struct {
	base
	kind   BandKind
	words  *Paragraph
	action *Button
}

// NewBand makes a band; it hides while its text is empty.
func NewBand(kind BandKind, text string) *Band {
	b := &Band{kind: kind, action: NewButton(Link, "", "", nil)}
	b.words = NewParagraph(text, Style{Color: b.colors()[0]})
	b.action.Hide()
	b.ExtendBaseWidget(b)
	show(b, text != "")
	return b
}

func (b *Band) colors() [2]fyne.ThemeColorName {
	switch b.kind {
	case Warning:
		return [2]fyne.ThemeColorName{look.Warn, look.WarnBand}
	case Fault:
		return [2]fyne.ThemeColorName{look.Fault, look.FaultBand}
	}
	return [2]fyne.ThemeColorName{look.Accent, look.Tint}
}

// Text is what the band says.
func (b *Band) Text() string { return b.words.Text() }

// SetText changes what the band says; an empty text hides it.
func (b *Band) SetText(text string) {
	if b.words.Text() != text {
		b.words.SetText(text)
		b.repaint()
	}
	show(b, text != "")
}

// Set changes what the band says and what kind it is.
func (b *Band) Set(kind BandKind, text string) {
	if b.kind != kind {
		b.kind = kind
		b.words.SetStyle(Style{Color: b.colors()[0]})
		b.repaint()
	}
	b.SetText(text)
}

// Offer puts a word at the right that does something; an empty word takes it away.
func (b *Band) Offer(word string, act func()) {
	b.action.SetText(word)
	b.action.SetAction(act)
	show(b.action, word != "")
	b.repaint()
}

// Resize is part of the toolkit's CanvasObject: the sentence breaks its lines for the new width.
func (b *Band) Resize(s fyne.Size) {
	b.words.Resize(fyne.NewSize(b.wordsWidth(s.Width), b.words.MinSize().Height))
	b.BaseWidget.Resize(s)
}

func (b *Band) wordsWidth(width float32) float32 {
	w := width - 2*look.Px(10)
	if b.action.Visible() {
		w -= b.action.MinSize().Width + look.Px(8)
	}
	return max(w, 0)
}

// CreateRenderer is part of the toolkit's Widget.
func (b *Band) CreateRenderer() fyne.WidgetRenderer {
	box := canvas.NewRectangle(nil)
	b.drawn = true
	return newPainted(painted{
		part: b, objects: []fyne.CanvasObject{box, b.words, b.action},
		paint: func() { setRect(box, b.colors()[1], look.Clear, 0, look.FieldRadius) },
		layout: func(s fyne.Size) {
			place(box, 0, 0, s.Width, s.Height)
			h := b.words.MinSize().Height
			place(b.words, look.Px(10), (s.Height-h)/2, b.wordsWidth(s.Width), h)
			a := b.action.MinSize()
			place(b.action, s.Width-a.Width-look.Px(8), (s.Height-a.Height)/2, a.Width, a.Height)
		},
		min: func() fyne.Size {
			h := b.words.MinSize().Height
			if b.action.Visible() {
				h = max(h, b.action.MinSize().Height)
			}
			return fyne.NewSize(look.Px(80), h+2*look.Px(6))
		},
	})
}
