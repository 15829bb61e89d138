// Package artwork looks at a picture that is to be printed: where its empty border ends, how large it can be printed,
// which spot inks it would need, or whether it is a photo that wants full colour. It takes the bytes of a file and gives
// values.
//
// Not in this package: opening files, drawing on garments, prices.
package artwork

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	_ "image/jpeg" // the decoders Read knows
	_ "image/png"
)

// Picture is what was found out about a picture.
type Picture struct {
	Width, Height int         // pixels without the empty border
	Inks          []Ink       // spot inks it would need, the largest area first; none for a photo
	Photo         bool        // it wants full colour
	Vector        bool        // drawn of lines and areas: sharp at every size
	Image         image.Image // without the empty border; the ground, where it had one colour, is clear
}

// Ink is one spot colour found in a picture.
type Ink struct {
	Name  string  // the nearest name an ink goes by
	Hex   string  // #rrggbb
	Share float64 // of the printed area
}

// mostPixels is the largest picture that is looked at.
const mostPixels = 64_000_000

// MostBytes is the largest file that is looked at: who reads one need not read further.
const MostBytes = 64 << 20

// Read looks at the bytes of a PNG, JPEG or SVG file.
func Read(data []byte) (Picture, error) {
	if len(data) > MostBytes {
		return Picture{}, fmt.Errorf("the file is larger than %d MiB: make the picture smaller first", MostBytes>>20)
	}
	if isSVG(data) {
		return readSVG(data)
	}
	config, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return Picture{}, errors.New("this is no picture: choose a PNG, JPEG or SVG file")
	}
	if config.Width*config.Height > mostPixels {
		return Picture{}, fmt.Errorf("the picture has %d × %d dots: make it smaller first", config.Width, config.Height)
	}
	im, _, err := image.Decode(bytes.NewReader(data))
	if err != nil {
		return Picture{}, fmt.Errorf("the picture is damaged: %w", err)
	}
	return Look(im)
}

// Look looks at a picture that has been decoded.
func Look(im image.Image) (Picture, error) {
	c := newCanvas(im)
	c.clearGround()
	box := c.printed()
	if box.Empty() {
		return Picture{}, errors.New("the picture is empty: nothing of it would be printed")
	}
	p := Picture{Width: box.Dx(), Height: box.Dy(), Image: c.cut(box)}
	p.Inks, p.Photo = c.inks(box)
	return p, nil
}

// Dots is the least of horizontal and vertical dots per inch at a printed size in inches; 0 for a drawing, which has none.
func (p Picture) Dots(width, height float64) int {
	if p.Vector || width <= 0 || height <= 0 {
		return 0
	}
	return int(min(float64(p.Width)/width, float64(p.Height)/height) + 0.5)
}

// Sharp and Coarse are the dots per inch at which a print is as sharp as the press can make it, and under which it shows
// its dots: common practice, no source.
const (
	Sharp  = 300
	Coarse = 150
)

// At is the size in inches at so many dots per inch.
func (p Picture) At(dots int) (width, height float64) {
	return float64(p.Width) / float64(dots), float64(p.Height) / float64(dots)
}

// Aspect is height over width.
func (p Picture) Aspect() float64 { return float64(p.Height) / float64(p.Width) }
