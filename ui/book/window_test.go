package book_test

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/book"
	"pressworth/ui/book/booktest"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/parts/partstest"
)

// desk is the Quote book in a window, read and pressed as a person does.
type desk struct {
	*testing.T
	*booktest.Book
	place *book.Place
	win   fyne.Window
}

// open shows the Quote book, after what is done with it first.
func open(t *testing.T, first ...func(*desk)) *desk {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	d := &desk{T: t, Book: booktest.New()}
	d.place = d.Place()
	for _, f := range first {
		f(d)
	}
	d.win = test.NewWindow(parts.NewLayered(d.place.Content()))
	d.win.Resize(fyne.NewSize(1400, 900))
	d.place.Shown()
	d.place.Focus()
	return d
}

// says is all text that is drawn.
func (d *desk) says() string { return strings.Join(partstest.Texts(d.win.Content()), "\n") }

func (d *desk) want(words ...string) {
	d.Helper()
	said := d.says()
	for _, w := range words {
		if !strings.Contains(said, w) {
			d.Errorf("%q is not to be seen in:\n%s", w, said)
		}
	}
}

func (d *desk) wantNot(words ...string) {
	d.Helper()
	said := d.says()
	for _, w := range words {
		if strings.Contains(said, w) {
			d.Errorf("%q is to be seen in:\n%s", w, said)
		}
	}
}

// press presses the n-th thing to press that is called so, the first one where none is said.
func (d *desk) press(word string, n ...int) {
	d.Helper()
	found := partstest.Pressables(d.win.Content(), word)
	at := 0
	if len(n) > 0 {
		at = n[0]
	}
	if at >= len(found) {
		d.Fatalf("nothing called %q (%d) to press in:\n%s", word, at, d.says())
	}
	found[at].Tapped(&fyne.PointEvent{})
}

// field is the field with a caption, or with a hint.
func (d *desk) field(name string) *parts.Field {
	d.Helper()
	found := partstest.Field(d.win.Content(), name)
	if found == nil {
		d.Fatalf("no field called %q in:\n%s", name, d.says())
	}
	return found
}

// enter types into a field over what stands there.
func (d *desk) enter(name, text string) {
	d.Helper()
	f := d.field(name)
	parts.Focus(f)
	f.SelectAll()
	if text == "" {
		f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDelete})
	}
	test.Type(f, text)
}

func (d *desk) key(name fyne.KeyName) {
	d.win.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name})
}

// openFirst opens the page of the quote that words find.
func (d *desk) openFirst(words string) {
	d.Helper()
	d.enter("Search by any word, number, date or amount", words)
	d.key(fyne.KeyReturn)
}

// table is the first table in sight.
func (d *desk) table() *parts.Table {
	d.Helper()
	var found *parts.Table
	partstest.Walk(d.win.Content(), func(o fyne.CanvasObject) {
		if x, ok := o.(*parts.Table); ok && found == nil {
			found = x
		}
	})
	if found == nil {
		d.Fatalf("no table in:\n%s", d.says())
	}
	return found
}

// acceptAtOnce takes the open quote as accepted at the counter.
func (d *desk) acceptAtOnce() {
	d.Helper()
	d.press("Accepted on the spot")
	d.press("Freeze and accept")
}
