package parts

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"pressworth/ui/look"
)

// BasisRow is an amount with its name and the formula behind it: name, muted basis cut with an ellipsis, amount
// against the right edge. A click or Enter opens the whole basis below.
type BasisRow struct {
	pressable
	row      BasisText
	open     bool
	whole    *Paragraph
	NameWide float32 // room for the name at 100 %; 0: what it needs

	OnOpen func(open bool) // tells that it was opened or closed
}

// BasisText is what a BasisRow shows.
type BasisText struct {
	Name   string
	Basis  string
	Amount string
	More   string       // said below when the row is open, beside the whole basis
	Mark   *color.NRGBA // a square of this colour before the name; nil: none
	Strong bool
	Faint  bool // the figures no longer hold
}

// NewBasisRow makes a row.
func NewBasisRow(row BasisText) *BasisRow {
	b := &BasisRow{row: row, NameWide: 138, whole: NewParagraph("", Style{Color: look.Muted})}
	b.whole.Hide()
	b.act, b.self = b.Toggle, b
	b.ExtendBaseWidget(b)
	return b
}

// Set changes what it shows.
func (b *BasisRow) Set(row BasisText) {
	same := b.row.Mark == row.Mark || b.row.Mark != nil && row.Mark != nil && *b.row.Mark == *row.Mark
	a, c := b.row, row
	a.Mark, c.Mark = nil, nil
	if same && a == c {
		return
	}
	b.row = row
	if b.open {
		b.fillWhole()
	}
	b.repaint()
}

// Row is what it shows.
func (b *BasisRow) Row() BasisText { return b.row }

// Opened tells whether the whole basis is shown.
func (b *BasisRow) Opened() bool { return b.open }

// Toggle opens or closes the row.
func (b *BasisRow) Toggle() {
	b.open = !b.open
	show(b.whole, b.open)
	b.fillWhole()
	b.repaint()
	if b.OnOpen != nil {
		b.OnOpen(b.open)
	}
}

func (b *BasisRow) fillWhole() {
	text := b.row.Basis
	if text != "" && b.row.More != "" {
		text += "\n"
	}
	b.whole.SetText(text + b.row.More)
}

// Resize is part of the toolkit's CanvasObject: the open basis breaks its lines for the new width.
func (b *BasisRow) Resize(s fyne.Size) {
	if w := max(s.Width-b.indent(), 0); b.open && b.whole.Size().Width != w {
		b.whole.Resize(fyne.NewSize(w, b.whole.MinSize().Height))
	}
	b.BaseWidget.Resize(s)
}

func (b *BasisRow) indent() float32 {
	if b.row.Mark != nil {
		return look.Px(16)
	}
	return 0
}

func (b *BasisRow) lineHeight() float32 { return look.Px(23) }

func (b *BasisRow) styles() (name, amount Style) {
	if b.row.Strong {
		return StrongStyle, StrongStyle.Right()
	}
	if b.row.Faint {
		return MutedStyle, MutedStyle.Right()
	}
	return Style{}, Style{}.Right()
}

// CreateRenderer is part of the toolkit's Widget.
func (b *BasisRow) CreateRenderer() fyne.WidgetRenderer {
	d := &basisDrawing{
		b: b, over: canvas.NewRectangle(nil), mark: canvas.NewRectangle(nil),
		name: canvas.NewText("", nil), basis: canvas.NewText("", nil), amount: canvas.NewText("", nil),
	}
	b.drawn = true
	return newPainted(painted{
		part: b, objects: []fyne.CanvasObject{d.over, d.mark, d.name, d.basis, d.amount, b.whole},
		paint: d.paint, layout: d.layout,
		min: func() fyne.Size {
			h := b.lineHeight()
			if b.open {
				h += b.whole.MinSize().Height + look.Px(6)
			}
			return fyne.NewSize(look.Px(160), h)
		},
	})
}

type basisDrawing struct {
	b                   *BasisRow
	over, mark          *canvas.Rectangle
	name, basis, amount *canvas.Text
}

func (d *basisDrawing) paint() {
	b := d.b
	fill, border, width := look.Clear, look.Clear, float32(0)
	if b.hovered {
		fill = look.Hover
	}
	if b.focused {
		border, width = look.Accent, look.FocusBorder
	}
	setRect(d.over, fill, border, width, look.FieldRadius)
	show(d.mark, b.row.Mark != nil)
	if m := b.row.Mark; m != nil && d.mark.FillColor != *m {
		d.mark.FillColor, d.mark.CornerRadius = *m, 2
		d.mark.Refresh()
	}
}

func (d *basisDrawing) layout(s fyne.Size) {
	b, h := d.b, d.b.lineHeight()
	name, amount := b.styles()
	place(d.over, -look.Px(6), 0, s.Width+2*look.Px(6), s.Height)
	side := look.Px(9)
	place(d.mark, 0, (h-side)/2, side, side)
	x, wide := b.indent(), amount.measure(b.row.Amount).Width
	room := max(s.Width-x-wide-look.Px(8), 0)
	nameWide := name.measure(b.row.Name).Width
	if b.NameWide > 0 {
		nameWide = max(min(look.Px(b.NameWide)-x, room), min(nameWide, room*0.6))
	}
	setText(d.name, shorten(b.row.Name, name, min(nameWide, room)), name)
	place(d.name, x, 0, nameWide, h)
	setText(d.amount, b.row.Amount, amount)
	place(d.amount, s.Width-wide, 0, wide, h)
	basisX := x + nameWide + look.Px(6)
	basisRoom := max(s.Width-wide-look.Px(10)-basisX, 0)
	setText(d.basis, shorten(b.row.Basis, MutedStyle, basisRoom), MutedStyle)
	place(d.basis, basisX, 0, basisRoom, h)
	show(d.basis, !b.open)
	place(b.whole, x, h, s.Width-x, b.whole.MinSize().Height)
}
