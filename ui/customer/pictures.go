package customer

import (
	"image"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"pressworth/assets/drawing"
	"pressworth/ui/chart"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// mostDrawn is how many garments are drawn at most.
const mostDrawn = 4

// pictures are the shop's name, the job's title and the garments drawn to one scale.
type pictures struct {
	box     *fyne.Container
	shop    *parts.Text
	title   *parts.Paragraph
	caption *parts.Paragraph
	images  []*canvas.Image
	sizes   []fyne.Size // of the drawings, inches
	demo    *parts.Text
	valid   *parts.Text
	turn    int // counts what was set, so that an older painting is dropped
}

func newPictures() *pictures {
	p := &pictures{
		shop: parts.NewText("", frontNote), title: parts.NewParagraph("", frontKey), caption: parts.NewParagraph("", frontNote),
		demo: parts.NewText("", parts.Style{Color: look.Warn, Weight: parts.Semibold}), valid: parts.NewText("", parts.MutedStyle),
	}
	p.box = container.New(drawingLayout{p}, p.shop, p.title, p.caption, p.demo, p.valid)
	for range mostDrawn {
		im := &canvas.Image{FillMode: canvas.ImageFillContain, ScaleMode: canvas.ImageScaleSmooth}
		p.images = append(p.images, im)
		p.box.Add(im)
	}
	return p
}

func (p *pictures) set(f present.Front) {
	p.shop.SetText(f.Shop)
	p.title.SetText(f.Title)
	p.caption.SetText(f.Caption)
	p.valid.SetText(f.Valid)
	p.demo.SetText("")
	if f.Demo {
		p.demo.SetText("DEMO")
	}
	p.sizes = p.sizes[:0]
	p.turn++
	for i, im := range p.images {
		im.Hidden = i >= len(f.Drawn)
		if im.Hidden {
			continue
		}
		pic := drawing.Draw(f.Drawn[i].Garment, f.Drawn[i].Arts)
		p.sizes = append(p.sizes, fyne.NewSize(float32(pic.W), float32(pic.H)))
		p.paint(im, pic, f.Drawn[i].Prints, p.turn)
	}
	p.box.Refresh()
}

// pixels is how many are painted for the tallest garment: enough for a large window.
const pixels = 900

// paint paints a drawing off the window's goroutine.
func (p *pictures) paint(im *canvas.Image, pic drawing.Picture, prints []image.Image, turn int) {
	parts.Background(func() func() {
		painted := chart.Raster(pic, pixels/max(pic.W, pic.H), prints)
		return func() {
			if turn == p.turn {
				im.Image = painted
				im.Refresh()
			}
		}
	})
}

// drawingLayout sets the words and the drawings below each other.
type drawingLayout struct{ p *pictures }

// MinSize is part of the toolkit's Layout.
func (l drawingLayout) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(360), look.Px(430))
}

// Layout is part of the toolkit's Layout.
func (l drawingLayout) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	p := l.p
	place(p.shop, 0, 0, size.Width, look.Px(20))
	place(p.title, 0, look.Px(26), size.Width, p.title.MinSize().Height)
	y := look.Px(26) + p.title.MinSize().Height + look.Px(28)
	captionTall := look.Px(60)
	room := size.Height - y - captionTall - look.Px(40)
	y += l.garments(fyne.NewPos(0, y), fyne.NewSize(size.Width, min(room, look.Px(420))))
	place(p.caption, 0, y+look.Px(24), size.Width, captionTall)
	bottom := size.Height - look.Px(10)
	wide := float32(0)
	if p.demo.Text() != "" {
		wide = p.demo.MinSize().Width + look.Px(12)
	}
	place(p.demo, 0, bottom, wide, look.Px(18))
	place(p.valid, wide, bottom, size.Width-wide, look.Px(18))
}

// garments sets the first drawing large and the others beside it, smaller and to one scale; it returns how tall they
// came out.
func (l drawingLayout) garments(at fyne.Position, room fyne.Size) float32 {
	p := l.p
	if len(p.sizes) == 0 || room.Height <= 0 {
		return 0
	}
	wide := room.Width
	if len(p.sizes) > 1 {
		wide *= 0.62
	}
	first := p.sizes[0]
	scale := min(wide/first.Width, room.Height/first.Height)
	tall := first.Height * scale
	place(p.images[0], at.X, at.Y, first.Width*scale, tall)
	if len(p.sizes) > 1 {
		left := first.Width*scale + look.Px(28)
		l.beside(fyne.NewPos(at.X+left, at.Y), fyne.NewSize(room.Width-left, tall), scale*0.58)
	}
	return tall
}

// smallest is how wide a drawing is at least, at 100 %: a cap would be lost beside a shirt at the same scale.
const smallest = 84

// beside stacks the further drawings from the feet up.
func (l drawingLayout) beside(at fyne.Position, room fyne.Size, scale float32) {
	rest := l.p.sizes[1:]
	gap := look.Px(18)
	down := gap * float32(len(rest)-1)
	sizes := make([]fyne.Size, len(rest))
	for i, s := range rest {
		wide := min(max(s.Width*scale, look.Px(smallest)), room.Width)
		sizes[i] = fyne.NewSize(wide, s.Height*wide/s.Width)
		down += sizes[i].Height
	}
	shrink := min(room.Height/down, 1)
	y := at.Y + room.Height
	for i, s := range sizes {
		y -= s.Height * shrink
		place(l.p.images[i+1], at.X, y, s.Width*shrink, s.Height*shrink)
		y -= gap * shrink
	}
}
