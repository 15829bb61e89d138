package chart

import (
	"reflect"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Layout is one printed sheet, or length of a roll, with its pieces; lengths in one unit, from the corner.
type Layout struct {
	Width, Height float64
	Edge          float64
	Film          bool // drawn in the tone of film
	Pieces        []Piece
}

// Piece is one transfer on the sheet.
type Piece struct {
	X, Y, W, H float64
	Label      string
	Turned     bool
}

// Sheet draws a layout to scale: the sheet, the line up to which it may be filled, the pieces with their names where they have room.
// A turned piece has its corner marked.
type Sheet struct {
	parts.Figure
	layout Layout
	wide   float32 // room at 100 %
	tall   float32
	faded  bool
}

// NewSheet makes an empty sheet in a room of wide × tall at 100 %.
func NewSheet(wide, tall float32) *Sheet {
	s := &Sheet{wide: wide, tall: tall}
	s.SetUp(s, func() fyne.Size { return fyne.NewSize(look.Px(s.wide), s.height()) }, s.draw)
	return s
}

// Set changes the layout.
func (s *Sheet) Set(l Layout, faded bool) {
	if s.faded == faded && reflect.DeepEqual(s.layout, l) {
		return
	}
	s.layout, s.faded = l, faded
	s.Redraw()
}

// scale is how many points one unit takes, so that the whole sheet fits the room.
func (s *Sheet) scale() float32 {
	l := s.layout
	if l.Width <= 0 || l.Height <= 0 {
		return 0
	}
	return min((look.Px(s.wide)-1)/float32(s.across()), (look.Px(s.tall)-1)/float32(s.down()))
}

// lying tells whether the sheet is drawn on its side: a long roll.
func (s *Sheet) lying() bool { return s.layout.Height > 1.6*s.layout.Width }

func (s *Sheet) across() float64 {
	if s.lying() {
		return s.layout.Height
	}
	return s.layout.Width
}

func (s *Sheet) down() float64 {
	if s.lying() {
		return s.layout.Width
	}
	return s.layout.Height
}

func (s *Sheet) height() float32 { return max(float32(s.down())*s.scale()+1, look.Px(20)) }

// box places a rectangle of the layout in the drawing.
func (s *Sheet) box(x, y, w, h float64) parts.Box {
	if s.lying() {
		x, y, w, h = y, x, h, w
	}
	k := s.scale()
	return parts.Box{X: float32(x) * k, Y: float32(y) * k, W: float32(w) * k, H: float32(h) * k}
}

func (s *Sheet) draw(p *parts.Pen, _ fyne.Size) {
	l := s.layout
	if s.scale() == 0 {
		return
	}
	ground, rule := look.Color(look.Fill), look.Color(look.Rule)
	p.Rect(s.box(0, 0, l.Width, l.Height), parts.Fill{Color: ground, Border: rule})
	name := look.Sheet
	if l.Film {
		name = look.Film
	}
	strength := 1.0
	if s.faded {
		strength = 0.5
	}
	for _, x := range l.Pieces {
		b := s.box(x.X, x.Y, x.W, x.H)
		p.Rect(b, parts.Fill{Color: fade(look.Color(name), strength), Border: fade(look.Color(look.Muted), 0.45)})
		s.label(p, b, x)
	}
	if l.Edge > 0 {
		s.border(p, l)
	}
}

func (s *Sheet) label(p *parts.Pen, b parts.Box, x Piece) {
	if x.Turned && b.W > look.Px(10) && b.H > look.Px(10) {
		corner := look.Px(6)
		p.Line(b.X, b.Y+corner, b.X+corner, b.Y, look.Color(look.Muted), 1)
	}
	style := tiny(look.Ink)
	style.Align = fyne.TextAlignCenter
	if room := style.Measure(x.Label); room.Width+look.Px(6) <= b.W && room.Height <= b.H {
		p.Text(b, x.Label, style)
	}
}

// border draws the line up to which the sheet may be filled.
func (s *Sheet) border(p *parts.Pen, l Layout) {
	b := s.box(l.Edge, l.Edge, l.Width-2*l.Edge, l.Height-2*l.Edge)
	p.Rect(b, parts.Fill{Border: fade(look.Color(look.Muted), 0.4)})
}
