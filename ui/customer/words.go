package customer

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// words are the prices, the lines of what is paid, and what more pieces would save.
type words struct {
	parts.Figure
	front present.Front
}

func newWords() *words {
	w := &words{}
	w.SetUp(w, w.min, w.draw)
	return w
}

func (w *words) set(f present.Front) {
	w.front = f
	w.Redraw()
}

// Type of the customer's side.
var (
	frontText  = parts.Style{Size: look.Front}
	frontMuted = parts.Style{Size: look.Front, Color: look.Muted}
	frontBig   = parts.Style{Size: look.FrontTop, Weight: parts.Semibold}
	frontKey   = parts.Style{Size: look.FrontKey, Weight: parts.Semibold}
	frontHead  = parts.Style{Size: look.Front, Weight: parts.Semibold}
	frontTotal = parts.Style{Size: look.FrontSum, Weight: parts.Semibold}
	frontNote  = parts.Style{Size: look.Title, Color: look.Muted}
)

const (
	lineTall = 44
	bigTall  = 118
)

func (w *words) min() fyne.Size {
	f := w.front
	n := len(f.Lines) + len(f.More)
	h := look.Px(float32(n*lineTall) + bigTall + 52 + 40 + 34 + 60 + 40)
	return fyne.NewSize(look.Px(380), h)
}

func (w *words) draw(p *parts.Pen, size fyne.Size) {
	f := w.front
	if f.Empty {
		p.Text(parts.Box{Y: look.Px(60), W: size.Width, H: look.Px(30)}, "There is nothing to show yet.", frontMuted)
		return
	}
	y := w.prices(p, size.Width)
	for _, l := range f.Lines {
		y = w.line(p, size.Width, y, l)
	}
	w.rule(p, size.Width, y)
	total := parts.Box{Y: y + look.Px(4), W: size.Width, H: look.Px(44)}
	p.Text(total, "Total", frontTotal)
	p.Text(total, f.Total, frontTotal.Right())
	y += look.Px(48)
	if f.Deposit != "" {
		box := parts.Box{Y: y, W: size.Width, H: look.Px(34)}
		p.Text(box, "Deposit to start", frontText)
		p.Text(box, f.Deposit, frontText.Right())
		y += look.Px(40)
	}
	y = w.more(p, size.Width, y)
	if f.Date != "" {
		p.Text(parts.Box{Y: y + look.Px(20), W: size.Width, H: look.Px(26)}, f.Date, frontMuted)
	}
}

func (w *words) rule(p *parts.Pen, width, y float32) {
	p.Rect(parts.Box{Y: y, W: width, H: 1}, parts.Fill{Color: look.Color(look.Rule)})
}

func (w *words) line(p *parts.Pen, width, y float32, l present.FrontLine) float32 {
	w.rule(p, width, y)
	box := parts.Box{Y: y, W: width, H: look.Px(lineTall)}
	room := frontText.Measure(l.Amount).Width + look.Px(12)
	p.Text(parts.Box{Y: y, W: width - room, H: box.H}, l.Name, frontText)
	p.Text(box, l.Amount, frontText.Right())
	return y + look.Px(lineTall)
}

// prices sets the first price large and the others beside it, in as many lines as they need.
func (w *words) prices(p *parts.Pen, width float32) float32 {
	x, y := float32(0), float32(0)
	for i, price := range w.front.Prices {
		style, caption := frontKey, look.Px(24)
		if i == 0 {
			style, caption = frontBig, 0
		}
		wide := max(style.Measure(price.Amount).Width, frontNote.Measure(price.Name).Width) + 1
		if x > 0 && x+wide > width {
			x, y = 0, y+look.Px(74)
		}
		tall := look.Px(64)
		if i > 0 {
			tall = look.Px(38)
		}
		p.Text(parts.Box{X: x, Y: y + caption, W: wide, H: look.Px(18)}, price.Name, frontNote)
		p.Text(parts.Box{X: x, Y: y + caption + look.Px(20), W: wide, H: tall}, price.Amount, style)
		x += wide + look.Px(38)
	}
	return y + look.Px(bigTall)
}

// more is the ladder as what more pieces would save.
func (w *words) more(p *parts.Pen, width, y float32) float32 {
	if len(w.front.More) == 0 {
		return y
	}
	y += look.Px(24)
	p.Text(parts.Box{Y: y, W: width, H: look.Px(28)}, "If you took more", frontHead)
	y += look.Px(30)
	right := look.Px(150)
	for _, s := range w.front.More {
		w.rule(p, width, y)
		tall := look.Px(lineTall)
		p.Text(parts.Box{Y: y, W: look.Px(150), H: tall}, s.Pieces, frontText)
		noun := " " + s.Noun
		room := frontMuted.Measure(noun).Width
		p.Text(parts.Box{X: width - right - room, Y: y, W: room + 1, H: tall}, noun, frontMuted)
		p.Text(parts.Box{X: width - right - room - look.Px(90), Y: y, W: look.Px(90), H: tall}, s.Amount, frontText.Right())
		p.Text(parts.Box{X: width - right, Y: y, W: right, H: tall}, s.Less, frontText.In(look.Accent).Right())
		y += tall
	}
	return y
}
