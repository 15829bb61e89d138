package chart

import (
	"image/color"
	"math"
	"slices"
	"strconv"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Span is a run of quantities with one answer.
type Span struct {
	From, To int
	Label    string
	Tone     int // which card: the same number is drawn alike everywhere; -1: none serves
	Film     bool
}

// Band is one row of spans.
type Band struct {
	Name  string
	Own   bool // the row that holds for the job
	Spans []Span
}

// Bands are rows of spans along quantity, with the job's own quantity marked across them. Each span says its answer in
// words wherever it has room for them.
type Bands struct {
	parts.Figure
	rows         []Band
	upto, pieces int
	faded        bool
}

// NewBands makes empty bands.
func NewBands() *Bands {
	b := &Bands{}
	b.SetUp(b, b.min, b.draw)
	return b
}

const (
	bandHeight = 15
	bandStep   = 19
	bandAxis   = 17
)

// Set changes the rows, how far they reach and the quantity that is marked.
func (b *Bands) Set(rows []Band, upto, pieces int, faded bool) {
	same := slices.EqualFunc(b.rows, rows, func(x, y Band) bool {
		return x.Name == y.Name && x.Own == y.Own && slices.Equal(x.Spans, y.Spans)
	})
	if same && b.upto == upto && b.pieces == pieces && b.faded == faded {
		return
	}
	b.rows, b.upto, b.pieces, b.faded = rows, upto, pieces, faded
	b.Redraw()
}

// Rows tells how many rows are shown.
func (b *Bands) Rows() int { return len(b.rows) }

func (b *Bands) min() fyne.Size {
	return fyne.NewSize(look.Px(200), look.Px(float32(len(b.rows)*bandStep)+bandAxis))
}

// across is where a quantity stands, 0 to 1: by its square root, so that small quantities have room.
func (b *Bands) across(q int) float32 {
	if b.upto <= 1 {
		return 0
	}
	return float32(math.Sqrt(math.Min(float64(q-1)/float64(b.upto-1), 1)))
}

func (b *Bands) draw(p *parts.Pen, size fyne.Size) {
	if len(b.rows) == 0 || size.Width <= 0 {
		return
	}
	left := look.Px(68)
	wide := size.Width - left
	for i, row := range b.rows {
		y := look.Px(float32(i * bandStep))
		name := parts.Style{Size: look.Caption}
		if row.Own {
			name.Weight = parts.Semibold
		}
		p.Text(parts.Box{Y: y, W: left - look.Px(6), H: look.Px(bandHeight)}, row.Name, name)
		for _, s := range row.Spans {
			b.span(p, s, parts.Box{X: left, Y: y, W: wide, H: look.Px(bandHeight)})
		}
	}
	bottom := look.Px(float32(len(b.rows) * bandStep))
	b.axis(p, left, wide, bottom)
	x := left + wide*b.across(b.pieces)
	p.Line(x, -look.Px(2), x, bottom, look.Color(look.Ink), 1.5)
}

func (b *Bands) span(p *parts.Pen, s Span, row parts.Box) {
	from, to := b.across(s.From), float32(1)
	if s.To < b.upto {
		to = b.across(s.To + 1)
	}
	box := parts.Box{X: row.X + row.W*from, Y: row.Y, W: max(row.W*(to-from)-1, 1), H: row.H}
	p.Rect(box, parts.Fill{Color: b.tone(s)})
	pad := look.Px(5)
	style := tiny(look.Ink)
	if box.W > style.Measure(s.Label).Width+2*pad {
		p.Text(parts.Box{X: box.X + pad, Y: box.Y, W: box.W - 2*pad, H: box.H}, s.Label, style)
	}
}

// tone is the ground of a span: film and sheets have their own, further cards of a kind are paler.
func (b *Bands) tone(s Span) color.Color {
	if s.Tone < 0 {
		return fade(look.Color(look.Rule), 0.6)
	}
	name := look.Sheet
	if s.Film {
		name = look.Film
	}
	strength := []float64{1, 0.6, 0.36}[s.Tone%3]
	if b.faded {
		strength *= 0.5
	}
	return fade(look.Color(name), strength)
}

// ticks are the quantities named under the bands.
var ticks = []int{1, 12, 24, 48, 72, 100, 144, 250, 500, 1000, 2500, 5000, 10000}

// axis names quantities below the bands, as many as have room.
func (b *Bands) axis(p *parts.Pen, left, wide, y float32) {
	style := tiny(look.Muted)
	p.Text(parts.Box{Y: y, W: left - look.Px(6), H: look.Px(13)}, "pieces", style)
	style.Align = fyne.TextAlignCenter
	last := float32(-100)
	own := left + wide*b.across(b.pieces)
	for _, q := range ticks {
		x := left + wide*b.across(q)
		w := look.Px(34)
		if q > b.upto || x-last < w || x+w/2 > left+wide+look.Px(8) || x-own < w*0.7 && own-x < w*0.7 {
			continue
		}
		p.Text(parts.Box{X: x - w/2, Y: y, W: w, H: look.Px(13)}, strconv.Itoa(q), style)
		last = x
	}
	style.Weight, style.Color = parts.Semibold, look.Ink
	w := look.Px(50)
	p.Text(parts.Box{X: min(own-w/2, left+wide-w), Y: y, W: w, H: look.Px(13)}, strconv.Itoa(b.pieces), style)
}
