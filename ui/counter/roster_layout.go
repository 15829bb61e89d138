package counter

import (
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/widget"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Measures of the table at 100 %.
const (
	rosterHead  = 18
	rosterPitch = 34
	rosterFirst = 26 // for the number of the row
	rosterLast  = 26
	rosterSay   = 15
)

// edges are left edges and widths of the columns.
func (r *roster) edges(width float32) (x, w [present.RosterColumns]float32) {
	room := width - px(rosterFirst+rosterLast) - px(6)*(present.RosterColumns-1)
	all := float32(0)
	for _, s := range rosterShares {
		all += s
	}
	at := px(rosterFirst)
	for i, s := range rosterShares {
		x[i], w[i] = at, room*s/all
		at += w[i] + px(6)
	}
	return x, w
}

// tall is the height of a row in sight: one with a problem says it below.
func (r *roster) tall(i int) float32 {
	if r.problem(i) != "" {
		return px(rosterPitch + rosterSay)
	}
	return px(rosterPitch)
}

func (r *roster) problem(i int) string {
	if at := r.first + i; at < len(r.view.Rows) {
		return r.view.Rows[at].Problem()
	}
	return ""
}

// rosterLayout sets the rows in sight.
type rosterLayout struct{ r *roster }

// MinSize is part of the toolkit's Layout.
func (l rosterLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	h := px(rosterHead)
	for i := range l.r.inSight() {
		h += l.r.tall(i)
	}
	return fyne.NewSize(px(300), h)
}

// Layout is part of the toolkit's Layout.
func (l rosterLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	r := l.r
	put(r.words, 0, 0, size.Width, size.Height)
	x, w := r.edges(size.Width)
	y := px(rosterHead)
	for i, row := range r.rows {
		for k, f := range row.fields {
			put(f.Field, x[k], y, w[k], px(look.FieldHeight))
		}
		m := row.take.MinSize()
		put(row.take, size.Width-m.Width+px(4), y+(px(look.FieldHeight)-m.Height)/2, m.Width, m.Height)
		if i < r.inSight() {
			y += r.tall(i)
		}
	}
}

// rosterWords draws everything of the table that is not typed into.
type rosterWords struct {
	parts.Figure
	roster *roster
}

func (w *rosterWords) draw(p *parts.Pen, size fyne.Size) {
	r := w.roster
	x, wide := r.edges(size.Width)
	for k, head := range rosterHeads {
		p.Text(parts.Box{X: x[k], W: wide[k], H: px(14)}, head, parts.CaptionStyle)
	}
	y := px(rosterHead)
	for i := range r.inSight() {
		number := strconv.Itoa(r.first + i + 1)
		if r.first+i == len(r.view.Rows) {
			number = "+"
		}
		p.Text(parts.Box{Y: y, W: px(rosterFirst - 8), H: px(look.FieldHeight)}, number, parts.CaptionStyle.Right())
		if text := r.problem(i); text != "" {
			p.Text(parts.Box{X: x[0], Y: y + px(look.FieldHeight), W: size.Width - x[0], H: px(rosterSay)}, text, parts.CaptionStyle.In(look.Fault))
		}
		y += r.tall(i)
	}
	w.bar(p, size)
}

// bar shows where in the list the rows in sight are.
func (w *rosterWords) bar(p *parts.Pen, size fyne.Size) {
	r := w.roster
	all := float32(len(r.view.Rows) + 1)
	if all <= rosterSight {
		return
	}
	track := size.Height - px(rosterHead)
	p.Rect(parts.Box{X: size.Width - px(2), Y: px(rosterHead) + track*float32(r.first)/all, W: px(3), H: track * rosterSight / all},
		parts.Fill{Color: look.Color(look.Muted), Radius: 1.5})
}

// wheel is an object that the mouse wheel moves by rows.
type wheel struct {
	widget.BaseWidget
	content fyne.CanvasObject
	move    func(by int)
}

func newWheel(content fyne.CanvasObject, move func(by int)) *wheel {
	w := &wheel{content: content, move: move}
	w.ExtendBaseWidget(w)
	return w
}

// Scrolled is part of the toolkit's Scrollable.
func (w *wheel) Scrolled(e *fyne.ScrollEvent) {
	by := 3
	if e.Scrolled.DY > 0 {
		by = -3
	}
	w.move(by)
}

// CreateRenderer is part of the toolkit's Widget.
func (w *wheel) CreateRenderer() fyne.WidgetRenderer { return widget.NewSimpleRenderer(w.content) }
