package counter

import (
	"io"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/dialog"
	"fyne.io/fyne/v2/storage"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
	art "pressworth/ui/present/artwork"
)

// artPicture is the picture of a row of artwork: what was found in it, and how sharp it prints.
type artPicture struct {
	box       *fyne.Container
	choose    *parts.Button
	drop      *parts.Button
	offer     *parts.Button
	found     *parts.Text
	dots      *parts.Text
	swatch    *fyne.Container
	presenter *present.Counter
	key       string
	sought    map[string]bool // files that a reopened draft names
	swatches  []art.Ink
}

// mostBytes is the largest file that is read.
const mostBytes = 80 << 20

func newArtPicture(p *present.Counter) *artPicture {
	a := &artPicture{presenter: p, found: parts.NewText("", parts.MutedStyle), dots: parts.NewText("", parts.MutedStyle), swatch: container.NewHBox()}
	a.choose = parts.NewSmallButton(parts.Quiet, "Picture…", a.ask)
	a.drop = parts.NewButton(parts.Link, "×", "", func() { p.DropPicture(a.key) })
	a.offer = parts.NewButton(parts.Link, "", "", func() { p.TakeSharpSize(a.key) })
	a.box = parts.Flow(8, a.choose, a.drop, a.found, a.swatch, a.dots, a.offer)
	return a
}

func (a *artPicture) show(key string, v *present.Picture) {
	a.key = key
	for _, o := range []fyne.CanvasObject{a.drop, a.found, a.swatch, a.dots, a.offer} {
		visible(o, v != nil)
	}
	a.choose.SetText("Picture…")
	if v == nil {
		return
	}
	a.choose.SetText(v.Name)
	a.found.SetText(v.Found)
	style := parts.MutedStyle
	if v.Coarse {
		style = style.In(look.Warn)
	}
	a.dots.Set(v.Dots, style)
	visible(a.offer, v.Offer != "")
	a.offer.SetText(v.Offer)
	a.paint(v.Swatch)
	if v.Missing {
		a.found.SetText("the picture is being looked at…")
		a.reopen(v.Path)
	}
}

// reopen looks at the file of a draft from an earlier day; where it is gone, that is said.
func (a *artPicture) reopen(path string) {
	if a.sought[path] {
		a.found.SetText("the picture is no longer at " + path)
		return
	}
	if a.sought == nil {
		a.sought = map[string]bool{}
	}
	a.sought[path] = true
	parts.Background(func() func() {
		r, err := storage.Reader(storage.NewFileURI(path))
		if err != nil {
			return func() { a.found.SetText("the picture is no longer at " + path) }
		}
		pic, err := read(r)
		return func() {
			if err == nil {
				a.presenter.KnowPicture(path, pic)
			}
		}
	})
}

// paint shows the colours that were found.
func (a *artPicture) paint(inks []art.Ink) {
	same := len(inks) == len(a.swatches)
	for i := 0; same && i < len(inks); i++ {
		same = inks[i] == a.swatches[i]
	}
	if same {
		return
	}
	a.swatches = inks
	a.swatch.RemoveAll()
	for _, k := range inks {
		a.swatch.Add(parts.NewChip(k.Name, k.Hex, nil))
	}
}

// ask opens the file chooser, the one other window there is.
func (a *artPicture) ask() {
	w := windowOf(a.box)
	if w == nil {
		return
	}
	d := dialog.NewFileOpen(func(r fyne.URIReadCloser, err error) {
		if err == nil && r != nil {
			a.take(a.key, r)
		}
	}, w)
	d.SetFilter(storage.NewExtensionFileFilter([]string{".png", ".jpg", ".jpeg", ".svg"}))
	d.Show()
}

// take looks at a file off the window's goroutine.
func (a *artPicture) take(key string, r fyne.URIReadCloser) {
	path := r.URI().Path()
	parts.Background(func() func() {
		pic, err := read(r)
		return func() {
			if err != nil {
				a.found.SetText(err.Error())
				visible(a.found, true)
				return
			}
			a.presenter.AttachPicture(key, path, pic)
		}
	})
}

func read(r io.ReadCloser) (art.Picture, error) {
	defer r.Close()
	data, err := io.ReadAll(io.LimitReader(r, mostBytes))
	if err != nil {
		return art.Picture{}, err
	}
	return art.Read(data)
}

// windowOf finds the window an object is in.
func windowOf(o fyne.CanvasObject) fyne.Window {
	d := fyne.CurrentApp().Driver()
	c := d.CanvasForObject(o)
	for _, w := range d.AllWindows() {
		if w.Canvas() == c {
			return w
		}
	}
	return nil
}
