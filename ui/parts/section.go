package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// Ground is a coloured ground that follows the theme. It is drawn as a gradient of one colour, and as a rectangle only
// along round edges: where the processor draws, a rectangle costs half as much again for every pixel, a round one more
// than twice as much, and grounds are most of the pixels of a window.
type Ground struct {
	base
	fill  fyne.ThemeColorName
	sheet bool
}

// NewGround makes a plain ground. The window's own ground, look.Page, need not be drawn but over something else.
func NewGround(fill fyne.ThemeColorName) *Ground {
	g := &Ground{fill: fill}
	g.ExtendBaseWidget(g)
	return g
}

// NewSheetGround makes the ground of a section: a panel with a hairline and round corners.
func NewSheetGround() *Ground {
	g := &Ground{fill: look.Panel, sheet: true}
	g.ExtendBaseWidget(g)
	return g
}

// CreateRenderer is part of the toolkit's Widget.
func (g *Ground) CreateRenderer() fyne.WidgetRenderer {
	body := canvas.NewVerticalGradient(nil, nil)
	if g.sheet {
		return g.sheetRenderer(body)
	}
	return newPainted(painted{
		part: g, objects: []fyne.CanvasObject{body},
		paint:  func() { setFlat(body, g.fill) },
		layout: func(s fyne.Size) { place(body, 0, 0, s.Width, s.Height) },
		min:    func() fyne.Size { return fyne.Size{} },
	})
}

// sheetRenderer draws the corners as two low rectangles at top and foot, the sides as lines, and the rest flat over them.
func (g *Ground) sheetRenderer(body *canvas.LinearGradient) fyne.WidgetRenderer {
	top, foot := canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	left, right := canvas.NewRectangle(nil), canvas.NewRectangle(nil)
	const line, corner = look.Hairline, look.SectionRadius
	return newPainted(painted{
		part: g, objects: []fyne.CanvasObject{top, foot, left, right, body},
		paint: func() {
			setRect(top, g.fill, look.Rule, line, corner)
			setRect(foot, g.fill, look.Rule, line, corner)
			setRect(left, look.Rule, look.Clear, 0, 0)
			setRect(right, look.Rule, look.Clear, 0, 0)
			setFlat(body, g.fill)
		},
		layout: func(s fyne.Size) {
			place(top, 0, 0, s.Width, 2*corner)
			place(foot, 0, s.Height-2*corner, s.Width, 2*corner)
			place(left, 0, corner, line, s.Height-2*corner)
			place(right, s.Width-line, corner, line, s.Height-2*corner)
			place(body, line, corner, s.Width-2*line, s.Height-2*corner)
		},
		min: func() fyne.Size { return fyne.Size{} },
	})
}

// Section is a panel with a title, a muted hint beside it and something at the right of the title's line.
type Section struct {
	holder
	Title *Text
	Hint  *Text
	Right *fyne.Container // what stands at the right of the title
	Body  *fyne.Container // what the section is for
}

// NewSection makes a section; objects are stacked in its body, 8 apart.
func NewSection(title, hint string, objects ...fyne.CanvasObject) *Section {
	s := &Section{
		Title: NewText(title, TitleStyle), Hint: NewText(hint, CaptionStyle.Shortened()),
		Right: container.NewHBox(), Body: Column(8, objects...),
	}
	head := Row(10, []Track{Fit(), Share(1), Fit()}, s.Title, s.Hint, s.Right)
	inner := Column(8, head, s.Body)
	s.hold(s, container.NewStack(NewSheetGround(), Inset(look.SectionPadX, look.SectionPadY, inner)))
	return s
}

// NewPlainSection is a section without a panel round it, as in the price panel.
func NewPlainSection(title, hint string, objects ...fyne.CanvasObject) *Section {
	s := &Section{
		Title: NewText(title, TitleStyle), Hint: NewText(hint, CaptionStyle.Shortened()),
		Right: container.NewHBox(), Body: Column(4, objects...),
	}
	head := Row(10, []Track{Fit(), Share(1), Fit()}, s.Title, s.Hint, s.Right)
	s.hold(s, Column(5, head, s.Body))
	return s
}

// Captioned is a field with its caption above it and, where there is one, its problem below.
type Captioned struct {
	holder
	Caption *Text
	problem *Paragraph
	marked  interface{ SetWrong(bool) }
}

// NewCaptioned puts a caption above a field.
func NewCaptioned(caption string, field fyne.CanvasObject) *Captioned {
	c := &Captioned{Caption: NewText(caption, CaptionStyle.Shortened()), problem: NewParagraph("", CaptionStyle.In(look.Fault))}
	c.marked, _ = field.(interface{ SetWrong(bool) })
	c.problem.Hide()
	c.hold(c, Column(3, c.Caption, field, c.problem))
	return c
}

// SetProblem says below the field what is wrong and what to do; an empty text takes it away.
func (c *Captioned) SetProblem(text string) {
	c.problem.SetText(text)
	show(c.problem, text != "")
	if c.marked != nil {
		c.marked.SetWrong(text != "")
	}
}

// Problem is what is wrong, or nothing.
func (c *Captioned) Problem() string { return c.problem.Text() }
