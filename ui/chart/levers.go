package chart

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Lever is one thing that can change: how far the price moves down and up, as part of the strongest, −1 to 1.
type Lever struct {
	Name       string
	Less, More string
	Down, Up   float64
}

// Levers are bars to both sides of a line: what a tenth less and a tenth more of each thing does. The figures stand at
// the ends.
type Levers struct {
	parts.Figure
	rows  []Lever
	faded bool
}

// NewLevers makes empty bars.
func NewLevers() *Levers {
	l := &Levers{}
	l.SetUp(l, func() fyne.Size { return fyne.NewSize(look.Px(240), look.Px(float32(len(l.rows)*leverStep))) }, l.draw)
	return l
}

const leverStep = 20

// Set changes the bars.
func (l *Levers) Set(rows []Lever, faded bool) {
	if slices.Equal(l.rows, rows) && l.faded == faded {
		return
	}
	l.rows, l.faded = slices.Clone(rows), faded
	l.Redraw()
}

func (l *Levers) draw(p *parts.Pen, size fyne.Size) {
	if len(l.rows) == 0 {
		return
	}
	left, figure := look.Px(128), look.Px(54)
	half := (size.Width - left - 2*figure) / 2
	strength := 1.0
	if l.faded {
		strength = 0.4
	}
	d := leverPen{
		Pen: p, middle: left + figure + half, half: half,
		down: fade(look.Color(look.Sheet), strength), up: fade(look.Color(look.Film), strength),
	}
	for i, r := range l.rows {
		d.y = look.Px(float32(i * leverStep))
		p.Text(parts.Box{Y: d.y, W: left - look.Px(6), H: look.Px(16)}, r.Name, parts.Style{Size: look.Caption})
		d.side(r.Down, r.Less)
		d.side(r.Up, r.More)
	}
	p.Line(d.middle, 0, d.middle, look.Px(float32(len(l.rows)*leverStep-2)), look.Color(look.Muted), 1)
}

// leverPen draws the bars of one row at y.
type leverPen struct {
	*parts.Pen
	middle, half, y float32
	down, up        color.Color
}

// side draws one bar and the figure at its end; a negative part goes to the left.
func (d leverPen) side(part float64, text string) {
	w, gap, room := d.half*float32(part), look.Px(4), look.Px(54)
	bar := parts.Box{X: d.middle, Y: d.y + look.Px(1.5), W: w, H: look.Px(13)}
	words := parts.Box{X: d.middle + w + gap, Y: d.y, W: room, H: look.Px(16)}
	fill, style := d.up, tiny(look.Muted)
	if part < 0 {
		bar.X, bar.W = d.middle+w, -w
		words.X = d.middle + w - gap - room
		fill, style = d.down, style.Right()
	}
	d.Rect(bar, parts.Fill{Color: fill})
	d.Text(words, text, style)
}
