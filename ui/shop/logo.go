package shop

import (
	"bytes"
	"image"
	_ "image/jpeg" // a logo may be one
	_ "image/png"  // or one of these

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// logo is the picture of the letterhead with what can be done about it.
type logo struct {
	place   *Place
	object  fyne.CanvasObject
	name    *parts.Text
	fault   *parts.Band
	remove  *parts.Button
	picture *canvas.Image
	shown   catalog.Logo
}

func newLogo(p *Place) *logo {
	l := &logo{place: p, name: parts.NewText("", parts.MutedStyle.Shortened()), fault: parts.NewBand(parts.Fault, ""), picture: canvas.NewImageFromImage(nil)}
	l.picture.FillMode = canvas.ImageFillContain
	l.remove = parts.NewButton(parts.Quiet, "Take it away", "", func() { l.put(catalog.Logo{}) })
	l.object = parts.Column(6,
		parts.Row(8, []parts.Track{parts.Fit(), parts.Share(1)}, parts.NewText("Logo", parts.CaptionStyle), l.name),
		parts.Flow(8, parts.NewButton(parts.Quiet, "Choose a picture …", "", l.choose), l.remove),
		l.fault, container.New(logoBox{}, l.picture))
	return l
}

// show shows a logo without telling the place.
func (l *logo) show(x catalog.Logo) {
	l.shown = x
	l.fault.SetText("")
	l.name.SetText("none: PNG or JPEG, at most 1 MB")
	l.picture.Image = nil
	if picture, _, err := image.Decode(bytes.NewReader(x.Data)); err == nil {
		l.name.SetText(x.Name)
		l.picture.Image = picture
	}
	if l.picture.Image == nil {
		l.picture.Hide()
	} else {
		l.picture.Show()
	}
	enable(l.remove, len(x.Data) > 0)
	l.picture.Refresh()
}

func (l *logo) put(x catalog.Logo) {
	l.place.now.Logo = x
	l.show(x)
	l.place.touched()
}

func (l *logo) choose() {
	if l.place.Choose == nil || l.place.Picture == nil {
		return
	}
	l.place.Choose(func(path string) {
		parts.Background(func() func() {
			x, err := l.place.Picture(path)
			if err == nil {
				err = x.Check()
			}
			return func() {
				if err != nil {
					l.fault.SetText("That picture cannot be used: " + err.Error())
					return
				}
				l.put(x)
			}
		})
	})
}

// logoBox gives the picture the height it has on paper, at the left.
type logoBox struct{}

func (logoBox) MinSize(o []fyne.CanvasObject) fyne.Size {
	if !o[0].Visible() {
		return fyne.Size{}
	}
	return fyne.NewSize(look.Px(40), look.Px(56))
}

func (logoBox) Layout(o []fyne.CanvasObject, s fyne.Size) {
	o[0].Resize(fyne.NewSize(min(s.Width, look.Px(220)), s.Height))
	o[0].Move(fyne.NewPos(0, 0))
}
