package chart

import (
	"image"
	"reflect"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"

	"pressworth/assets/drawing"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Garment is one garment to be drawn with its artwork, and the words below it.
type Garment struct {
	Name    string
	Garment drawing.Garment
	Arts    []drawing.Art
	Prints  []image.Image // the pictures of the artworks, nil where there is none
}

func (g Garment) same(o Garment) bool {
	return g.Name == o.Name && g.Garment == o.Garment && slices.Equal(g.Prints, o.Prints) && reflect.DeepEqual(g.Arts, o.Arts)
}

// Garments is a row of garments, drawn to one scale. They are painted off the toolkit's goroutine; what was painted for
// an older state of the job is dropped.
type Garments struct {
	Box    *fyne.Container
	images []*canvas.Image
	words  []*parts.Text
	shown  []Garment
	tall   float32 // of the drawings, at 100 %
	turn   int
}

// MostGarments is how many garments a row shows.
const MostGarments = 4

// sharpness is how many pixels are painted for a point, so that the drawing is sharp on a dense screen.
const sharpness = 2

// NewGarments makes an empty row whose drawings are tall at 100 %.
func NewGarments(tall float32) *Garments {
	g := &Garments{tall: tall}
	g.Box = container.New(garmentRow{g})
	for range MostGarments {
		im := &canvas.Image{FillMode: canvas.ImageFillContain, ScaleMode: canvas.ImageScaleSmooth}
		text := parts.NewText("", parts.Style{Size: look.Caption, Color: look.Muted, Align: fyne.TextAlignCenter, Cut: true})
		im.Hide()
		g.images, g.words = append(g.images, im), append(g.words, text)
		g.Box.Add(im)
		g.Box.Add(text)
	}
	return g
}

// Set changes the garments.
func (g *Garments) Set(list []Garment) {
	list = list[:min(len(list), MostGarments)]
	if slices.EqualFunc(g.shown, list, Garment.same) {
		return
	}
	g.shown = list
	g.turn++
	turn, tall := g.turn, look.Px(g.tall)
	parts.Background(func() func() {
		pictures, perInch := pictures(list, tall)
		painted := make([]image.Image, len(pictures))
		for i, p := range pictures {
			painted[i] = Raster(p, perInch*sharpness, list[i].Prints)
		}
		return func() {
			if turn == g.turn {
				g.put(painted)
			}
		}
	})
}

// pictures draws the garments and finds the scale at which the tallest has the given height.
func pictures(list []Garment, tall float32) ([]drawing.Picture, float64) {
	out := make([]drawing.Picture, len(list))
	most := 1.0
	for i, x := range list {
		out[i] = drawing.Draw(x.Garment, x.Arts)
		most = max(most, out[i].H)
	}
	return out, float64(tall) / most
}

func (g *Garments) put(painted []image.Image) {
	for i, im := range g.images {
		im.Hidden = i >= len(painted)
		text := ""
		if !im.Hidden {
			im.Image = painted[i]
			text = g.shown[i].Name
		}
		g.words[i].SetText(text)
		im.Refresh()
	}
	g.Box.Layout.Layout(g.Box.Objects, g.Box.Size())
}

// Drawn tells how many garments have been painted.
func (g *Garments) Drawn() int {
	n := 0
	for _, im := range g.images {
		if !im.Hidden && im.Image != nil {
			n++
		}
	}
	return n
}

type garmentRow struct{ g *Garments }

const garmentWords = 18

// MinSize is part of the toolkit's Layout.
func (r garmentRow) MinSize([]fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(200), look.Px(r.g.tall+garmentWords))
}

// Layout is part of the toolkit's Layout.
func (r garmentRow) Layout(_ []fyne.CanvasObject, size fyne.Size) {
	n := min(r.g.Drawn(), MostGarments)
	if n == 0 {
		return
	}
	gap := look.Px(10)
	wide := (size.Width - gap*float32(n-1)) / float32(n)
	tall := size.Height - look.Px(garmentWords)
	shrink := float32(1)
	for _, im := range r.g.images[:n] {
		shrink = min(shrink, wide/(float32(im.Image.Bounds().Dx())/sharpness))
	}
	for i, im := range r.g.images[:n] {
		w := float32(im.Image.Bounds().Dx()) / sharpness * shrink
		h := float32(im.Image.Bounds().Dy()) / sharpness * shrink
		x := float32(i) * (wide + gap)
		im.Move(fyne.NewPos(x+(wide-w)/2, tall-h))
		im.Resize(fyne.NewSize(w, h))
		r.g.words[i].Move(fyne.NewPos(x, tall+look.Px(2)))
		r.g.words[i].Resize(fyne.NewSize(wide, look.Px(14)))
	}
}
