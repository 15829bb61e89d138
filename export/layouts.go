package export

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"math"
	"time"

	"pressworth/assets/drawing"
	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

// layout is one run to be sent to a printer, at true size in inches.
type layout struct {
	name string
	job  quote.Job
	card quote.RateCard
	run  quote.Run
	w, h float64
	note string // what it says of its size
}

func layouts(job quote.Job, r quote.Result) (ls []layout) {
	for _, p := range r.Plans {
		for _, run := range p.Runs {
			ls = append(ls, layout{
				name: fmt.Sprintf("%s-%d", p.Card, len(ls)+1), job: job, card: cardOf(job, p.Card), run: run, note: "true size",
				w: inchesOf(job, run.Width), h: inchesOf(job, run.Height),
			})
		}
	}
	return ls
}

const (
	border = 0.75 // inches around the sheet, for dimensions and words
	inch   = 72.0
)

// longest page that a PDF reader must be able to show (ISO 32000-1, annex C.2): 14 400 points, 200 inches.
const longestPage = 14400.0

// Layouts are the sheets and lengths of a job as a PDF at true size, one to a page. A length beyond 198 inches is made smaller and says so.
func Layouts(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	pdf := paper.NewPDF("Sheet layouts "+paperOf(job).Number, shopName(job), date)
	for _, l := range layouts(job, result) {
		w, h := (l.w+2*border)*inch, (l.h+2*border)*inch
		k := min(1, longestPage/max(w, h))
		pdf.Page(w*k, h*k)
		if k < 1 {
			l.note = fmt.Sprintf("at %.1f %% of its size", k*100)
			l.draw(paper.Scaled{Sheet: pdf, By: k})
			continue
		}
		l.draw(pdf)
	}
	return pdf.Bytes()
}

// draw draws the layout at true size, its sheet's corner at border.
func (l layout) draw(s paper.Sheet) {
	at := func(x float64) float64 { return (x + border) * inch }
	paper.Box(s, at(0), at(0), l.w*inch, l.h*inch, paper.Look{Stroke: "#666b70", Width: 0.7})
	if e := inchesOf(l.job, l.edge()); e > 0 {
		paper.Box(s, at(e), at(e), (l.w-2*e)*inch, (l.h-2*e)*inch, paper.Look{Stroke: "#bfb9ad", Width: 0.5, Dash: []float64{3, 3}})
	}
	for _, p := range l.run.Pieces {
		l.piece(s, p, at)
	}
	l.words(s, at)
}

func (l layout) edge() string {
	if l.run.Length != "" {
		return l.card.Edge.String()
	}
	for _, z := range l.card.Sizes {
		if z.Name == l.run.Size {
			return z.Edge.String()
		}
	}
	return "0"
}

// piece draws one transfer with cut marks at its corners and its label.
func (l layout) piece(s paper.Sheet, p quote.PlacedPiece, at func(float64) float64) {
	x, y := at(inchesOf(l.job, p.X)), at(inchesOf(l.job, p.Y))
	w, h := inchesOf(l.job, p.W)*inch, inchesOf(l.job, p.H)*inch
	paper.Box(s, x, y, w, h, paper.Look{Fill: "#fdf6e3", Stroke: "#c98f10", Width: 0.5})
	for _, c := range [4][2]float64{{x, y}, {x + w, y}, {x, y + h}, {x + w, y + h}} {
		mark := math.Min(6, math.Min(w, h)/4)
		paper.Rule(s, c[0]-mark, c[1], c[0]+mark, c[1], paper.Look{Stroke: ink, Width: 0.5})
		paper.Rule(s, c[0], c[1]-mark, c[0], c[1]+mark, paper.Look{Stroke: ink, Width: 0.5})
	}
	size := math.Max(4, math.Min(11, math.Min(h/3, w/9)))
	st := paper.Style{Size: size, Weight: letters.Medium, Color: ink}
	for i, t := range nonEmpty(placementLabel(l.job, p), inchLabel(l.job, p), paperOf(l.job).Customer.Name) {
		if ty := y + size*1.4*float64(i+1) + 2; ty < y+h-1 {
			s.Text(x+4, ty, letters.Clip(t, st.Weight, size, w-8), st)
			st.Weight, st.Color = letters.Regular, muted
		}
	}
}

