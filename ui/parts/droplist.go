package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/driver/desktop"

	"pressworth/ui/look"
)

// Option is one line of a list to choose from.
type Option struct {
	Key    string // what it stands for
	Name   string
	Detail string // muted, at the right
	Hex    string // a colour before the name; empty: none
	Any    any    // whatever the caller wants back
}

const (
	listRows   = 9  // rows in sight
	listRow    = 28 // height of one, at 100 %
	listMargin = 4
)

// dropList is a list of options of which only the rows in sight exist.
type dropList struct {
	base
	options []Option
	marked  int
	first   int
	owner   fyne.CanvasObject
	drop    *drop
	hovered bool
	rows    [listRows]dropRow
}

type dropRow struct {
	back         *canvas.Rectangle
	dot          *canvas.Circle
	name, detail *canvas.Text
}

func newDropList() *dropList {
	l := &dropList{}
	l.ExtendBaseWidget(l)
	return l
}

func (l *dropList) fill(d *drop, options []Option, at int) {
	l.drop, l.owner, l.options, l.marked, l.first, l.hovered = d, d.owner, options, at, 0, false
	l.reveal()
	l.repaint()
}

// wanted is how large the list would be, given the width of its owner.
func (l *dropList) wanted(width float32) fyne.Size {
	n := min(len(l.options), listRows)
	return fyne.NewSize(l.drop.minWide(width), float32(n)*look.Px(listRow)+2*look.Px(listMargin))
}

// move marks another option.
func (l *dropList) move(by int) {
	if len(l.options) == 0 {
		return
	}
	l.marked = min(max(l.marked+by, 0), len(l.options)-1)
	l.reveal()
	l.repaint()
}

func (l *dropList) reveal() {
	if l.marked >= 0 {
		l.first = min(l.first, l.marked)
		l.first = max(l.first, l.marked-listRows+1)
	}
	l.first = min(max(l.first, 0), max(len(l.options)-listRows, 0))
}

// choose takes the marked option; false if none is.
func (l *dropList) choose() bool {
	if l.marked < 0 || l.marked >= len(l.options) {
		return false
	}
	l.Hide()
	l.drop.pick(l.marked)
	return true
}

func (l *dropList) rowAt(y float32) int {
	i := l.first + int((y-look.Px(listMargin))/look.Px(listRow))
	return min(max(i, 0), len(l.options)-1)
}

// Tapped takes the option under the pointer.
func (l *dropList) Tapped(e *fyne.PointEvent) {
	l.marked = l.rowAt(e.Position.Y)
	l.choose()
}

// MouseIn is part of the toolkit's Hoverable.
func (l *dropList) MouseIn(e *desktop.MouseEvent) {
	l.hovered = true
	l.MouseMoved(e)
}

// MouseMoved marks the option under the pointer.
func (l *dropList) MouseMoved(e *desktop.MouseEvent) {
	if i := l.rowAt(e.Position.Y); i != l.marked {
		l.marked = i
		l.repaint()
	}
}

// MouseOut is part of the toolkit's Hoverable.
func (l *dropList) MouseOut() { l.hovered = false }

// Scrolled moves the list by whole rows.
func (l *dropList) Scrolled(e *fyne.ScrollEvent) {
	by := 3
	if e.Scrolled.DY > 0 {
		by = -3
	}
	l.first = min(max(l.first+by, 0), max(len(l.options)-listRows, 0))
	l.repaint()
}

// CreateRenderer is part of the toolkit's Widget.
func (l *dropList) CreateRenderer() fyne.WidgetRenderer {
	box := canvas.NewRectangle(nil)
	objects := []fyne.CanvasObject{box}
	for i := range l.rows {
		l.rows[i] = dropRow{canvas.NewRectangle(nil), canvas.NewCircle(nil), canvas.NewText("", nil), canvas.NewText("", nil)}
		objects = append(objects, l.rows[i].back, l.rows[i].dot, l.rows[i].name, l.rows[i].detail)
	}
	l.drawn = true
	return newPainted(painted{
		part: l, objects: objects,
		paint: func() { setRect(box, look.Panel, look.Muted, look.Hairline, look.FieldRadius) },
		layout: func(s fyne.Size) {
			place(box, 0, 0, s.Width, s.Height)
			for i := range l.rows {
				l.layRow(i, s)
			}
		},
		min: func() fyne.Size { return fyne.Size{} },
	})
}

func (l *dropList) layRow(i int, s fyne.Size) {
	r, at := l.rows[i], l.first+i
	h, margin := look.Px(listRow), look.Px(listMargin)
	y := margin + float32(i)*h
	visible := at < len(l.options) && y+h <= s.Height
	for _, o := range []fyne.CanvasObject{r.back, r.name, r.detail} {
		show(o, visible)
	}
	if !visible {
		show(r.dot, false)
		return
	}
	opt := l.options[at]
	fill := look.Clear
	if at == l.marked {
		fill = look.Tint
	}
	setRect(r.back, fill, look.Clear, 0, look.FieldRadius-1)
	place(r.back, margin, y, max(s.Width-2*margin, 0), h)
	x := margin + look.Px(7)
	c, ok := ParseHex(opt.Hex)
	show(r.dot, ok)
	if ok {
		d := look.Px(12)
		dot(r.dot, c)
		place(r.dot, x, y+(h-d)/2, d, d)
		x += look.Px(19)
	}
	end := s.Width - margin - look.Px(7)
	nameWide := Style{}.measure(opt.Name).Width
	detail := shorten(opt.Detail, MutedStyle, max(end-x-nameWide-look.Px(12), 0))
	wide := MutedStyle.measure(detail).Width
	setText(r.detail, detail, MutedStyle)
	place(r.detail, end-wide, y, wide, h)
	setText(r.name, shorten(opt.Name, Style{}, end-x), Style{})
	place(r.name, x, y, max(end-x, 0), h)
}
