package chart

import (
	"math"
	"slices"
	"time"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Since is a price that has held since a day.
type Since struct {
	On    time.Time
	Price float64
	Label string // the price as text
}

// History is a price over time as steps: each price holds until the next one. First, last, lowest and highest price are
// named; the days of the first and the last change stand below.
type History struct {
	parts.Figure
	list []Since
	upto time.Time
}

// NewHistory makes an empty history.
func NewHistory() *History {
	h := &History{}
	h.SetUp(h, func() fyne.Size { return fyne.NewSize(look.Px(180), look.Px(84)) }, h.draw)
	return h
}

// Set changes the prices, in ascending days; upto is the day the last one is drawn to.
func (h *History) Set(list []Since, upto time.Time) {
	if slices.Equal(h.list, list) && h.upto.Equal(upto) {
		return
	}
	h.list, h.upto = slices.Clone(list), upto
	h.Redraw()
}

// scale turns days and prices into places.
func (h *History) scale(size fyne.Size) func(t time.Time, price float64) (x, y float32) {
	side, top, foot := float64(look.Px(4)), float64(look.Px(18)), float64(look.Px(20))
	low, high := math.Inf(1), math.Inf(-1)
	for _, s := range h.list {
		low, high = math.Min(low, s.Price), math.Max(high, s.Price)
	}
	first := h.list[0].On
	days := math.Max(h.upto.Sub(first).Hours(), 1)
	wide, tall := float64(size.Width)-2*side, float64(size.Height)-top-foot
	return func(t time.Time, price float64) (float32, float32) {
		fy := 0.5
		if high > low {
			fy = (high - price) / (high - low)
		}
		return float32(side + wide*math.Min(t.Sub(first).Hours()/days, 1)), float32(top + tall*fy)
	}
}

func (h *History) draw(p *parts.Pen, size fyne.Size) {
	if len(h.list) == 0 || size.Width <= 0 {
		return
	}
	at := h.scale(size)
	ink, rule := look.Color(look.Accent), look.Color(look.Rule)
	p.Line(0, size.Height-look.Px(17), size.Width, size.Height-look.Px(17), rule, 1)
	for i, s := range h.list {
		x, y := at(s.On, s.Price)
		end := h.upto
		if i+1 < len(h.list) {
			end = h.list[i+1].On
			nx, ny := at(end, h.list[i+1].Price)
			p.Line(nx, y, nx, ny, ink, 1.6)
		}
		ex, _ := at(end, s.Price)
		p.Line(x, y, ex, y, ink, 1.6)
	}
	h.labels(p, size, at)
}

// labels name the prices that matter, each where it begins, and the days at both ends.
func (h *History) labels(p *parts.Pen, size fyne.Size, at func(time.Time, float64) (float32, float32)) {
	last := len(h.list) - 1
	low, high := 0, 0
	for i, s := range h.list {
		if s.Price < h.list[low].Price {
			low = i
		}
		if s.Price > h.list[high].Price {
			high = i
		}
	}
	w, tall := look.Px(52), look.Px(13)
	right := float32(-100)
	for i, s := range h.list {
		x, y := at(s.On, s.Price)
		style := tiny(look.Muted)
		if i == last {
			style = tiny(look.Ink)
			style.Weight = parts.Semibold
		}
		x = min(x, size.Width-w)
		if i != 0 && i != last && i != low && i != high || i != last && x < right {
			continue
		}
		if i == last && x < right {
			continue
		}
		p.Text(parts.Box{X: x, Y: y - tall - look.Px(2), W: w, H: tall}, s.Label, style)
		right = x + style.Measure(s.Label).Width + look.Px(4)
	}
	foot := parts.Box{Y: size.Height - look.Px(14), W: size.Width, H: tall}
	p.Text(foot, h.list[0].On.Format("2 Jan 2006"), tiny(look.Muted))
	p.Text(foot, h.upto.Format("2 Jan 2006"), tiny(look.Muted).Right())
}