func placementLabel(job quote.Job, p quote.PlacedPiece) string {
	name := placementOf(job, p.Placement).Name
	if p.Text != "" {
		name = p.Text + " · " + lower(name)
	}
	if p.Turned {
		name += ", turned"
	}
	return name
}

func inchLabel(job quote.Job, p quote.PlacedPiece) string {
	w, h := p.W, p.H
	if p.Turned {
		w, h = h, w
	}
	return fmt.Sprintf("%s × %s%s", w, h, unitWord(job))
}

// words say what the sheet is, and its dimensions.
func (l layout) words(s paper.Sheet, at func(float64) float64) {
	dim := paper.Style{Size: 9, Weight: letters.Regular, Color: muted}
	line := paper.Look{Stroke: muted, Width: 0.5}
	y := at(l.h) + 12
	paper.Rule(s, at(0), y, at(l.w), y, line)
	text := l.run.Width + unitWord(l.job)
	s.Text(at(l.w/2)-dim.Width(text)/2, y+12, text, dim)
	x := at(l.w) + 12
	paper.Rule(s, x, at(0), x, at(l.h), line)
	s.Text(x+4, at(l.h/2), l.run.Height, dim)
	head := paper.Style{Size: 11, Weight: letters.Semibold, Color: ink}
	job := paperOf(l.job)
	text = fmt.Sprintf("%s   ·   print %d   ·   %s", runWords(l.job, l.run), l.run.Sheets, l.card.Name)
	s.Text(at(0), at(0)-26, letters.Clip(text, head.Weight, head.Size, l.w*inch), head)
	foot := joined(job.Shop.Name, job.Number, l.job.Title, l.note)
	if job.Demo {
		foot = "DEMO · " + foot
	}
	s.Text(at(0), at(0)-12, letters.Clip(foot, dim.Weight, dim.Size, l.w*inch), dim)
}

func joined(texts ...string) (out string) {
	for _, t := range nonEmpty(texts...) {
		if out != "" {
			out += " · "
		}
		out += t
	}
	return out
}

// svg is the layout as an SVG file at true size.
func (l layout) svg() []byte {
	var b bytes.Buffer
	w, h := l.w+2*border, l.h+2*border
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%gin" height="%gin" viewBox="0 0 %g %g">`+"\n", w, h, w*inch, h*inch)
	l.draw(&svgSheet{&b})
	b.WriteString("</svg>\n")
	return b.Bytes()
}

// svgSheet writes marks as SVG elements; text stays text.
type svgSheet struct{ b *bytes.Buffer }

// Page is nothing: a file is one page.
func (s *svgSheet) Page(float64, float64) {}

// Image is nothing: a layout shows no pictures.
func (s *svgSheet) Image(string, image.Image, paper.Place) {}

// Text writes a text element.
func (s *svgSheet) Text(x, y float64, text string, st paper.Style) {
	weight := [...]int{400, 500, 600}[st.Weight]
	fmt.Fprintf(s.b, `<text x="%.2f" y="%.2f" font-family="IBM Plex Sans, sans-serif" font-size="%.2f" font-weight="%d" fill="%s">`, x, y, st.Size, weight, st.Color)
	_ = xml.EscapeText(s.b, []byte(letters.Clean(text))) // a buffer takes everything
	s.b.WriteString("</text>\n")
}

// Path writes a path element.
func (s *svgSheet) Path(p drawing.Path, l paper.Look) {
	fill := l.Fill
	if fill == "" {
		fill = "none"
	}
	fmt.Fprintf(s.b, `<path d="%s" fill="%s"`, drawing.PathData(p), fill)
	if l.Stroke != "" {
		fmt.Fprintf(s.b, ` stroke="%s" stroke-width="%g"`, l.Stroke, l.Width)
	}
	if len(l.Dash) == 2 {
		fmt.Fprintf(s.b, ` stroke-dasharray="%g %g"`, l.Dash[0], l.Dash[1])
	}
	s.b.WriteString("/>\n")
}
