package artwork

import (
	"bytes"
	"encoding/xml"
	"errors"
	"image"
	"io"

	"github.com/fyne-io/oksvg"
	"github.com/srwiley/rasterx"
)

// vectorSide is how many pixels the longer side of a drawn picture is painted with.
const vectorSide = 1600

// isSVG tells a drawing of lines and areas from a picture of dots.
func isSVG(data []byte) bool {
	head := bytes.ToLower(data[:min(len(data), 1024)])
	return bytes.Contains(head, []byte("<svg"))
}

// readSVG paints a drawing and looks at that. It is as sharp at every size.
func readSVG(data []byte) (p Picture, err error) {
	defer func() { // the reader of drawings stops at some broken ones
		if recover() != nil {
			err = errors.New("the drawing is damaged: save it as PNG")
		}
	}()
	if usesInDefinitions(data) {
		return Picture{}, errors.New("the drawing is made of parts within parts: save it as PNG")
	}
	icon, err := oksvg.ReadIconStream(bytes.NewReader(data), oksvg.IgnoreErrorMode)
	if err != nil || icon.ViewBox.W <= 0 || icon.ViewBox.H <= 0 {
		return Picture{}, errors.New("the drawing cannot be read: save it as PNG")
	}
	scale := vectorSide / max(icon.ViewBox.W, icon.ViewBox.H)
	for i := range icon.SVGPaths {
		dropFineDashes(&icon.SVGPaths[i].PathStyle, scale)
	}
	w, h := max(int(icon.ViewBox.W*scale), 1), max(int(icon.ViewBox.H*scale), 1)
	im := image.NewRGBA(image.Rect(0, 0, w, h))
	icon.SetTarget(0, 0, float64(w), float64(h))
	icon.Draw(rasterx.NewDasher(w, h, rasterx.NewScannerGV(w, h, im, im.Bounds())), 1)
	p, err = Look(im)
	p.Vector = true
	return p, err
}

// usesInDefinitions tells whether a part of the drawing that can be used again uses another. Such parts can use
// themselves, and the reader of drawings follows them until the stack is full, which ends the program.
func usesInDefinitions(data []byte) bool {
	in, depth := xml.NewDecoder(bytes.NewReader(data)), 0
	in.CharsetReader = func(_ string, r io.Reader) (io.Reader, error) { return r, nil } // only names are read, which are ASCII
	for {
		token, err := in.Token()
		if err != nil {
			return false
		}
		switch t := token.(type) {
		case xml.StartElement:
			if t.Name.Local == "defs" || depth > 0 {
				depth++
			}
			if depth > 0 && t.Name.Local == "use" {
				return true
			}
		case xml.EndElement:
			if depth > 0 {
				depth--
			}
		}
	}
}

// dropFineDashes makes lines whole whose dashes are finer than a dot of the picture: they look the same, and drawing
// millions of them takes minutes.
func dropFineDashes(p *oksvg.PathStyle, scale float64) {
	sum := 0.0
	for _, d := range p.Dash {
		sum += max(d, 0)
	}
	if len(p.Dash) > 0 && !(sum*scale >= 0.5*float64(len(p.Dash))) {
		p.Dash = nil
	}
}
