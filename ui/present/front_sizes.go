package present

import (
	"image"
	"slices"
	"strings"
	"unicode/utf8"

	"pressworth/assets/drawing"
	"pressworth/quote"
	"pressworth/quote/sizes"
)

// panelDrawings are the garments for the shop's own eye: the line with most pieces on its smallest and its largest size,
// seen from every side that carries artwork; a side with names twice, with the longest and with the shortest.
func (c *Counter) panelDrawings() []FrontDrawing {
	lines := c.byPieces()
	if len(lines) == 0 || len(c.job.Placements) == 0 {
		return nil
	}
	g := lines[0]
	small, large := ends(g)
	var out []FrontDrawing
	for _, size := range []string{small, large} {
		out = append(out, c.sidesOf(g, size)...)
		if small == large {
			break
		}
	}
	return out
}

// sidesOf draws one size from every side that carries artwork.
func (c *Counter) sidesOf(g quote.Garment, size string) (out []FrontDrawing) {
	arts, prints := c.artsFor(g.ID, size, longest)
	if len(arts) == 0 {
		return nil
	}
	other, otherPrints := c.artsFor(g.ID, size, shortestName)
	add := func(side drawing.Side, arts []drawing.Art, prints []image.Image, note string) {
		out = append(out, FrontDrawing{
			Name: size + ", " + string(side) + note, Arts: arts, Prints: prints,
			Garment: drawing.Garment{Category: firstWord(g), Size: size, Side: side, Color: g.Info.Hex},
		})
	}
	for _, side := range drawing.Sides(g.Info.Category, arts) {
		if !c.namesOn(g, side, arts, other) {
			add(side, arts, prints, "")
			continue
		}
		add(side, arts, prints, ", longest")
		add(side, other, otherPrints, ", shortest")
	}
	return out
}

// namesOn says whether a side has a name that is not the same twice.
func (c *Counter) namesOn(g quote.Garment, side drawing.Side, long, short []drawing.Art) bool {
	for i := range long {
		if long[i].Text != short[i].Text && slices.Contains(drawing.Sides(g.Info.Category, long[i:i+1]), side) {
			return true
		}
	}
	return false
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

// shortestName is the shortest of a placement's names; of numbers the widest, which is looked at on every size.
func shortestName(p quote.Placement) string {
	for _, t := range p.Texts {
		if strings.Trim(t.Text, "0123456789") != "" {
			return shortest(p)
		}
	}
	return longest(p)
}

// lettersSize says whether names or numbers go on a size of a garment: others of the same age have them.
func lettersSize(p quote.Placement, garment, size string) bool {
	return slices.ContainsFunc(p.Texts, func(t quote.Text) bool {
		return t.Garment == garment && sizes.Child(t.Size) == sizes.Child(size)
	})
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
		if p.On != nil && !contains(p.On, garment) || p.Personal && !lettersSize(p, garment, size) {
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
