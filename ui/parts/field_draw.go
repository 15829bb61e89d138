package parts

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

const fieldPad = 9 // between border and text, at 100 %

func (f *Field) pad() float32 {
	if f.height == look.CellHeight {
		return look.Px(7)
	}
	return look.Px(fieldPad)
}

func (f *Field) style() Style {
	s := Style{}
	if f.strong {
		s.Weight = Semibold
	}
	if f.disabled {
		s.Color = look.Muted
	}
	return s
}

// drawnText is the text as it is shown: dots for a secret.
func (f *Field) drawnText() []rune {
	if f.Secret {
		return []rune(strings.Repeat("•", len(f.line.text)))
	}
	return f.line.text
}

// room is how wide the text may be.
func (f *Field) room() float32 {
	return max(f.Size().Width-2*f.pad()-f.unitRoom(), 0)
}

// unitRoom is what the unit takes; nothing where text and unit do not both fit, for the text goes first.
func (f *Field) unitRoom() float32 {
	if f.Unit == "" {
		return 0
	}
	unit := MutedStyle.measure(f.Unit).Width + look.Px(6)
	if f.style().measure(string(f.drawnText())).Width+unit > f.Size().Width-2*f.pad() {
		return 0
	}
	return unit
}

// visible is the part of the text that is in sight. While the field has the focus the caret is always within.
func (f *Field) visible() []rune {
	text, style, room := f.drawnText(), f.style(), f.room()
	if !f.focused {
		f.first = 0
		return []rune(shorten(string(text), style, room))
	}
	if style.measure(string(text)).Width <= room {
		f.first = 0
		return text
	}
	f.first = min(f.first, f.line.caret)
	for f.first < f.line.caret && style.measure(string(text[f.first:f.line.caret])).Width > room {
		f.first++
	}
	last := f.line.caret
	for last < len(text) && style.measure(string(text[f.first:last+1])).Width <= room {
		last++
	}
	return text[f.first:last]
}

// origin is where the visible text begins across the field.
func (f *Field) origin(shown []rune) float32 {
	if f.align != fyne.TextAlignTrailing {
		return f.pad()
	}
	return f.pad() + f.room() - f.style().measure(string(shown)).Width
}

// fieldDrawing is the five objects a field is drawn with.
type fieldDrawing struct {
	f                *Field
	box, mark, caret *canvas.Rectangle
	text, unit       *canvas.Text
}

// CreateRenderer is part of the toolkit's Widget.
func (f *Field) CreateRenderer() fyne.WidgetRenderer {
	d := &fieldDrawing{
		f: f, box: canvas.NewRectangle(nil), mark: canvas.NewRectangle(nil), caret: canvas.NewRectangle(nil),
		text: canvas.NewText("", nil), unit: canvas.NewText("", nil),
	}
	f.drawn = true
	return newPainted(painted{
		part: f, objects: []fyne.CanvasObject{d.box, d.mark, d.text, d.unit, d.caret},
		paint: d.paint, layout: d.layout,
		min: func() fyne.Size { return fyne.NewSize(look.Px(36), look.Px(f.height)) },
	})
}

func (d *fieldDrawing) paint() {
	f := d.f
	paintBox(d.box, boxState{focused: f.focused, wrong: f.wrong, bare: f.bare, hovered: f.hovered, disabled: f.disabled})
	setRect(d.mark, look.Selected, look.Clear, 0, 2)
	setRect(d.caret, look.Ink, look.Clear, 0, 0)
	setText(d.unit, f.Unit, MutedStyle.Right())
}

func (d *fieldDrawing) layout(s fyne.Size) {
	f := d.f
	place(d.box, 0, 0, s.Width, s.Height)
	place(d.unit, 0, 0, max(s.Width-f.pad(), 0), s.Height)
	show(d.unit, f.unitRoom() > 0)
	if len(f.line.text) == 0 {
		d.empty(s)
		return
	}
	shown := f.visible()
	style, x := f.style(), f.origin(shown)
	setText(d.text, string(shown), style)
	place(d.text, x, 0, max(s.Width-x, 0), s.Height)
	from, to := f.line.span()
	across := func(i int) float32 {
		i = min(max(i-f.first, 0), len(shown))
		return x + style.measure(string(shown[:i])).Width
	}
	show(d.mark, f.focused && from != to)
	show(d.caret, f.focused && from == to)
	if f.focused {
		top := (s.Height - style.height()) / 2
		place(d.mark, across(from), top, across(to)-across(from), style.height())
		place(d.caret, across(f.line.caret), top+1, 1.5, style.height()-2)
	}
}

// empty shows the hint, and the caret before it.
func (d *fieldDrawing) empty(s fyne.Size) {
	f := d.f
	style := MutedStyle
	style.Align = f.align
	setText(d.text, shorten(f.Hint, style, f.room()), style)
	place(d.text, f.pad(), 0, f.room(), s.Height)
	show(d.mark, false)
	show(d.caret, f.focused)
	x := f.pad() - 2
	if f.align == fyne.TextAlignTrailing && f.Hint == "" {
		x += f.room()
	}
	h := style.height()
	place(d.caret, x, (s.Height-h)/2+1, 1.5, h-2)
}
