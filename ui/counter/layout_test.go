package counter

import (
	"fmt"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// A walk over the Counter at every size a screen may have: no word is wider than its box, and nothing that can be
// typed into stands outside of what surrounds it or over a neighbour.
func TestCounter_nothingIsClippedOrOverlaps(t *testing.T) {
	for _, size := range []fyne.Size{{Width: 915, Height: 620}, {Width: 1316, Height: 820}, {Width: 1516, Height: 920}, {Width: 3750, Height: 2080}} {
		for _, percent := range []int{100, 130} { // the first size is a window of 1024 × 700 without rail, menu and bar
			for _, mode := range []look.Mode{look.Light, look.Dark} {
				name := fmt.Sprintf("%.0f × %.0f, %d %%, %v", size.Width, size.Height, percent, mode)
				t.Run(name, func(t *testing.T) { walkAt(t, size, look.NewTheme(mode, percent)) })
			}
		}
	}
}

func walkAt(t *testing.T, size fyne.Size, theme fyne.Theme) {
	d := newDesk(t, 0, size)
	fyne.CurrentApp().Settings().SetTheme(theme)
	d.win.Resize(size.AddWidthHeight(1, 0)) // laid out anew with the theme
	d.win.Resize(size)
	d.p.SetInches(d.p.Draft().Placements[0].Key, "wide")
	d.p.SetNeededBy("whenever")
	d.counter.form.artwork.open(d.p.Draft().Placements[1].Key)
	d.counter.form.roster.begin()
	for _, s := range []*container.Scroll{d.counter.form.scroll, d.counter.panel.scroll} {
		if need := s.Content.MinSize().Width; need > s.Size().Width+0.5 {
			t.Errorf("a side needs %.0f and has %.0f", need, s.Size().Width)
		}
	}
	w := walker{t: t}
	w.walk(d.counter.Content(), fyne.NewPos(0, 0), fyne.NewSize(size.Width, 1e6), "")
	if w.fields < 40 || w.texts < 90 {
		t.Errorf("saw %d fields and %d texts, want the whole Counter", w.fields, w.texts)
	}
}

// walker goes down a tree of objects with the place of each in the window.
type walker struct {
	t             *testing.T
	fields, texts int
}

func (w *walker) walk(o fyne.CanvasObject, at fyne.Position, room fyne.Size, path string) {
	if !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	path += "/" + strings.TrimPrefix(fmt.Sprintf("%T", o), "*")
	switch o := o.(type) {
	case *canvas.Text:
		w.text(o, path)
	case *parts.Field:
		w.fields++
		w.inside(o, at, room, path)
		w.children(test.WidgetRenderer(o).Objects(), at, room, path)
	case *fyne.Container:
		w.apart(o.Objects, path)
		w.children(o.Objects, at, room, path)
	case *container.Scroll:
		w.walk(o.Content, at, fyne.NewSize(at.X+o.Size().Width, 1e6), path)
	case fyne.Widget:
		w.children(test.WidgetRenderer(o).Objects(), at, room, path)
	}
}

func (w *walker) children(objects []fyne.CanvasObject, at fyne.Position, room fyne.Size, path string) {
	for _, o := range objects {
		w.walk(o, at, room, path)
	}
}

// text checks that a drawn text has room; one cut on purpose ends with an ellipsis.
func (w *walker) text(o *canvas.Text, path string) {
	w.texts++
	if o.Text == "" || strings.HasSuffix(o.Text, "…") {
		return
	}
	if need := o.MinSize().Width; need > o.Size().Width+1.5 {
		w.t.Errorf("%q needs %.0f and has %.0f: %s", o.Text, need, o.Size().Width, path)
	}
}

func (w *walker) inside(o fyne.CanvasObject, at fyne.Position, room fyne.Size, path string) {
	if at.X < -1 || at.X+o.Size().Width > room.Width+1 || o.Size().Width < 24 {
		w.t.Errorf("a field from %.0f to %.0f in a room of %.0f: %s", at.X, at.X+o.Size().Width, room.Width, path)
	}
}

// apart checks that fields and choices side by side do not cover each other.
func (w *walker) apart(objects []fyne.CanvasObject, path string) {
	var typed []fyne.CanvasObject
	for _, o := range objects {
		switch o.(type) {
		case *parts.Field, *parts.Choice, *parts.Button:
			if o.Visible() && o.Size().Width > 0 {
				typed = append(typed, o)
			}
		}
	}
	for i, a := range typed {
		for _, b := range typed[i+1:] {
			if overlap(a, b) {
				w.t.Errorf("%T at %v %v covers %T at %v %v: %s", a, a.Position(), a.Size(), b, b.Position(), b.Size(), path)
			}
		}
	}
}

func overlap(a, b fyne.CanvasObject) bool {
	const hair = 4.5 // focus rings and links may touch
	p, q, s, z := a.Position(), b.Position(), a.Size(), b.Size()
	return p.X+s.Width > q.X+hair && q.X+z.Width > p.X+hair && p.Y+s.Height > q.Y+hair && q.Y+z.Height > p.Y+hair
}

func TestWalker_canFail(t *testing.T) {
	a, b := parts.NewField(""), parts.NewField("")
	a.Resize(fyne.NewSize(50, 30))
	b.Resize(fyne.NewSize(50, 30))
	b.Move(fyne.NewPos(30, 10))
	if !overlap(a, b) {
		t.Error("two fields that cover each other are not noticed")
	}
}
