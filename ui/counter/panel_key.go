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
	k.SetUp(k, func() fyne.Size { return fyne.NewSize(look.Px(300), look.Px(48)) }, k.draw)
	return k
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
	caption, total, key := parts.CaptionStyle, parts.DisplayStyle, parts.KeyStyle.Right()
	if k.view.Stale {
		total, key = total.In(look.Muted), key.In(look.Muted)
	}
	w := size.Width
	p.Text(parts.Box{W: w * 0.55, H: look.Px(14)}, k.view.TotalNote, caption)
	p.Text(parts.Box{Y: look.Px(12), W: w * 0.55, H: look.Px(36)}, k.view.Total, total)
	right := look.Px(76)
	baseline := look.Px(23)
	margin := key
	if k.view.BelowFloor && !k.view.Stale {
		margin = margin.In(look.Warn)
	}
	p.Text(parts.Box{X: w - right, Y: look.Px(9), W: right, H: look.Px(14)}, "left per hour", caption.Right())
	p.Text(parts.Box{X: w - right, Y: baseline, W: right, H: look.Px(22)}, k.view.PerHour, key)
	name := "margin"
	if k.view.BelowFloor {
		name = "margin, under floor"
	}
	p.Text(parts.Box{X: w - 2.6*right, Y: look.Px(9), W: right * 1.4, H: look.Px(14)}, name, caption.Right())
	p.Text(parts.Box{X: w - 2.6*right, Y: baseline, W: right * 1.4, H: look.Px(22)}, k.view.Margin, margin)
}
