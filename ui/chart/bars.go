package chart

import (
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Bar is one row of bars. First and Second stand one behind the other, as parts of the longest bar, 0 to 1; Mark is where
// a line stands across them, 0: none. Name and Label say the same in words.
type Bar struct {
	Name, Label   string
	First, Second float64
	Mark          float64
	Strong        bool // the row is marked out, as today is
}

// Bars are rows of lying bars, each with its name before it and its figures behind.
type Bars struct {
	parts.Figure
	rows        []Bar
	names, room float32 // width of the names and of the labels
}

// NewBars makes empty bars with room for names and labels, in pixels at full text size.
func NewBars(names, labels float32) *Bars {
	b := &Bars{names: names, room: labels}
	b.SetUp(b, func() fyne.Size {
		return fyne.NewSize(look.Px(b.names+b.room+80), look.Px(float32(max(len(b.rows), 1)*barStep)))
	}, b.draw)
	return b
}

const barStep = 22

// Set changes the rows.
func (b *Bars) Set(rows []Bar) {
	if slices.Equal(b.rows, rows) {
		return
	}
	b.rows = slices.Clone(rows)
	b.Redraw()
}

func (b *Bars) draw(p *parts.Pen, size fyne.Size) {
	left, labels := look.Px(b.names), look.Px(b.room)
	wide := max(size.Width-left-labels, look.Px(20))
	for i, r := range b.rows {
		y := look.Px(float32(i * barStep))
		style := parts.Style{Size: look.Caption}
		if r.Strong {
			style.Weight = parts.Semibold
		}
		p.Text(parts.Box{Y: y + look.Px(2), W: left - look.Px(8), H: look.Px(16)}, r.Name, style)
		first, second := wide*clamped(r.First), wide*clamped(r.Second)
		if r.Mark > 0 {
			p.Rect(parts.Box{X: left, Y: y + look.Px(3), W: wide * clamped(r.Mark), H: look.Px(13)}, parts.Fill{Color: fade(look.Color(look.Muted), 0.13), Radius: 2})
		}
		if first > 0 {
			p.Rect(parts.Box{X: left, Y: y + look.Px(3), W: max(first, 1), H: look.Px(13)}, parts.Fill{Color: fade(look.Color(look.Accent), 0.75), Radius: 2})
		}
		if second > 0 {
			p.Rect(parts.Box{X: left + first, Y: y + look.Px(3), W: max(second, 1), H: look.Px(13)}, parts.Fill{Color: fade(look.Color(look.Film), 0.7), Radius: 2})
		}
		if r.Mark > 0 {
			x := left + wide*clamped(r.Mark)
			p.Line(x, y+look.Px(1), x, y+look.Px(18), look.Color(look.Muted), 1.5)
		}
		p.Text(parts.Box{X: left + wide + look.Px(8), Y: y + look.Px(2), W: labels - look.Px(8), H: look.Px(16)}, r.Label, tiny(look.Ink))
	}
}

func clamped(part float64) float32 { return float32(min(max(part, 0), 1)) }
