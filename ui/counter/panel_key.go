package counter

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// keyFigures are the total, the margin and what is left per hour.
type keyFigures struct {
	parts.Figure
	view present.Panel
}

func newKeyFigures() *keyFigures {
	k := &keyFigures{}
	k.SetUp(k, k.min, k.draw)
	return k
}

// stacked says whether margin and left per hour stand below the total.
func (k *keyFigures) stacked(width float32) bool {
	return width > 0 && parts.DisplayStyle.Measure(k.view.Total).Width+px(keyWide*2+24) > width
}

// keyWide is the room of one of the two figures beside the total.
const keyWide = 84

func (k *keyFigures) min() fyne.Size {
	if k.stacked(k.Size().Width) {
		return fyne.NewSize(px(200), px(90))
	}
	return fyne.NewSize(px(200), px(48))
}

func (k *keyFigures) set(v present.Panel) {
	o := k.view
	k.view = v
	if o.Total != v.Total || o.TotalNote != v.TotalNote || o.Margin != v.Margin || o.PerHour != v.PerHour ||
		o.BelowFloor != v.BelowFloor || o.Stale != v.Stale {
		k.Redraw()
	}
}

func (k *keyFigures) draw(p *parts.Pen, size fyne.Size) {
	w, y := size.Width, px(9)
	room := w - px(keyWide*2)
	if k.stacked(w) {
		room, y = w, px(52)
	}
	p.Text(parts.Box{W: room, H: px(14)}, k.view.TotalNote, parts.CaptionStyle)
	p.Text(parts.Box{Y: px(12), W: room, H: px(36)}, k.view.Total, faint(parts.DisplayStyle, k.view.Stale))
	style := faint(parts.KeyStyle.Right(), k.view.Stale)
	k.figure(p, parts.Box{X: w - px(keyWide), Y: y, W: px(keyWide)}, "left per hour", k.view.PerHour, style)
	name, box := "margin", parts.Box{X: w - px(keyWide*2+24), Y: y, W: px(keyWide + 24)}
	if k.view.BelowFloor {
		name = "margin, under floor"
		if !k.view.Stale {
			style = style.In(look.Warn)
		}
	}
	k.figure(p, box, name, k.view.Margin, style)
}

// figure draws a key figure under its name.
func (k *keyFigures) figure(p *parts.Pen, b parts.Box, name, value string, s parts.Style) {
	b.H = px(14)
	p.Text(b, name, parts.CaptionStyle.Right())
	b.Y, b.H = b.Y+px(14), px(22)
	p.Text(b, value, s)
}
