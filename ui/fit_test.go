package ui

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
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
	window   rect
	texts    []drawn
	controls []control
	faults   []string
}

// control is something that can be pressed or typed into, where it is seen.
type control struct {
	what string
	at   rect
}

func (r *reading) walk(o fyne.CanvasObject, at fyne.Position, clip rect, scrolled bool) {
	if o == nil || !o.Visible() {
		return
	}
	at = at.Add(o.Position())
	box := rect{at.X, at.Y, at.X + o.Size().Width, at.Y + o.Size().Height}
	r.control(o, box, clip, scrolled)
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

// control looks at what can be pressed: it must be in the window, but for what a scroll brings there.
func (r *reading) control(o fyne.CanvasObject, box, clip rect, scrolled bool) {
	_, types := o.(fyne.Focusable)
	_, taps := o.(fyne.Tappable)
	if !types && !taps || box.empty() {
		return
	}
	what := fmt.Sprintf("%T", o)
	if x, ok := o.(interface{ Text() string }); ok {
		what += fmt.Sprintf(" %q", x.Text())
	}
	w := r.window
	if box.x0 < w.x0-1 || box.x1 > w.x1+1 || !scrolled && (box.y0 < w.y0-1 || box.y1 > w.y1+1) {
		r.fault("%s is off the window: %.0f", what, box)
	}
	if seen := box.meet(clip); !seen.empty() {
		r.controls = append(r.controls, control{what, seen})
	}
}

// within says whether one place lies in another: a button on a row that can be pressed is no overlap.
func (r rect) within(o rect) bool {
	return r.x0 >= o.x0-1 && r.x1 <= o.x1+1 && r.y0 >= o.y0-1 && r.y1 <= o.y1+1
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
	for i, a := range r.controls {
		for _, b := range r.controls[i+1:] {
			m := a.at.meet(b.at)
			if m.x1-m.x0 > 2 && m.y1-m.y0 > 2 && !a.at.within(b.at) && !b.at.within(a.at) {
				r.fault("%s at %.0f lies on %s at %.0f", a.what, a.at, b.what, b.at)
			}
		}
	}
}

func (d *desk) read(size fyne.Size) *reading {
	r := &reading{window: rect{0, 0, size.Width, size.Height}}
	seen := d.win.Content()
	if page := d.Page(); page != nil { // covers the place
		seen = page
	}
	r.walk(seen, fyne.NewPos(0, 0), r.window, false)
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
	one, two, off := parts.NewField(""), parts.NewField(""), parts.NewField("")
	for i, f := range []*parts.Field{one, two, off} {
		f.Resize(fyne.NewSize(30, 20))
		f.Move(fyne.NewPos(float32(i)*20, float32(i/2)*60))
	}
	off.Move(fyne.NewPos(80, 60))
	r = &reading{window: rect{0, 0, 90, 100}}
	r.walk(container.NewWithoutLayout(one, two, off), fyne.NewPos(0, 0), r.window, false)
	r.overlaps()
	if len(r.faults) != 2 {
		t.Errorf("got %q, want one field on another and one off the window", r.faults)
	}
}

// screen is a window's size at a scale, in a theme.
type screen struct {
	size  fyne.Size
	scale float32
	mode  look.Mode
}

func (x screen) String() string {
	theme := "light"
	if x.mode == look.Dark {
		theme = "dark"
	}
	return fmt.Sprintf("%.0f × %.0f, scale %.3g, %s", x.size.Width, x.size.Height, x.scale, theme)
}

// screens are the smallest window, the usual one, and a 3840 × 2160 screen whole, at scales 1 to 2.
func screens() (all []screen) {
	for _, mode := range []look.Mode{look.Light, look.Dark} {
		all = append(all, screen{fyne.NewSize(1024, 700), 1, mode}, screen{fyne.NewSize(1400, 900), 1.5, mode},
			screen{fyne.NewSize(1920, 1080), 2, mode}, screen{fyne.NewSize(3840, 2160), 1, mode})
	}
	return all
}

func TestFit_noWordOrControlIsClippedOrCoveredInAnyPlace(t *testing.T) {
	d := open(t, 0, nil)
	for _, x := range screens() {
		d.SetMode(x.mode)
		d.win.Canvas().(interface{ SetScale(float32) }).SetScale(x.scale)
		percents := []int{90, 100, 130}
		if x.mode == look.Dark { // the same letters in other colours
			percents = []int{130}
		}
		for _, percent := range percents {
			d.SetTextSize(percent)
			d.walkAll(t, x, fmt.Sprintf("%s, text %d %%", x, percent))
		}
	}
}

// walkAll goes to every place, to the customer's side and to the pages of the help menu.
func (d *desk) walkAll(t *testing.T, x screen, where string) {
	t.Helper()
	for n := 1; n <= int(placeCount); n++ {
		d.Go(n)
		d.check(t, x.size, placeNames[n-1]+" at "+where)
	}
	d.Turn()
	d.check(t, x.size, "the customer's side at "+where)
	d.Turn()
	for name, page := range map[string]func(){"help": d.Help, "keys": d.Keys, "cautions": d.Cautions, "about": d.AboutPage} {
		page()
		d.check(t, x.size, name+" at "+where)
		d.closePage()
	}
}

func TestFit_aRosterWithEverythingToSayFits(t *testing.T) {
	d := open(t, 0, nil)
	d.deps.Presenter.PasteRoster(0, 0, [][]string{
		{"7", "RIVERA", "M"}, {"7", "WOLFESCHLEGELSTEINHAUSEN", "L"}, {"", "", "9XL"}, {"12", "Zoë", "M"}, {"13", "LEE", "S"}, {"14", "ŁUĆ", "S"},
	})
	for _, kind := range present.Letterings() {
		d.deps.Presenter.AddLetters(kind)
	}
	d.deps.Presenter.CompareWith(catalog.PastRoster{Number: "2025-0099", People: []catalog.DraftPerson{{Size: "M", Name: "RIVERA", Number: "9"}}})
	for _, x := range screens()[:3] {
		for _, percent := range []int{100, 130} {
			d.SetTextSize(percent)
			d.check(t, x.size, fmt.Sprintf("a roster at %s, text %d %%", x, percent))
		}
	}
}

func (d *desk) check(t *testing.T, size fyne.Size, where string) {
	t.Helper()
	d.settle(size)
	if least := d.win.Content().MinSize(); least.Width > size.Width || least.Height > size.Height {
		t.Errorf("%s: the window cannot be made smaller than %v", where, least)
	}
	for i, fault := range d.read(size).faults {
		if i == 6 {
			t.Errorf("%s: and more", where)
			break
		}
		t.Errorf("%s: %s", where, fault)
	}
}
