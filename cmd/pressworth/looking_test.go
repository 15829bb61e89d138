//go:build cgo

package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/ui"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/parts/partstest"
)

// looking is the window's own wiring over a real shop file, without a screen.
type looking struct {
	*desktop
}

// lookAt opens the demo shop to look only; with deeds, what changes the shop can be pressed nevertheless.
func lookAt(t *testing.T, deeds bool) *looking {
	t.Helper()
	path := filepath.Join(t.TempDir(), "demo.db")
	made, err := openShop(t.Context(), path, true)
	if err != nil {
		t.Fatal(err)
	}
	if err := made.Close(); err != nil {
		t.Fatal(err)
	}
	a := test.NewApp()
	t.Cleanup(a.Quit)
	t.Cleanup(parts.Inline())
	if !deeds {
		t.Cleanup(parts.LookOnly())
	}
	a.Settings().SetTheme(look.NewTheme(look.Light, 100))
	d := &desktop{app: a, win: test.NewWindow(nil), trace: func(string) {}, log: newJournal(t.TempDir()), lookOnly: true}
	o := open(t.Context(), path, true, true)
	if o.err != nil {
		t.Fatal(o.err)
	}
	t.Cleanup(func() { _ = o.shop.Close() })
	d.fill(o)
	d.win.Resize(ui.Size)
	return &looking{d}
}

func (l *looking) texts() string { return strings.Join(partstest.Texts(l.win.Content()), " ") }

// deeper is how many steps the walk goes into a place: a list, and what a row or a button of it opens.
const deeper = 2

// try presses whatever can be pressed in a place, and in what opens of it, the short ways first, and returns what the
// shop file refused.
func (l *looking) try(place int, tried map[string]bool) (refused []string) {
	for ways := [][]string{nil}; len(ways) > 0; ways = ways[1:] {
		way := ways[0]
		l.retrace(place, way)
		for _, name := range l.doors() {
			key := fmt.Sprintf("%d %s: %s", place, pageOf(way), name)
			if tried[key] {
				continue
			}
			tried[key] = true
			l.retrace(place, way)
			press := l.door(name)
			if press == nil {
				continue
			}
			press()
			longer := append(way[:len(way):len(way)], name)
			if strings.Contains(l.texts(), "opened for looking only") {
				refused = append(refused, fmt.Sprintf("place %d: %s", place, strings.Join(longer, ", ")))
			} else if len(longer) < deeper {
				ways = append(ways, longer)
			}
		}
	}
	return refused
}

// pageOf is the page of a place that a way leads through.
func pageOf(way []string) string {
	if len(way) > 0 && strings.HasPrefix(way[0], "page ") {
		return way[0]
	}
	return ""
}

// retrace goes to a place anew and into it again.
func (l *looking) retrace(place int, way []string) {
	for _, o := range l.win.Canvas().Overlays().List() {
		l.win.Canvas().Overlays().Remove(o)
	}
	for range deeper + 2 {
		l.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	}
	l.window.Go(place)
	for _, out := range []string{"button Back to the quote", "button Back"} {
		if press := l.door(out); press != nil {
			press()
		}
	}
	l.firstPage()
	for _, name := range way {
		if press := l.door(name); press != nil {
			press()
		}
	}
}

// firstPage goes to the first of the pages of a place.
func (l *looking) firstPage() {
	var first *parts.Tab
	partstest.Walk(l.win.Content(), func(o fyne.CanvasObject) {
		if tab, ok := o.(*parts.Tab); ok && first == nil {
			first = tab
		}
	})
	if first != nil {
		test.Tap(first)
	}
}

// outside are words that lead out of the window: to a viewer, a folder, another program, the customer's side.
var outside = []string{
	"PDF", "E-mail", "Cost sheet", "ticket", "list", "CSV", "text", "Choose", "file…", "To customer", "confirmation",
	"Invoice", "Proof", "layouts", "Labels", "shop of your own", "Picture",
}

// doors are the names of what can be pressed: buttons, boxes, the pages of a place, the first rows of a table.
func (l *looking) doors() (names []string) {
	for name := range l.reach() {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

func (l *looking) door(name string) func() { return l.reach()[name] }

func (l *looking) reach() map[string]func() {
	doors := map[string]func(){}
	partstest.Walk(l.win.Content(), func(o fyne.CanvasObject) {
		switch o := o.(type) {
		case *parts.Button:
			leads := slices.ContainsFunc(outside, func(word string) bool { return strings.Contains(o.Text(), word) })
			if !o.Disabled() && !leads {
				doors["button "+o.Text()] = func() { test.Tap(o) }
			}
		case *parts.Check:
			if !o.Disabled() {
				doors["box "+o.Text()] = func() { test.Tap(o) }
			}
		case *parts.Tab:
			doors["page "+o.Text()] = func() { test.Tap(o) }
		case *parts.Table:
			for i := range min(o.Len(), 4) {
				doors[fmt.Sprintf("row %d", i)] = func() {
					for _, do := range []func(int){o.OnSelect, o.OnOpen} {
						if do != nil {
							do(i)
						}
					}
				}
			}
		}
	})
	return doors
}

// In a window that only looks, in all five places and whatever opens in them, no control runs into the shop file's
// refusal, and the sentence at the bottom says why the others are grey. With the same controls free to be pressed the
// walk runs into it.
func TestLookOnly_noControlTriesToWrite(t *testing.T) {
	for _, c := range []struct {
		name   string
		deeds  bool
		places []int
		least  int // controls that have to be found
	}{{"deeds cannot be pressed", false, []int{1, 2, 3, 4, 5}, 60}, {"the walk notices deeds that can", true, []int{2}, 20}} {
		t.Run(c.name, func(t *testing.T) {
			l := lookAt(t, c.deeds)
			tried, refused := map[string]bool{}, []string(nil)
			for _, place := range c.places {
				l.window.Go(place)
				if !strings.Contains(l.texts(), "another window has this shop open: nothing is saved here") {
					t.Errorf("place %d does not say that one only looks", place)
				}
				refused = append(refused, l.try(place, tried)...)
			}
			t.Logf("%d controls tried, refused: %q", len(tried), refused)
			if len(tried) < c.least {
				t.Errorf("only %d controls were tried: %v", len(tried), tried)
			}
			if c.deeds != (len(refused) > 0) {
				t.Errorf("refused: %s", strings.Join(refused, "\n"))
			}
		})
	}
}

func TestWindow_backupsAreReachedFromTheShop(t *testing.T) {
	l := lookAt(t, true)
	l.window.Go(5)
	press := l.door("button Backups")
	if press == nil {
		t.Fatal("the Shop place has no button for the backups")
	}
	if press(); !strings.Contains(l.texts(), "Back up now") {
		t.Error("the button does not open the page of the backups")
	}
}
