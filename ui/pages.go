package ui

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// open shows a page to read over the place; Esc, or going to a place, closes it.
func (w *Window) open(title string, objects ...fyne.CanvasObject) {
	w.closePage()
	closing := parts.NewButton(parts.Quiet, "Close", "Esc", func() { w.closePage(); w.Focus() })
	section := parts.NewSection(title, "", objects...)
	section.Right.Add(closing)
	reading := container.New(readingLayout{}, section)
	w.page = container.NewStack(parts.NewGround(look.Page), parts.NewScroll(reading))
	w.stage.Add(w.page)
	parts.Focus(closing)
}

func (w *Window) closePage() {
	if w.page != nil {
		w.stage.Remove(w.page)
		w.page, w.guide = nil, nil
	}
}

// Page is the page that is open over the place, or nil.
func (w *Window) Page() fyne.CanvasObject { return w.page }

// readingLayout keeps text to a width that is good to read.
type readingLayout struct{}

const readingWidth = 720

func (readingLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(240), o[0].MinSize().Height+2*look.Px(look.PageMargin))
}

func (readingLayout) Layout(o []fyne.CanvasObject, s fyne.Size) {
	margin := look.Px(look.PageMargin)
	wide := min(s.Width-2*margin, look.Px(readingWidth))
	o[0].Resize(fyne.NewSize(wide, o[0].MinSize().Height))
	o[0].Resize(fyne.NewSize(wide, o[0].MinSize().Height))
	o[0].Move(fyne.NewPos(margin, margin))
}

func prose(paragraphs ...string) []fyne.CanvasObject {
	objects := make([]fyne.CanvasObject, len(paragraphs))
	for i, p := range paragraphs {
		objects[i] = parts.NewParagraph(p, parts.Style{})
	}
	return objects
}

// table sets a narrow first column beside a wide second one.
func table(rows [][2]string) fyne.CanvasObject {
	column := parts.Column(5)
	for _, row := range rows {
		column.Add(parts.TopRow(14, []parts.Track{parts.Fixed(150), parts.Share(1)},
			parts.NewText(row[0], parts.Style{Weight: parts.Medium}), parts.NewParagraph(row[1], parts.MutedStyle)))
	}
	return column
}

// Help shows what the place is for and how it is used.
func (w *Window) Help() {
	w.open(placeNames[w.at], prose(helpTexts[w.at]...)...)
}

// Keys lists the keys.
func (w *Window) Keys() {
	w.open("Keys", table(keyTexts))
}

// Cautions says where the work can hurt somebody.
func (w *Window) Cautions() {
	w.open("Cautions", table(cautionTexts))
}

// AboutPage says which program this is and where it keeps its data.
func (w *Window) AboutPage() {
	a := w.deps.About
	rows := [][2]string{
		{"Version", a.Version},
		{"Toolkit", a.Toolkit},
		{"Shop file", a.ShopPath},
		{"Schema", a.Schema},
		{"Licence", "MIT. The licences of fonts and libraries are in assets/NOTICES."},
	}
	objects := append(prose("Prices decorated garments: cost to the cent, and the price that leaves what the shop needs."), table(rows))
	if a.Demo && a.StartOwn != nil {
		objects = append(objects,
			parts.NewBand(parts.Note, "This is the demo shop: everything in it is invented."),
			parts.Row(0, nil, parts.NewButton(parts.Filled, "Start a shop of your own", "", a.StartOwn)))
	}
	w.open("About "+Name, objects...)
}
