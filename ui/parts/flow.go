package parts

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
)

// flow sets objects side by side and goes on in a further line where there is no room. It remembers the width it was
// given last, on which its height depends.
type flow struct{ gap, width float32 }

// Flow sets objects side by side, a gap (at 100 %) apart, over as many lines as they need for the given width.
func Flow(gap float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&flow{gap: gap}, objects...)
}

func (f *flow) MinSize(objects []fyne.CanvasObject) fyne.Size {
	widest := float32(0)
	for _, o := range objects {
		if o.Visible() {
			widest = max(widest, o.MinSize().Width)
		}
	}
	height := f.run(objects, max(f.width, widest), func(fyne.CanvasObject, float32, float32, fyne.Size) {})
	return fyne.NewSize(widest, height)
}

func (f *flow) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	f.width = size.Width
	f.run(objects, size.Width, func(o fyne.CanvasObject, x, y float32, m fyne.Size) {
		place(o, x, y, min(m.Width, size.Width), m.Height)
	})
}

// run goes through the visible objects with their places, and returns the height they take.
func (f *flow) run(objects []fyne.CanvasObject, width float32, each func(o fyne.CanvasObject, x, y float32, m fyne.Size)) float32 {
	x, y, tall, gap := float32(0), float32(0), float32(0), look.Px(f.gap)
	for _, o := range objects {
		if !o.Visible() {
			continue
		}
		m := o.MinSize()
		if x > 0 && x+m.Width > width {
			x, y, tall = 0, y+tall+gap, 0
		}
		each(o, x, y, m)
		x += m.Width + gap
		tall = max(tall, m.Height)
	}
	return y + tall
}

// fields sets objects in lines of equally wide ones, as many a line as there is room for.
type fields struct{ least, width float32 }

// Fields sets captioned fields in lines, each at least so wide at 100 %, all equally wide.
func Fields(least float32, objects ...fyne.CanvasObject) *fyne.Container {
	return container.New(&fields{least: least}, objects...)
}

// inLine is how many fit side by side.
func (f *fields) inLine(width float32, n int) int {
	gap := look.Px(look.FieldApart)
	return min(max(int((width+gap)/(look.Px(f.least)+gap)), 1), max(n, 1))
}

// balanced spreads n fields over their lines as evenly as can be: six over two lines are three and three.
func (f *fields) balanced(width float32, n int) int {
	most := f.inLine(width, n)
	lines := (n + most - 1) / most
	return (n + lines - 1) / max(lines, 1)
}

func (f *fields) MinSize(objects []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(f.least), f.run(objects, f.width, func(fyne.CanvasObject, float32, float32, float32, float32) {}))
}

func (f *fields) Layout(objects []fyne.CanvasObject, size fyne.Size) {
	f.width = size.Width
	f.run(objects, size.Width, func(o fyne.CanvasObject, x, y, w, h float32) { place(o, x, y, w, h) })
}

func (f *fields) run(objects []fyne.CanvasObject, width float32, each func(o fyne.CanvasObject, x, y, w, h float32)) float32 {
	n, gap := len(objects), look.Px(look.FieldApart)
	if n == 0 {
		return 0
	}
	inLine := f.balanced(width, n)
	wide := max((width-gap*float32(inLine-1))/float32(inLine), 0)
	y := float32(0)
	for at := 0; at < n; at += inLine {
		line := objects[at:min(at+inLine, n)]
		tall := float32(0)
		for _, o := range line {
			tall = max(tall, o.MinSize().Height)
		}
		for i, o := range line {
			each(o, float32(i)*(wide+gap), y, wide, tall)
		}
		y += tall + gap*0.8
	}
	return y - gap*0.8
}

// framed sets one object at the top, one at the bottom and gives the rest to the middle one.
type framed struct{}

// Framed sets top and bottom, as high as they need to be at the width there is, and middle between them. Top and
// bottom may be nil.
func Framed(top, bottom, middle fyne.CanvasObject) *fyne.Container {
	if top == nil {
		top = Gap(0, 0)
	}
	if bottom == nil {
		bottom = Gap(0, 0)
	}
	return container.New(framed{}, top, bottom, middle)
}

func (framed) MinSize(o []fyne.CanvasObject) fyne.Size {
	top, bottom, middle := o[0].MinSize(), o[1].MinSize(), o[2].MinSize()
	return fyne.NewSize(max(top.Width, bottom.Width, middle.Width), top.Height+bottom.Height+middle.Height)
}

func (framed) Layout(o []fyne.CanvasObject, s fyne.Size) {
	for _, edge := range o[:2] { // twice: the height depends on the width
		edge.Resize(fyne.NewSize(s.Width, edge.MinSize().Height))
		edge.Resize(fyne.NewSize(s.Width, edge.MinSize().Height))
	}
	top, bottom := o[0].Size().Height, o[1].Size().Height
	place(o[0], 0, 0, s.Width, top)
	place(o[1], 0, s.Height-bottom, s.Width, bottom)
	place(o[2], 0, top, s.Width, max(s.Height-top-bottom, 0))
}
