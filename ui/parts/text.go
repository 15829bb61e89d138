package parts

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
)

// Text is a line of text that follows the theme.
type Text struct {
	base
	text  string
	style Style
	min   fyne.Size // remembered: the toolkit asks at every frame
}

// NewText makes a line of text.
func NewText(text string, style Style) *Text {
	t := &Text{text: text, style: style}
	t.ExtendBaseWidget(t)
	return t
}

// Text is what it says, whole.
func (t *Text) Text() string { return t.text }

// SetText changes what it says.
func (t *Text) SetText(text string) {
	if t.text != text {
		t.text, t.min = text, fyne.Size{}
		t.repaint()
	}
}

// SetStyle changes how it looks.
func (t *Text) SetStyle(style Style) {
	if t.style != style {
		t.style, t.min = style, fyne.Size{}
		t.repaint()
	}
}

// Set changes both at once.
func (t *Text) Set(text string, style Style) {
	if t.text != text || t.style != style {
		t.text, t.style, t.min = text, style, fyne.Size{}
		t.repaint()
	}
}

// CreateRenderer is part of the toolkit's Widget.
func (t *Text) CreateRenderer() fyne.WidgetRenderer {
	line := canvas.NewText("", nil)
	t.drawn = true
	shown := func(width float32) string {
		if !t.style.Cut {
			return t.text
		}
		return shorten(t.text, t.style, width)
	}
	return newPainted(painted{
		part:    t,
		objects: []fyne.CanvasObject{line},
		paint: func() {
			t.min = fyne.Size{}
			setText(line, shown(t.Size().Width), t.style)
		},
		layout: func(s fyne.Size) {
			setText(line, shown(s.Width), t.style)
			place(line, 0, 0, s.Width, s.Height)
		},
		min: func() fyne.Size {
			if t.min.IsZero() {
				t.min = t.style.measure(t.text)
				if t.style.Cut {
					t.min.Width = min(t.min.Width, t.style.size()*2)
				}
			}
			return t.min
		},
	})
}

// Paragraph is text over several lines, broken between words.
type Paragraph struct {
	base
	text  string
	style Style
	width float32 // for which lines was made
	lines []string
}

// NewParagraph makes a paragraph.
func NewParagraph(text string, style Style) *Paragraph {
	p := &Paragraph{text: text, style: style}
	p.ExtendBaseWidget(p)
	return p
}

// Text is what it says.
func (p *Paragraph) Text() string { return p.text }

// SetText changes what it says.
func (p *Paragraph) SetText(text string) {
	if p.text != text {
		p.text, p.lines = text, nil
		p.repaint()
	}
}

// SetStyle changes how it looks.
func (p *Paragraph) SetStyle(style Style) {
	if p.style != style {
		p.style, p.lines = style, nil
		p.repaint()
	}
}

// Resize breaks the lines anew for another width.
func (p *Paragraph) Resize(s fyne.Size) {
	if p.width != s.Width {
		p.width, p.lines = s.Width, nil
	}
	p.BaseWidget.Resize(s)
}

func (p *Paragraph) broken() []string {
	if p.lines == nil && p.width > 0 {
		p.lines = breakLines(p.text, p.style, p.width)
	}
	if p.lines == nil {
		return []string{p.text}
	}
	return p.lines
}

// CreateRenderer is part of the toolkit's Widget.
func (p *Paragraph) CreateRenderer() fyne.WidgetRenderer {
	p.drawn = true
	r := &painted{part: p}
	lay := func(s fyne.Size) {
		lines, h := p.broken(), p.style.height()
		for len(r.objects) < len(lines) {
			r.objects = append(r.objects, canvas.NewText("", nil))
		}
		for i, o := range r.objects {
			show(o, i < len(lines))
			if i < len(lines) {
				setText(o.(*canvas.Text), lines[i], p.style)
				place(o, 0, float32(i)*h, s.Width, h)
			}
		}
	}
	r.layout = lay
	r.paint = func() { p.lines = nil; lay(p.Size()) }
	r.min = func() fyne.Size {
		return fyne.NewSize(p.style.size()*4, float32(len(p.broken()))*p.style.height())
	}
	return r
}

// breakLines breaks text between words so that each line takes at most width; a longer word stands alone.
func breakLines(text string, s Style, width float32) []string {
	var lines []string
	for _, para := range strings.Split(text, "\n") {
		line := ""
		for _, word := range strings.Fields(para) {
			next := word
			if line != "" {
				next = line + " " + word
			}
			if line != "" && s.measure(next).Width > width {
				lines = append(lines, line)
				next = word
			}
			line = next
		}
		lines = append(lines, line)
	}
	return lines
}
