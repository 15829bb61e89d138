package present

import (
	"fmt"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/ui/present/artwork"
)

// Picture is what the form says about the picture of a row of artwork.
type Picture struct {
	Name    string // of the file
	Path    string
	Dots    string // "164 dots per inch at this size"
	Coarse  bool   // so few that the print shows its dots
	Offer   string // "4 × 3 in at 300 dots per inch"; empty where it is printed so
	Found   string // "2 inks found", "a photo: full colour"
	Swatch  []artwork.Ink
	Missing bool // the file has not been looked at
}

// AttachPicture takes a picture for a row: its inks, or full colour where it is a photo, and its height by the row's
// width; a row without a size gets the size at which the print is sharp.
func (c *Counter) AttachPicture(key, path string, p artwork.Picture) {
	if c.pictures == nil {
		c.pictures = map[string]artwork.Picture{}
	}
	c.pictures[path] = p
	c.placement("", key, func(d *catalog.DraftPlacement) {
		d.Artwork = path
		d.FullColor, d.Inks = p.Photo, inkNames(p.Inks)
		w := drawn(d.Width)
		if w <= 0 {
			w, _ = p.At(artwork.Sharp)
			d.Width = hundredths(w)
		}
		d.Height = hundredths(w * p.Aspect())
	})
}

// KnowPicture remembers a picture that a draft names already, without changing the draft.
func (c *Counter) KnowPicture(path string, p artwork.Picture) {
	if c.pictures == nil {
		c.pictures = map[string]artwork.Picture{}
	}
	c.pictures[path] = p
	c.show()
}

// DropPicture takes the picture off a row.
func (c *Counter) DropPicture(key string) {
	c.placement("", key, func(d *catalog.DraftPlacement) { d.Artwork = "" })
}

// TakeSharpSize gives a row the size at which its picture is printed as sharp as can be.
func (c *Counter) TakeSharpSize(key string) {
	c.placement("", key, func(d *catalog.DraftPlacement) {
		if p, ok := c.pictures[d.Artwork]; ok {
			w, h := p.At(artwork.Sharp)
			d.Width, d.Height = hundredths(w), hundredths(h)
		}
	})
}

// keepAspect gives a row with a picture the other measure, where only one was typed.
func (c *Counter) keepAspect(d *catalog.DraftPlacement) {
	p, ok := c.pictures[d.Artwork]
	if w := drawn(d.Width); ok && d.Artwork != "" && d.Height == "" && w > 0 {
		d.Height = hundredths(w * p.Aspect())
	}
}

func (c *Counter) pictureView(d catalog.DraftPlacement) *Picture {
	if d.Artwork == "" {
		return nil
	}
	v := &Picture{Path: d.Artwork, Name: d.Artwork[strings.LastIndexAny(d.Artwork, `/\`)+1:]}
	p, ok := c.pictures[d.Artwork]
	if !ok {
		v.Missing = true
		return v
	}
	v.Swatch = p.Inks
	v.Found = figures(len(p.Inks), "ink") + " found"
	if p.Photo {
		v.Found = "a photo: full colour"
	}
	if p.Vector {
		v.Dots = "a drawing: sharp at every size"
	}
	if dots := p.Dots(drawn(d.Width), drawn(d.Height)); dots > 0 {
		v.Dots = figures(dots, "dot") + " per inch at this size"
		v.Coarse = dots < artwork.Coarse
		if dots != artwork.Sharp {
			w, h := p.At(artwork.Sharp)
			v.Offer = fmt.Sprintf("%s at %d dots per inch", inches(hundredths(w), hundredths(h))+" in", artwork.Sharp)
		}
	}
	return v
}

// coarse warns of pictures that are printed so large that their dots show.
func (c *Counter) coarse() []string {
	var out []string
	for _, d := range c.draft.Placements {
		if v := c.pictureView(d); v != nil && v.Coarse {
			out = append(out, d.Name+": the picture has only "+strings.TrimSuffix(v.Dots, " at this size")+" at this size.")
		}
	}
	return out
}

func inkNames(inks []artwork.Ink) string {
	names := make([]string, len(inks))
	for i, k := range inks {
		names[i] = k.Name
	}
	return strings.Join(names, ", ")
}

// hundredths writes a length in inches to a hundredth.
func hundredths(x float64) string { return trim(strconv.FormatFloat(max(x, 0.01), 'f', 2, 64)) }
