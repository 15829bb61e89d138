package chart

import (
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
	middle := left + figure + half
	strength := 1.0
	if l.faded {
		strength = 0.4
	}
	down, up := fade(look.Color(look.Sheet), strength), fade(look.Color(look.Film), strength)
	for i, r := range l.rows {
		y, h := look.Px(float32(i*leverStep)), look.Px(13)
		box := parts.Box{Y: y, W: left - look.Px(6), H: h + look.Px(3)}
		p.Text(box, r.Name, parts.Style{Size: look.Caption})
		for _, side := range []struct {
			part float64
			text string
		}{{r.Down, r.Less}, {r.Up, r.More}} {
			l.bar(p, middle, half, y+look.Px(1.5), h, side.part, map[bool]parts.Fill{true: {Color: down}, false: {Color: up}}[side.part < 0])
			l.figure(p, middle, half, y, h, side.part, side.text)
		}
	}
	p.Line(middle, 0, middle, look.Px(float32(len(l.rows)*leverStep-2)), look.Color(look.Muted), 1)
}

func (l *Levers) bar(p *parts.Pen, middle, half, y, h float32, part float64, f parts.Fill) {
	w := half * float32(part)
	if w < 0 {
		p.Rect(parts.Box{X: middle + w, Y: y, W: -w, H: h}, f)
		return
	}
	p.Rect(parts.Box{X: middle, Y: y, W: w, H: h}, f)
}

func (l *Levers) figure(p *parts.Pen, middle, half, y, h float32, part float64, text string) {
	room, gap := look.Px(54), look.Px(4)
	x := middle + half*float32(part)
	style := tiny(look.Muted)
	box := parts.Box{X: x + gap, Y: y, W: room, H: h + look.Px(3)}
	if part < 0 {
		box.X, style = x-gap-room, style.Right()
	}
	p.Text(box, text, style)
}
