package export

import (
	"slices"
	"strconv"
	"strings"

	"pressworth/assets/drawing"
	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

// view is one garment seen from one side, with its artwork.
type view struct {
	caption string
	picture drawing.Picture
	ids     []string // placements of the picture's artworks
}

// views are the garments of a job to scale, each side that carries artwork, lines with most pieces first. Quiet ones, for the customer, show no
// warnings.
func (d *doc) views(job quote.Job, result quote.Result, quiet bool) (vs []view) {
	lines := slices.Clone(result.Garments)
	slices.SortStableFunc(lines, func(a, b quote.GarmentLine) int { return b.Pieces - a.Pieces })
	for _, l := range lines {
		g := garmentOf(job, l.ID)
		arts, ids := d.artsOn(job, l.ID, commonSize(l))
		if l.Pieces == 0 || len(arts) == 0 {
			continue
		}
		size := commonSize(l)
		kind := kindOf(g)
		for _, side := range drawing.Sides(kind, arts) {
			p := drawing.Draw(drawing.Garment{Category: kind, Size: size, Side: side, Color: hexOf(g), Quiet: quiet}, arts)
			vs = append(vs, view{captionOf(g, side, size), p, ids})
		}
	}
	return vs
}

func (d *doc) artsOn(job quote.Job, garment, size string) (arts []drawing.Art, ids []string) {
	for _, p := range job.Placements {
		if p.On != nil && !slices.Contains(p.On, garment) {
			continue
		}
		art := artOf(job, p, longest(p), size)
		art.Pictured = d.artworks[p.ID] != nil && art.Text == ""
		arts, ids = append(arts, art), append(ids, p.ID)
	}
	return arts, ids
}

// artOf is a placement's artwork as it comes on a garment size; names and numbers are as wide as the text given.
func artOf(job quote.Job, p quote.Placement, text, size string) drawing.Art {
	w, h := p.Width, p.Height
	for _, v := range p.Variants {
		if slices.Contains(v.Sizes, size) {
			w, h = v.Width, v.Height
		}
	}
	a := drawing.Art{
		Name: p.Name, Position: p.Info.Position, W: inchesOf(job, w.String()), H: inchesOf(job, h.String()),
		Inks: p.Inks, FullColor: p.FullColor, Text: text,
	}
	if each := inchesOf(job, p.CharWidth.String()); text != "" && each > 0 {
		a.W = min(a.W, each*float64(len([]rune(text))))
	}
	return a
}

func longest(p quote.Placement) (text string) {
	for _, t := range p.Texts {
		if len([]rune(t.Text)) > len([]rune(text)) {
			text = t.Text
		}
	}
	return text
}

// tooLarge says, garment by garment and size by size, which artwork is in the way of a seam, a pocket or its own width.
func tooLarge(job quote.Job, result quote.Result) (texts []string) {
	var none doc
	for _, l := range result.Garments {
		g := garmentOf(job, l.ID)
		for _, s := range l.Sizes {
			if s.Qty == 0 {
				continue
			}
			arts, _ := none.artsOn(job, l.ID, s.Size)
			for _, t := range drawing.Check(drawing.Garment{Category: kindOf(g), Size: s.Size}, arts) {
				texts = append(texts, named(g)+": "+t)
			}
		}
	}
	return texts
}

// hexOf is a garment's colour, by its name where nothing better is known.
func hexOf(g quote.Garment) string {
	if g.Info.Hex != "" {
		return g.Info.Hex
	}
	if hex, ok := drawing.InkColor(g.Color); ok {
		return hex
	}
	return ""
}

// kindOf is what a garment is drawn as.
func kindOf(g quote.Garment) string {
	if g.Info.Category == "" {
		return g.Name
	}
	return g.Info.Category
}

// inchesOf reads a length for drawing; drawings need no exact numbers.
func inchesOf(job quote.Job, length string) float64 {
	x, _ := strconv.ParseFloat(length, 64)
	if job.Unit == "mm" {
		return x / 25.4
	}
	return x
}

// captionOf names a view, what tells garments apart first.
func captionOf(g quote.Garment, side drawing.Side, size string) string {
	return strings.Join(nonEmpty(g.Color, string(side), sizeCaption(size), lower(g.Name)), ", ")
}

func sizeCaption(size string) string {
	if size == "OS" {
		return sizeWord(size)
	}
	return "size " + size
}

func commonSize(l quote.GarmentLine) string {
	best := quote.SizePrice{}
	for _, s := range l.Sizes {
		if s.Qty > best.Qty {
			best = s
		}
	}
	return best.Size
}

// pictures sets views side by side, all at one scale: four in a row, six where there are many, no higher than high.
func (d *doc) pictures(vs []view, high float64) {
	perRow := 4
	if len(vs) > 8 {
		perRow, high = 6, high*0.7
	}
	scale := 9.0
	for row := range slices.Chunk(vs, perRow) {
		scale = min(scale, d.fitting(row, high))
	}
	for row := range slices.Chunk(vs, perRow) {
		d.pictureRow(row, scale)
	}
}

const (
	apart = 18.0 // between pictures, at least
	least = 60.0 // width of a picture's place, for its caption
)

// fitting is the scale at which a row of views fits, in points to the inch.
func (d *doc) fitting(row []view, high float64) float64 {
	scale := high
	for _, v := range row {
		scale = min(scale, high/v.picture.H)
	}
	for rowWidth(row, scale) > d.right-d.left {
		scale *= 0.97
	}
	return scale
}

func rowWidth(row []view, scale float64) float64 {
	all := -apart
	for _, v := range row {
		all += max(v.picture.W*scale, least) + apart
	}
	return all
}

func (d *doc) pictureRow(row []view, scale float64) {
	tall := 0.0
	for _, v := range row {
		tall = max(tall, v.picture.H)
	}
	// Spread over the width, but not torn apart.
	between := apart + min(40, (d.right-d.left-rowWidth(row, scale))/float64(max(len(row)-1, 1)))
	d.need(tall*scale + 34)
	d.gap(6)
	x := d.left
	for _, v := range row {
		d.picture(v, x, d.y+(tall-v.picture.H)*scale, scale)
		w := max(v.picture.W*scale, least)
		d.captionLines(v.caption, x, d.y+tall*scale+12, w+apart-6)
		x += w + between
	}
	d.gap(tall*scale + 28)
}

// picture draws a view with its corner at x, y, and lays the real pictures into their frames.
func (d *doc) picture(v view, x, y, scale float64) {
	paper.Picture(d, v.picture, x, y, scale)
	for _, f := range v.picture.Frames {
		if f.Art >= len(v.ids) {
			continue
		}
		if img := d.artworks[v.ids[f.Art]]; img != nil {
			d.Image(v.ids[f.Art], img, paper.Place{CX: x + f.CX*scale, CY: y + f.CY*scale, W: f.W * scale, H: f.H * scale, Angle: f.Angle})
		}
	}
}

// captionLines sets a caption on two lines at most.
func (d *doc) captionLines(text string, x, y, width float64) {
	lines := letters.Wrap(text, caption.Weight, caption.Size, width)
	if len(lines) > 2 {
		lines = []string{lines[0], letters.Clip(strings.Join(lines[1:], " "), caption.Weight, caption.Size, width)}
	}
	for i, l := range lines {
		d.Text(x, y+float64(i)*9.5, l, caption)
	}
}
