package artwork

import (
	"fmt"
	"image"
	"math"
	"slices"

	"pressworth/assets/drawing"
)

// Thresholds of the search for inks, found by trying on drawings of one to six inks and on photos.
const (
	samples  = 160_000 // pixels looked at, at most
	flatStep = 0.022   // neighbours nearer than this belong to one area
	apart    = 0.075   // colours nearer than this are one ink
	least    = 0.004   // part of the printed area an ink has at least
	mostInks = 8       // more are a photo
	flatPart = 0.55    // part of the printed area that is flat in a drawing at least
	fewPart  = 0.80    // part of the flat area that its inks' very colours fill in a drawing at least
	ofVery   = 0.02    // how near a pixel is to its ink's very colour
)

// group is a colour and how many pixels are near it.
type group struct {
	at    lab
	count int
	sum   [3]int // of red, green and blue, for the mean
}

// inks finds the spot colours: areas of one colour are gathered, soft edges between them left out.
func (c *canvas) inks(box image.Rectangle) ([]Ink, bool) {
	flat, all := c.flat(box)
	if all == 0 {
		return nil, true
	}
	groups := gather(flat)
	kept := groups[:0]
	for _, g := range groups {
		if float64(g.count) >= least*float64(len(flat)) {
			kept = append(kept, g)
		}
	}
	if isPhoto(kept, flat, all) {
		return nil, true
	}
	inks := make([]Ink, len(kept))
	for i, g := range kept {
		r, gr, b := uint8(g.sum[0]/g.count), uint8(g.sum[1]/g.count), uint8(g.sum[2]/g.count)
		inks[i] = Ink{
			Name: nameOf(toLab(r, gr, b), inks[:i]), Hex: fmt.Sprintf("#%02x%02x%02x", r, gr, b),
			Share: float64(g.count) / float64(len(flat)),
		}
	}
	return inks, false
}

// isPhoto tells a photo or a gradient from a drawing: little of it is flat, or it has many colours, or its pixels are
// spread around the colours instead of sitting on them.
func isPhoto(kept []group, flat []pixel, all int) bool {
	if len(kept) == 0 || len(kept) > mostInks || float64(len(flat)) < flatPart*float64(all) {
		return true
	}
	on := 0
	for _, p := range flat {
		for _, g := range kept {
			if p.lab.far(g.at) <= ofVery {
				on++
				break
			}
		}
	}
	return float64(on) < fewPart*float64(len(flat))
}

type pixel struct {
	lab
	r, g, b uint8
}

// flat lists the pixels inside areas of one colour, and counts all that are printed.
func (c *canvas) flat(box image.Rectangle) (flat []pixel, all int) {
	step := max(int(math.Sqrt(float64(box.Dx()*box.Dy())/samples)), 1)
	for y := box.Min.Y; y < box.Max.Y; y += step {
		for x := box.Min.X; x < box.Max.X; x += step {
			if c.alpha(x, y) < faint {
				continue
			}
			all++
			if c.inside(x, y) {
				i := c.PixOffset(x, y)
				flat = append(flat, pixel{c.lab(x, y), c.Pix[i], c.Pix[i+1], c.Pix[i+2]})
			}
		}
	}
	return flat, all
}

// inside says whether a pixel and its four neighbours have one colour.
func (c *canvas) inside(x, y int) bool {
	here := c.lab(x, y)
	if c.alpha(x, y) < solid {
		return false
	}
	for _, d := range [][2]int{{-1, 0}, {1, 0}, {0, -1}, {0, 1}} {
		nx, ny := x+d[0], y+d[1]
		if nx < 0 || ny < 0 || nx >= c.w || ny >= c.h {
			continue
		}
		if c.alpha(nx, ny) < solid || c.lab(nx, ny).far(here) > flatStep {
			return false
		}
	}
	return true
}

// gather groups pixels by colour: first into small cells, then the cells, the fullest first, around those that are
// farther apart.
func gather(flat []pixel) []group {
	const cell = 0.012
	cells := map[[3]int]*group{}
	for _, p := range flat {
		key := [3]int{int(math.Round(p.l / cell)), int(math.Round(p.a / cell)), int(math.Round(p.lab.b / cell))}
		g := cells[key]
		if g == nil {
			g = &group{at: p.lab}
			cells[key] = g
		}
		g.add(p)
	}
	list := make([]*group, 0, len(cells))
	for _, g := range cells {
		list = append(list, g)
	}
	slices.SortFunc(list, func(a, b *group) int {
		if a.count != b.count {
			return b.count - a.count
		}
		return compareLab(a.at, b.at)
	})
	var out []group
	for _, g := range list {
		i := slices.IndexFunc(out, func(o group) bool { return o.at.far(g.at) < apart })
		if i < 0 {
			out = append(out, *g)
			continue
		}
		out[i].count += g.count
		for k := range g.sum {
			out[i].sum[k] += g.sum[k]
		}
	}
	slices.SortStableFunc(out, func(a, b group) int { return b.count - a.count })
	return out
}

func (g *group) add(p pixel) {
	g.count++
	g.sum[0] += int(p.r)
	g.sum[1] += int(p.g)
	g.sum[2] += int(p.b)
}

func compareLab(a, b lab) int {
	for _, d := range []float64{a.l - b.l, a.a - b.a, a.b - b.b} {
		if d != 0 {
			return int(math.Copysign(1, d))
		}
	}
	return 0
}

// names are what inks are called, as far as a drawing of a garment can show them.
var names = []string{
	"white", "black", "grey", "red", "maroon", "orange", "gold", "yellow", "green", "forest", "lime", "teal",
	"turquoise", "sky", "royal", "navy", "purple", "pink", "brown", "tan", "cream", "silver",
}

// nameOf is the nearest name that no ink before has; a second one of the same name is numbered.
func nameOf(at lab, before []Ink) string {
	best, far := "ink", math.Inf(1)
	for _, n := range names {
		hex, ok := drawing.InkColor(n)
		if !ok {
			continue
		}
		var r, g, b uint8
		if _, err := fmt.Sscanf(hex, "#%02x%02x%02x", &r, &g, &b); err != nil {
			continue
		}
		if d := toLab(r, g, b).far(at); d < far {
			best, far = n, d
		}
	}
	same := 0
	for _, i := range before {
		if i.Name == best || len(i.Name) > len(best) && i.Name[:len(best)+1] == best+" " {
			same++
		}
	}
	if same > 0 {
		return fmt.Sprintf("%s %d", best, same+1)
	}
	return best
}
