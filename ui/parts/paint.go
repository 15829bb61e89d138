package parts

import (
	"image/color"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/widget"

	"pressworth/ui/look"
)

// painted is the renderer of every part: objects that are made once, and three functions over them.
type painted struct {
	objects []fyne.CanvasObject
	layout  func(fyne.Size)
	min     func() fyne.Size
	paint   func() // reads theme and state into the objects
	part    fyne.Widget
}

func (r *painted) Objects() []fyne.CanvasObject { return r.objects }
func (r *painted) MinSize() fyne.Size           { return r.min() }
func (r *painted) Layout(s fyne.Size)           { r.layout(s) }
func (r *painted) Destroy()                     {}

func (r *painted) Refresh() {
	r.paint()
	r.layout(r.part.Size())
}

// newPainted paints once, so that the objects are right before the first frame.
func newPainted(r painted) *painted {
	r.paint()
	return &r
}

// base is what the parts have in common: hovering, and refreshing only once they are drawn.
type base struct {
	widget.BaseWidget
	drawn bool
}

// repaint refreshes the part if anybody has drawn it yet.
func (b *base) repaint() {
	if b.drawn {
		b.Refresh()
	}
}

// Weight is a weight of type.
type Weight int

// The weights.
const (
	Regular Weight = iota
	Medium
	Semibold
)

// Style says how text looks. The zero Style is body text in ink.
type Style struct {
	Size   fyne.ThemeSizeName
	Color  fyne.ThemeColorName
	Weight Weight
	Align  fyne.TextAlign
	Cut    bool // cut with an ellipsis where it does not fit, instead of asking for room
}

// Styles that come again and again.
var (
	BodyStyle    = Style{}
	CaptionStyle = Style{Size: look.Caption, Color: look.Muted}
	MutedStyle   = Style{Color: look.Muted}
	StrongStyle  = Style{Weight: Semibold}
	TitleStyle   = Style{Size: look.Title, Weight: Semibold}
	KeyStyle     = Style{Size: look.Key, Weight: Semibold}
	DisplayStyle = Style{Size: look.Display, Weight: Semibold}
)

// Right is the style set against the right edge, as amounts are.
func (s Style) Right() Style { s.Align = fyne.TextAlignTrailing; return s }

// Shortened is the style that gives way: cut with an ellipsis where there is no room.
func (s Style) Shortened() Style { s.Cut = true; return s }

// In is the style in another colour.
func (s Style) In(c fyne.ThemeColorName) Style { s.Color = c; return s }

func (s Style) size() float32 {
	if s.Size == "" {
		return look.Size(look.Body)
	}
	return look.Size(s.Size)
}

func (s Style) color() color.Color {
	if s.Color == "" {
		return look.Color(look.Ink)
	}
	return look.Color(s.Color)
}

// font is the face for a text: a weight by itself where the family has all its characters; else by the toolkit's name
// for it, with the fonts that stand in for what is missing, which take some ten megabytes a weight.
func (s Style) font(text string) (fyne.TextStyle, fyne.Resource) {
	switch {
	case s.Weight == Medium:
		return fyne.TextStyle{}, look.MediumFont()
	case s.Weight == Semibold && western(text):
		return fyne.TextStyle{}, look.SemiboldFont()
	}
	return fyne.TextStyle{Bold: s.Weight == Semibold}, nil
}

const westernSigns = "–—‘’“”•…€™−→"

// western says whether a text has nothing but Latin letters, figures and the signs that come with them.
func western(text string) bool {
	for _, r := range text {
		if r >= 0x180 && !strings.ContainsRune(westernSigns, r) {
			return false
		}
	}
	return true
}

// measure is how much room text takes in the style.
func (s Style) measure(text string) fyne.Size {
	style, source := s.font(text)
	size, _ := fyne.CurrentApp().Driver().RenderedTextSize(text, s.size(), style, source)
	return size
}

// height is that of a line of text.
func (s Style) height() float32 { return s.measure("0").Height }

// setText brings a drawn text to what it should be, and repaints it only where something differs.
func setText(t *canvas.Text, text string, s Style) {
	font, source := s.font(text)
	size, c := s.size(), s.color()
	if t.Text == text && t.TextSize == size && t.Color == c && t.TextStyle == font && t.FontSource == source && t.Alignment == s.Align {
		return
	}
	t.Text, t.TextSize, t.Color, t.TextStyle, t.FontSource, t.Alignment = text, size, c, font, source, s.Align
	t.Refresh()
}

// setRect brings a rectangle to what it should be, and repaints it only where something differs.
func setRect(r *canvas.Rectangle, fill, stroke fyne.ThemeColorName, width, radius float32) {
	f, st := drawn(fill), drawn(stroke)
	if r.FillColor == f && r.StrokeColor == st && r.StrokeWidth == width && r.CornerRadius == radius {
		return
	}
	r.FillColor, r.StrokeColor, r.StrokeWidth, r.CornerRadius = f, st, width, radius
	r.Refresh()
}

// drawn is a colour as the toolkit wants it: what is clear it leaves out only under its own name for that.
func drawn(name fyne.ThemeColorName) color.Color {
	if name == look.Clear {
		return color.Transparent
	}
	return look.Color(name)
}

// setFlat brings a ground to its colour.
func setFlat(g *canvas.LinearGradient, fill fyne.ThemeColorName) {
	if f := drawn(fill); g.StartColor != f {
		g.StartColor, g.EndColor = f, f
		g.Refresh()
	}
}

// boxState is what the box of something that is typed into or chosen from looks by.
type boxState struct{ focused, wrong, bare, hovered, disabled bool }

// paintBox brings the box to its state: the focus shows before anything wrong, and that before a border is left out.
func paintBox(box *canvas.Rectangle, s boxState) {
	fill, border, width := look.Fill, look.Rule, float32(look.Hairline)
	switch {
	case s.focused:
		border, width = look.Accent, look.FocusBorder
	case s.wrong:
		border = look.Fault
	case s.bare && !s.hovered:
		border, fill = look.Clear, look.Clear
	case s.hovered && !s.disabled:
		border = look.Muted
	}
	if s.disabled {
		fill = look.Clear
	}
	setRect(box, fill, border, width, look.FieldRadius)
}

// place moves and resizes an object, where it is not there already.
func place(o fyne.CanvasObject, x, y, w, h float32) {
	if p := fyne.NewPos(x, y); o.Position() != p {
		o.Move(p)
	}
	if s := fyne.NewSize(w, h); o.Size() != s {
		o.Resize(s)
	}
}

// show makes an object visible or not, where it is not so already.
func show(o fyne.CanvasObject, visible bool) {
	if o.Visible() == visible {
		return
	}
	if visible {
		o.Show()
	} else {
		o.Hide()
	}
}

// shorten cuts text with an ellipsis so that it takes at most width.
func shorten(text string, s Style, width float32) string {
	if width <= 0 {
		return ""
	}
	if s.measure(text).Width <= width {
		return text
	}
	runes := []rune(text)
	lo, hi := 0, len(runes) // runes[:lo] and an ellipsis fit
	for lo < hi {
		mid := (lo + hi + 1) / 2
		if s.measure(string(runes[:mid])+"…").Width <= width {
			lo = mid
		} else {
			hi = mid - 1
		}
	}
	if lo == 0 {
		return ""
	}
	return string(runes[:lo]) + "…"
}
