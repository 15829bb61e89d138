package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
)

// rect is a place in the window.
type rect struct{ x0, y0, x1, y1 float32 }

func (r rect) meet(o rect) rect {
	return rect{max(r.x0, o.x0), max(r.y0, o.y0), min(r.x1, o.x1), min(r.y1, o.y1)}
}

func (r rect) empty() bool { return r.x1-r.x0 <= 0 || r.y1-r.y0 <= 0 }

// drawn is a line of text where it is seen.
type drawn struct {
	text string
	at   rect // the ink of it, not its box
}

// reading gathers every text of the window with what is wrong with its place.
type reading struct {
	window rect
	texts  []drawn
	faults []string
}

func (r *reading) walk(o fyne.CanvasObject, at fyne.Position, clip rect, scrolled bool) {
	if o == nil || !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	box := rect{at.X, at.Y, at.X + o.Size().Width, at.Y + o.Size().Height}
	switch o := o.(type) {
	case *canvas.Text:
		r.text(o, box, clip, scrolled)
	case *container.Scroll:
		r.walk(o.Content, at, clip.meet(box), true)
	case *fyne.Container:
		for _, child := range o.Objects {
			r.walk(child, at, clip, scrolled)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			r.walk(child, at, clip, scrolled)
		}
	}
}

func (r *reading) text(t *canvas.Text, box, clip rect, scrolled bool) {
	need := t.MinSize()
	if t.Text == "" {
		return
	}
	if need.Width > box.x1-box.x0+1 {
		r.fault("%q needs %.0f and has %.0f", t.Text, need.Width, box.x1-box.x0)
	}
	ink := box
	switch t.Alignment {
	case fyne.TextAlignLeading:
		ink.x1 = ink.x0 + need.Width
	case fyne.TextAlignTrailing:
		ink.x0 = ink.x1 - need.Width
	case fyne.TextAlignCenter:
		middle := (ink.x0 + ink.x1) / 2
		ink.x0, ink.x1 = middle-need.Width/2, middle+need.Width/2
	}
	middle := (ink.y0 + ink.y1) / 2
	ink.y0, ink.y1 = middle-need.Height*0.4, middle+need.Height*0.4
	if ink.x1 > r.window.x1+1 || ink.x0 < r.window.x0-1 {
		r.fault("%q is off the window: %.0f to %.0f", t.Text, ink.x0, ink.x1)
	}
	if !scrolled && (ink.y1 > r.window.y1+1 || ink.y0 < r.window.y0-1) {
		r.fault("%q is off the window: %.0f to %.0f down", t.Text, ink.y0, ink.y1)
	}
	if seen := ink.meet(clip); !seen.empty() {
		r.texts = append(r.texts, drawn{t.Text, seen})
	}
}

func (r *reading) fault(format string, args ...any) {
	r.faults = append(r.faults, fmt.Sprintf(format, args...))
}

// overlaps says which texts lie on one another by more than a pixel either way.
func (r *reading) overlaps() {
	for i, a := range r.texts {
		for _, b := range r.texts[i+1:] {
			if m := a.at.meet(b.at); m.x1-m.x0 > 1 && m.y1-m.y0 > 1 {
				r.fault("%q lies on %q", a.text, b.text)
			}
		}
	}
}

func (d *desk) read(size fyne.Size) *reading {
	r := &reading{window: rect{0, 0, size.Width, size.Height}}
	r.walk(d.win.Content(), fyne.NewPos(0, 0), r.window, false)
	r.overlaps()
	return r
}

// settle lays the window out again until nothing moves, as the toolkit's driver does between frames.
func (d *desk) settle(size fyne.Size) {
	for range 3 {
		d.win.Resize(size)
		relay(d.win.Content())
	}
}

// relay has every container lay out its objects: the test driver does not do so by itself where a minimum changed.
func relay(o fyne.CanvasObject) {
	if o == nil || !o.Visible() {
		return
	}
	switch o := o.(type) {
	case *fyne.Container:
		if o.Layout != nil {
			o.Layout.Layout(o.Objects, o.Size())
		}
		for _, child := range o.Objects {
			relay(child)
		}
	case fyne.Widget:
		r := test.WidgetRenderer(o)
		r.Layout(o.Size())
		for _, child := range r.Objects() {
			relay(child)
		}
	}
}

func TestFit_checkFindsTextThatDoesNotFit(t *testing.T) {
	open(t, 0, nil)
	long, short := canvas.NewText("a text that is far too long", nil), canvas.NewText("under it", nil)
	long.Resize(fyne.NewSize(20, 20))
	short.Resize(fyne.NewSize(100, 20))
	r := &reading{window: rect{0, 0, 90, 100}}
	r.walk(container.NewWithoutLayout(long, short), fyne.NewPos(0, 0), r.window, false)
	r.overlaps()
	if len(r.faults) != 3 {
		t.Errorf("got %q, want one too long, one off the window, one on the other", r.faults)
	}
}

func TestFit_noWordIsClippedOrCoveredInAnyPlace(t *testing.T) {
	d := open(t, 0, nil)
	for _, size := range []fyne.Size{{Width: 1024, Height: 700}, {Width: 1400, Height: 900}, {Width: 1920, Height: 1080}} {
		for _, percent := range []int{90, 100, 130} {
			d.SetTextSize(percent)
			for n := 1; n <= int(placeCount); n++ {
				d.Go(n)
				d.check(t, size, fmt.Sprintf("%s at %.0f × %.0f, text %d %%", placeNames[n-1], size.Width, size.Height, percent))
			}
			d.Turn()
			d.check(t, size, fmt.Sprintf("the customer's side at %.0f × %.0f, text %d %%", size.Width, size.Height, percent))
			d.Turn()
		}
	}
}

func (d *desk) check(t *testing.T, size fyne.Size, where string) {
	t.Helper()
	d.settle(size)
	for i, fault := range d.read(size).faults {
		if i == 6 {
			t.Errorf("%s: and more", where)
			break
		}
		t.Errorf("%s: %s", where, fault)
	}
}
