package export

import (
	"slices"
	"strconv"

	"pressworth/assets/drawing"
	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

// view is one garment seen from one side, with its artwork.
type view struct {
	caption string
	picture drawing.Picture
}

// views are the garments of a job to scale, each side that carries artwork, lines with most pieces first.
func views(job quote.Job, result quote.Result) (vs []view) {
	lines := slices.Clone(result.Garments)
	slices.SortStableFunc(lines, func(a, b quote.GarmentLine) int { return b.Pieces - a.Pieces })
	for _, l := range lines {
		g := garmentOf(job, l.ID)
		arts := artsOn(job, l.ID)
		if l.Pieces == 0 || len(arts) == 0 {
			continue
		}
		size := commonSize(l)
		kind := g.Info.Category
		if kind == "" {
			kind = g.Name
		}
		for _, side := range drawing.Sides(kind, arts) {
			p := drawing.Draw(drawing.Garment{Category: kind, Size: size, Side: side, Color: g.Info.Hex}, arts)
			vs = append(vs, view{named(g) + ", " + string(side) + ", " + sizeCaption(size), p})
		}
	}
	return vs
}

func artsOn(job quote.Job, garment string) (arts []drawing.Art) {
	for _, p := range job.Placements {
		if p.On != nil && !slices.Contains(p.On, garment) {
			continue
		}
		arts = append(arts, drawing.Art{Name: p.Name, Position: p.Info.Position, W: inchesOf(job, p.Width.String()),
			H: inchesOf(job, p.Height.String()), Inks: p.Inks, FullColor: p.FullColor, Text: longest(p)})
	}
	return arts
}

func longest(p quote.Placement) (text string) {
	for _, t := range p.Texts {
		if len([]rune(t.Text)) > len([]rune(text)) {
			text = t.Text
		}
	}
	return text
}

// inchesOf reads a length for drawing; drawings need no exact numbers.
func inchesOf(job quote.Job, length string) float64 {
	x, _ := strconv.ParseFloat(length, 64)
	if job.Unit == "mm" {
		return x / 25.4
	}
	return x
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

// pictures sets views side by side at one scale, at most four in a row, no higher than high.
func (d *doc) pictures(vs []view, high float64) {
	const perRow = 4
	for len(vs) > 0 {
		row := vs[:min(perRow, len(vs))]
		vs = vs[len(row):]
		d.pictureRow(row, high)
	}
}

func (d *doc) pictureRow(row []view, high float64) {
	tall := 0.0
	for _, v := range row {
		tall = max(tall, v.picture.H)
	}
	between := 18.0
	const least = 60 // room for a caption
	scale := min(high/tall, 9)
	for fits := false; !fits; {
		all := -between
		for _, v := range row {
			all += max(v.picture.W*scale, least) + between
		}
		if fits = all <= d.right-d.left; !fits {
			scale *= 0.97
			continue
		}
		between += min(40, (d.right-d.left-all)/float64(max(len(row)-1, 1))) // spread over the width, not torn apart
	}
	d.need(tall*scale + 34)
	d.gap(6)
	x := d.left
	for _, v := range row {
		paper.Picture(d, v.picture, x, d.y+(tall-v.picture.H)*scale, scale)
		w := max(v.picture.W*scale, least)
		y := d.y + tall*scale + 12
		for i, l := range letters.Wrap(v.caption, caption.Weight, caption.Size, w+between-6) {
			if i < 2 {
				d.Text(x, y+float64(i)*9.5, l, caption)
			}
		}
		x += w + between
	}
	d.gap(tall*scale + 28)
}
