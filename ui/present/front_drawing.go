package present

import (
	"image"
	"strings"

	"pressworth/assets/drawing"
	"pressworth/quote"
)

// FrontDrawing is one garment of the job, seen from one side, with its artwork to scale.
type FrontDrawing struct {
	Name    string
	Garment drawing.Garment
	Arts    []drawing.Art
	Prints  []image.Image // the pictures of the artworks, nil where there is none
}

// frontDrawings are the garments to draw: every side that carries artwork, the lines with most pieces first; and a
// caption that says in words what is drawn.
func (c *Counter) frontDrawings() ([]FrontDrawing, string) {
	var out []FrontDrawing
	size := ""
	for _, g := range c.byPieces() {
		at := commonSize(g)
		arts, prints := c.artsFor(g.ID, at, longest)
		if len(arts) == 0 {
			continue
		}
		if size == "" {
			size = at
		}
		for _, side := range drawing.Sides(g.Info.Category, arts) {
			out = append(out, FrontDrawing{
				Name: g.Name + ", " + lower(g.Color), Arts: arts, Prints: prints,
				Garment: drawing.Garment{Category: firstWord(g), Size: at, Side: side, Color: g.Info.Hex, Quiet: true},
			})
		}
	}
	return out, c.drawnCaption(size)
}

// firstWord is what a garment is drawn as.
func firstWord(g quote.Garment) string {
	if g.Info.Category != "" {
		return g.Info.Category
	}
	return g.Name
}

// byPieces lists the job's garment lines with pieces, most pieces first.
func (c *Counter) byPieces() []quote.Garment {
	var out []quote.Garment
	for _, l := range c.result.Garments {
		for _, g := range c.job.Garments {
			if g.ID != l.ID || l.Pieces == 0 {
				continue
			}
			at := len(out)
			for at > 0 && countOf(out[at-1]) < l.Pieces {
				at--
			}
			out = append(out[:at], append([]quote.Garment{g}, out[at:]...)...)
		}
	}
	return out
}

func countOf(g quote.Garment) int {
	n := 0
	for _, s := range g.Sizes {
		n += s.Qty
	}
	return n
}

// commonSize is the size most pieces of a line have.
func commonSize(g quote.Garment) string {
	best := quote.Size{}
	for _, s := range g.Sizes {
		if s.Qty > best.Qty {
			best = s
		}
	}
	return best.Size
}

// longest is the longest of the names or numbers of a placement.
func longest(p quote.Placement) string {
	text := ""
	for _, t := range p.Texts {
		if len([]rune(t.Text)) > len([]rune(text)) {
			text = t.Text
		}
	}
	return text
}

// drawnCaption says what is drawn: "Drawn to scale on size M. Full back 11 × 8.5 in, sleeve 3 × 10 in."
func (c *Counter) drawnCaption(size string) string {
	var words []string
	for i, p := range c.job.Placements {
		name := p.Name
		if i > 0 {
			name = lower(name)
		}
		text := name + " " + inches(p.Width.String(), p.Height.String()) + " in"
		if p.FullColor {
			text += " (full colour)"
		} else if len(p.Inks) > 0 {
			text += " (" + list(p.Inks) + ")"
		}
		words = append(words, text)
	}
	if len(words) == 0 {
		return ""
	}
	on := " on size " + size
	if size == "OS" {
		on = ", one size"
	}
	return "Drawn to scale" + on + ". " + strings.Join(words, ", ") + "."
}

// shortest is the shortest of the names or numbers of a placement.
func shortest(p quote.Placement) string {
	text := ""
	for i, t := range p.Texts {
		if i == 0 || len([]rune(t.Text)) < len([]rune(text)) {
			text = t.Text
		}
	}
	return text
}
