package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// column stacks objects at full width, a gap apart; hidden ones take no room.
type column struct{ gap float32 }

// Column stacks objects at full width with a gap (at 100 %) between them.
func Column(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(column{gap}, objects...)
}

func (c column) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	n := 0
	for _, o := range objects {
		if o.Visible() {
			m := o.MinSize()
			size.Width = max(size.Width, m.Width)
			size.Height += m.Height
			n++
		}
	}
	size.Height += look.Px(c.gap) * float32(max(n-1, 0))
	return size
}

func (c column) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	y, gap := float32(0), look.Px(c.gap)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		place(o, 0, y, size.Width, o.MinSize().Height)
		h := o.MinSize().Height // a paragraph knows its height once it knows its width
		place(o, 0, y, size.Width, h)
		y += h + gap
	}
}

// Track is the width of one column of a Row: fixed (at 100 %), what the object needs, or a share of what is left.
type Track struct {
	fixed float32
	share float32
}

// Fixed is a track of a width at 100 %.
func Fixed(w float32) Track { return Track{fixed: w} }

// Share is a track that takes a share of the room that is left.
func Share(n float32) Track { return Track{share: n} }

// Fit is a track as wide as its object needs.
func Fit() Track { return Track{} }

type row struct {
	gap    float32
	tracks []Track
	top    bool
}

// Row sets objects side by side in tracks, a gap (at 100 %) apart, centred over the row's height.
func Row(gap float32, tracks []Track, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(row{gap: gap, tracks: tracks}, objects...)
}

// TopRow is a Row whose objects take the row's whole height.
func TopRow(gap float32, tracks []Track, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(row{gap: gap, tracks: tracks, top: true}, objects...)
}

func (r row) track(i int) Track {
	if i < len(r.tracks) {
		return r.tracks[i]
	}
	return Fit()
}

func (r row) width(i int, o fyne.CanvasObject) float32 {
	if t := r.track(i); t.fixed > 0 {
		return look.Px(t.fixed)
	}
	return o.MinSize().Width
}

func (r row) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	n := 0
	for i, o := range objects {
		if o.Visible() {
			size.Width += r.width(i, o)
			size.Height = max(size.Height, o.MinSize().Height)
			n++
		}
	}
	size.Width += look.Px(r.gap) * float32(max(n-1, 0))
	return size
}

func (r row) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	left, shares, n := size.Width, float32(0), 0
	for i, o := range objects {
		if !o.Visible() {
			continue
		}
		n++
		if t := r.track(i); t.share > 0 {
			shares += t.share
		} else {
			left -= r.width(i, o)
		}
	}
	gap := look.Px(r.gap)
	left = max(left-gap*float32(max(n-1, 0)), 0)
	x := float32(0)
	for i, o := range objects {
		if !o.Visible() {
			continue
		}
		w := left * r.track(i).share / max(shares, 1e-6)
		if r.track(i).share == 0 {
			w = r.width(i, o)
		}
		h := o.MinSize().Height
		if r.top {
			h = size.Height
		}
		place(o, x, (size.Height-h)/2, w, h)
		x += w + gap
	}
}

// inset keeps an object away from the edges.
type inset struct{ x, top, bottom float32 }

// Inset keeps an object away from the edges by measures at 100 %.
func Inset(x, y float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(inset{x, y, y}, o)
}

// Below leaves room below an object, at 100 %.
func Below(gap float32, o fyne.CanvasObject) *fyne.Container {
	return container.New(inset{0, 0, gap}, o)
}

// PageInset keeps a place's content away from the window's edges; what scrolls in it runs to the bottom.
func PageInset(o fyne.CanvasObject) *fyne.Container {
	return container.New(inset{look.PageMargin, look.PageMargin, 0}, o)
}

func (in inset) MinSize(objects []fyne.CanvasObject) fyne.Size {
	var size fyne.Size
	for _, o := range objects {
		size = size.Max(o.MinSize())
	}
	return size.AddWidthHeight(2*look.Px(in.x), look.Px(in.top)+look.Px(in.bottom))
}

func (in inset) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	x, top, bottom := look.Px(in.x), look.Px(in.top), look.Px(in.bottom)
	for _, o := range objects {
		place(o, x, top, max(size.Width-2*x, 0), max(size.Height-top-bottom, 0))
	}
}

// Gap is empty room of a size at 100 %.
func Gap(w, h float32) fyne.CanvasObject {
	g := &gap{w: w, h: h}
	g.ExtendBaseWidget(g)
	return g
}

type gap struct {
	base
	w, h float32
}

func (g *gap) CreateRenderer() fyne.WidgetRenderer {
	return newPainted(painted{
		part: g, paint: func() {}, layout: func(fyne.Size) {},
		min: func() fyne.Size { return fyne.NewSize(look.Px(g.w), look.Px(g.h)) },
	})
}

// Rule is a hairline across.
type Rule struct {
	base
	down bool
}

// NewRule makes a hairline from left to right.
func NewRule() *Rule {
	r := &Rule{}
	r.ExtendBaseWidget(r)
	return r
}

// NewUpright makes a hairline from top to bottom.
func NewUpright() *Rule {
	r := &Rule{down: true}
	r.ExtendBaseWidget(r)
	return r
}

// CreateRenderer is part of the toolkit's Widget.
func (r *Rule) CreateRenderer() fyne.WidgetRenderer {
	line := canvas.NewRectangle(nil)
	return newPainted(painted{
		part: r, objects: []fyne.CanvasObject{line},
		paint: func() { setRect(line, look.Rule, look.Clear, 0, 0) },
		layout: func(s fyne.Size) {
			if r.down {
				place(line, 0, 0, look.Hairline, s.Height)
			} else {
				place(line, 0, 0, s.Width, look.Hairline)
			}
		},
		min: func() fyne.Size { return fyne.NewSize(look.Hairline, look.Hairline) },
	})
}
