package present

import (
	"image"
	"unicode/utf8"

	"pressworth/assets/drawing"
	"pressworth/quote"
)

// panelDrawings are the garments for the shop's own eye: the line with most pieces on its smallest and its largest size,
// seen from every side that carries artwork.
func (c *Counter) panelDrawings() []FrontDrawing {
	lines := c.byPieces()
	if len(lines) == 0 || len(c.job.Placements) == 0 {
		return nil
	}
	g := lines[0]
	small, large := ends(g)
	var out []FrontDrawing
	for _, size := range []string{small, large} {
		arts, prints := c.artsFor(g.ID, size, endText(size == small))
		if len(arts) == 0 {
			continue
		}
		for _, side := range drawing.Sides(g.Info.Category, arts) {
			out = append(out, FrontDrawing{
				Name: size + ", " + string(side), Arts: arts, Prints: prints,
				Garment: drawing.Garment{Category: firstWord(g), Size: size, Side: side, Color: g.Info.Hex},
			})
		}
		if small == large {
			break
		}
	}
	return out
}

// ends are the smallest and the largest size of a line that has pieces; sizes stand in their order.
func ends(g quote.Garment) (small, large string) {
	for _, s := range g.Sizes {
		if s.Qty > 0 {
			if small == "" {
				small = s.Size
			}
			large = s.Size
		}
	}
	return small, large
}

// endText is which name is drawn: the longest on the smallest size, the shortest on the largest.
func endText(small bool) func(quote.Placement) string {
	if small {
		return longest
	}
	return shortest
}

// fits says what is in the way of artwork on the garments: for every line and placement the first size it concerns.
func (c *Counter) fits() []string {
	var out []string
	for _, g := range c.job.Garments {
		told := map[string]bool{}
		for _, s := range g.Sizes {
			if s.Qty == 0 {
				continue
			}
			arts, _ := c.artsFor(g.ID, s.Size, longest)
			for _, a := range arts {
				if told[a.Name] {
					continue
				}
				for _, text := range drawing.Check(drawing.Garment{Category: firstWord(g), Size: s.Size}, []drawing.Art{a}) {
					told[a.Name] = true
					if text += "."; !contains(out, text) {
						out = append(out, text)
					}
				}
			}
		}
	}
	return out
}

// artsFor are the artworks on one size of a line, each in the size it has there, with their pictures.
func (c *Counter) artsFor(garment, size string, text func(quote.Placement) string) (arts []drawing.Art, prints []image.Image) {
	for _, p := range c.job.Placements {
		if p.On != nil && !contains(p.On, garment) {
			continue
		}
		w, h := p.Width, p.Height
		for _, v := range p.Variants {
			if contains(v.Sizes, size) {
				w, h = v.Width, v.Height
			}
		}
		a := drawing.Art{
			Name: p.Name, Position: p.Info.Position, W: drawn(w.String()), H: drawn(h.String()),
			Inks: p.Inks, FullColor: p.FullColor, Text: text(p),
		}
		if room := drawn(p.CharWidth.String()) * float64(utf8.RuneCountInString(a.Text)); p.Personal && room > 0 {
			a.W = min(a.W, room)
		}
		var print image.Image
		if known, ok := c.pictures[p.Info.Artwork]; ok && p.Info.Artwork != "" {
			print, a.Text = known.Image, " " // the frame alone: the picture is laid into it
		}
		arts, prints = append(arts, a), append(prints, print)
	}
	return arts, prints
}
