package artwork

import (
	"bytes"
	"errors"
	"image"

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
	icon, err := oksvg.ReadIconStream(bytes.NewReader(data), oksvg.IgnoreErrorMode)
	if err != nil || icon.ViewBox.W <= 0 || icon.ViewBox.H <= 0 {
		return Picture{}, errors.New("the drawing cannot be read: save it as PNG")
	}
	scale := vectorSide / max(icon.ViewBox.W, icon.ViewBox.H)
	w, h := max(int(icon.ViewBox.W*scale), 1), max(int(icon.ViewBox.H*scale), 1)
	im := image.NewRGBA(image.Rect(0, 0, w, h))
	icon.SetTarget(0, 0, float64(w), float64(h))
	icon.Draw(rasterx.NewDasher(w, h, rasterx.NewScannerGV(w, h, im, im.Bounds())), 1)
	p, err = Look(im)
	p.Vector = true
	return p, err
}
