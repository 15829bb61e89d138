package blanks

import (
	"cmp"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// moment is a price from a day on.
type moment struct {
	day  time.Time
	from string // the day as text
	each string // the price as text
	high float64
}

// history draws what one size has cost over time, as steps: a price holds until the next one.
type history struct {
	parts.Figure
	moments []moment
}

func newHistory() *history {
	h := &history{}
	h.SetUp(h, func() fyne.Size { return fyne.NewSize(look.Px(160), look.Px(86)) }, h.draw)
	return h
}

// set takes the price entries of a style and shows those of its list, for the size that has the most of them.
func (h *history) set(entries []catalog.Price) (size string) {
	bySize := map[string][]moment{}
	for _, e := range entries {
		day, err := time.Parse(time.DateOnly, e.From)
		if err != nil || e.Kind != catalog.ListPrice || len(e.Each) == 0 || e.File.Undone {
			continue
		}
		high, _ := e.Each[0].Each.Rat().Float64()
		bySize[e.Size] = append(bySize[e.Size], moment{day, e.From, e.Each[0].Each.String(), high})
	}
	h.moments = nil
	for _, e := range entries { // in the entries' order, so that the choice is the same every time
		if m := bySize[e.Size]; len(m) > len(h.moments) {
			h.moments, size = m, e.Size
		}
	}
	slices.SortStableFunc(h.moments, func(a, b moment) int { return cmp.Compare(a.from, b.from) })
	h.Redraw()
	return size
}

func (h *history) draw(p *parts.Pen, size fyne.Size) {
	n := len(h.moments)
	if n < 2 || size.Width <= 0 {
		return
	}
	low, high := h.moments[0].high, h.moments[0].high
	for _, m := range h.moments {
		low, high = min(low, m.high), max(high, m.high)
	}
	top, foot, side := look.Px(18), look.Px(18), look.Px(18)
	first, last := h.moments[0].day, h.moments[n-1].day
	across := func(d time.Time) float32 {
		return side + (size.Width-3*side)*float32(d.Sub(first))/float32(max(last.Sub(first), 1))
	}
	up := func(v float64) float32 {
		return top + (size.Height-top-foot)*float32((high-v)/max(high-low, 0.0001))
	}
	ink := look.Color(look.Accent)
	p.Line(0, size.Height-foot+look.Px(4), size.Width, size.Height-foot+look.Px(4), look.Color(look.Rule), 1)
	for i, m := range h.moments {
		x, y, end := across(m.day), up(m.high), size.Width
		if i+1 < n {
			end = across(h.moments[i+1].day)
			p.Line(end, y, end, up(h.moments[i+1].high), ink, 1.6)
		}
		p.Line(x, y, end, y, ink, 1.6)
		if i == 0 || i == n-1 {
			style := parts.CaptionStyle
			style.Align = fyne.TextAlignCenter
			wide := look.Px(74)
			left := min(max(x-wide/2, 0), size.Width-wide)
			p.Text(parts.Box{X: left, Y: size.Height - foot + look.Px(5), W: wide, H: look.Px(13)}, m.from, style)
			p.Text(parts.Box{X: left, Y: y - look.Px(16), W: wide, H: look.Px(13)}, m.each, style.In(look.Ink))
		}
	}
}
