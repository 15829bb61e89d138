package paper

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/png"
	"strconv"
	"strings"
	"time"
	"unicode/utf16"

	"github.com/jung-kurt/gofpdf"
	"golang.org/x/image/draw"

	"pressworth/assets/drawing"
	"pressworth/export/letters"
)

// PDF draws into a PDF file, with the fonts that it uses inside. The same marks with the same date give the same bytes.
// The library that writes it stays inside this file.
type PDF struct {
	pdf  *gofpdf.Fpdf
	used map[letters.Weight]bool
	err  error

	images map[string]bool // names of the pictures in the file
	widths map[int]bool    // of the pictures: no two alike, since the library orders them by it
}

// NewPDF begins a file with a title; date is what it says of its making.
func NewPDF(title, author string, date time.Time) *PDF {
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "pt", Size: gofpdf.SizeType{Wd: 612, Ht: 792}})
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(0, 0, 0)
	f.SetCellMargin(0)
	f.SetCatalogSort(true)
	f.SetCreationDate(date.UTC())
	f.SetModificationDate(date.UTC())
	f.SetTitle(title, true)
	f.SetAuthor(author, true)
	f.SetCreator("Pressworth", true)
	return &PDF{pdf: f, used: map[letters.Weight]bool{}, images: map[string]bool{}, widths: map[int]bool{}}
}

// Bytes ends the file.
func (p *PDF) Bytes() ([]byte, error) {
	var b bytes.Buffer
	err := errors.Join(p.err, p.pdf.Output(&b))
	return b.Bytes(), err
}

// Page begins a page.
func (p *PDF) Page(w, h float64) { p.pdf.AddPageFormat("P", gofpdf.SizeType{Wd: w, Ht: h}) }

// Text sets one line.
func (p *PDF) Text(x, y float64, text string, s Style) {
	for _, run := range letters.Set(text, s.Weight, s.Size).Runs {
		if run.Outline != nil {
			p.shaped(run, x+run.X, y, s)
			continue
		}
		p.font(s)
		r, g, b := rgb(s.Color)
		p.pdf.SetTextColor(r, g, b)
		p.pdf.Text(x+run.X, y, run.Text)
	}
}

// shaped fills the outlines of a run, bolder by a stroke where the style is, and says what it reads: the letters stand in a span with
// an ActualText (ISO 32000-1, 14.9.4), which holds one unseen blank as wide as the run, for programs that copy, search and read aloud.
func (p *PDF) shaped(run letters.Run, x, y float64, s Style) {
	look := Look{Fill: s.Color}
	if s.Weight != letters.Regular {
		look.Stroke, look.Width = s.Color, s.Size*boldness[s.Weight]
	}
	p.font(s)
	p.pdf.RawWriteStr(fmt.Sprintf("/Span <</ActualText <FEFF%s>>> BDC 3 Tr %.2f Tz ", utf16Hex(run.Text),
		100*run.Width/max(letters.Width(" ", s.Weight, s.Size), 0.01)))
	p.pdf.Text(x, y, " ")
	p.pdf.RawWriteStr("0 Tr 100 Tz")
	p.Path(outline(run.Outline, x, y), look)
	p.pdf.RawWriteStr("EMC")
}

// boldness is how much of their size letters of the fallback fonts, which have one weight, are stroked by.
var boldness = map[letters.Weight]float64{letters.Medium: 0.018, letters.Semibold: 0.036}

func utf16Hex(s string) string {
	var b strings.Builder
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String()
}

func (p *PDF) font(s Style) {
	family := "plex-" + s.Weight.String()
	if !p.used[s.Weight] {
		p.used[s.Weight] = true
		p.pdf.AddUTF8FontFromBytes(family, "", bytes.Clone(s.Weight.Data())) // the library writes into what it is given
	}
	p.pdf.SetFont(family, "", s.Size)
}

func outline(segments []letters.Segment, x, y float64) (p drawing.Path) {
	for _, s := range segments {
		at := func(i int) (float64, float64) { return x + s.P[i].X, y + s.P[i].Y }
		switch s.Op {
		case 'M':
			p.MoveTo(at(0))
		case 'L':
			p.LineTo(at(0))
		case 'C':
			ax, ay := at(0)
			bx, by := at(1)
			cx, cy := at(2)
			p.CurveTo(ax, ay, bx, by, cx, cy)
		case 'Z':
			p.Close()
		}
	}
	return p
}

// Path fills and strokes a path.
func (p *PDF) Path(path drawing.Path, l Look) {
	style := ""
	if l.Fill != "" {
		style = "F"
		p.pdf.SetFillColor(rgb(l.Fill))
	}
	if l.Stroke != "" && l.Width > 0 {
		style += "D"
		p.pdf.SetDrawColor(rgb(l.Stroke))
		p.pdf.SetLineWidth(l.Width)
		p.pdf.SetDashPattern(l.Dash, 0)
		p.pdf.SetLineCapStyle("round")
		p.pdf.SetLineJoinStyle("round")
	}
	if style == "" || len(path) == 0 {
		return
	}
	if l.Alpha > 0 && l.Alpha < 1 {
		p.pdf.SetAlpha(l.Alpha, "Normal")
		defer p.pdf.SetAlpha(1, "Normal")
	}
	for _, s := range path {
		switch s.Op {
		case 'M':
			p.pdf.MoveTo(s.P[0].X, s.P[0].Y)
		case 'L':
			p.pdf.LineTo(s.P[0].X, s.P[0].Y)
		case 'C':
			p.pdf.CurveBezierCubicTo(s.P[0].X, s.P[0].Y, s.P[1].X, s.P[1].Y, s.P[2].X, s.P[2].Y)
		case 'Z':
			p.pdf.ClosePath()
		}
	}
	p.pdf.DrawPath(style)
}

// Image lays a picture into a place.
func (p *PDF) Image(name string, img image.Image, at Place) {
	if img.Bounds().Empty() || at.W <= 0 || at.H <= 0 {
		return
	}
	if !p.images[name] {
		p.images[name] = true
		p.err = errors.Join(p.err, p.register(name, img))
	}
	at = at.fitted(img)
	p.pdf.TransformBegin()
	p.pdf.TransformRotate(-at.Angle, at.CX, at.CY)
	p.pdf.ImageOptions(name, at.CX-at.W/2, at.CY-at.H/2, at.W, at.H, false, gofpdf.ImageOptions{ImageType: "PNG"}, 0, "")
	p.pdf.TransformEnd()
}

// mostPixels is the width of a picture on paper: 300 dots to the inch at 3 inches.
const mostPixels = 900

// register puts a picture into the file, made smaller where it is larger than paper shows.
func (p *PDF) register(name string, img image.Image) error {
	b := img.Bounds()
	w := min(b.Dx(), mostPixels)
	for p.widths[w] {
		w++
	}
	p.widths[w] = true
	small := image.NewNRGBA(image.Rect(0, 0, w, max(1, b.Dy()*w/b.Dx())))
	draw.CatmullRom.Scale(small, small.Bounds(), img, b, draw.Src, nil)
	var data bytes.Buffer
	if err := png.Encode(&data, small); err != nil {
		return err
	}
	p.pdf.RegisterImageOptionsReader(name, gofpdf.ImageOptions{ImageType: "PNG"}, &data)
	return nil
}

func rgb(hex string) (r, g, b int) {
	if len(hex) != 7 {
		return 0, 0, 0
	}
	n, _ := strconv.ParseUint(hex[1:], 16, 32)
	return int(n >> 16), int(n >> 8 & 255), int(n & 255)
}
