package export

import (
	"fmt"
	"time"

	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

// Colours of paper, and of the kinds of cost (Okabe & Ito 2008).
const (
	ink    = "#1f2428"
	muted  = "#666b70"
	rule   = "#e4dfd5"
	accent = "#0b6e69"
	tint   = "#f6f4ef"
	warn   = "#a3510a"
	warnOn = "#fbf0e2"
	white  = "#ffffff"
)

// Styles of text.
var (
	caption = paper.Style{Size: 7.5, Weight: letters.Regular, Color: muted}
	small   = paper.Style{Size: 8.5, Weight: letters.Regular, Color: muted}
	body    = paper.Style{Size: 9.5, Weight: letters.Regular, Color: ink}
	strong  = paper.Style{Size: 9.5, Weight: letters.Semibold, Color: ink}
	section = paper.Style{Size: 11, Weight: letters.Semibold, Color: ink}
	title   = paper.Style{Size: 20, Weight: letters.Semibold, Color: ink}
	grand   = paper.Style{Size: 15, Weight: letters.Semibold, Color: ink}
)

func colored(s paper.Style, color string) paper.Style {
	s.Color = color
	return s
}

// doc lays a document out on pages, from the top down.
type doc struct {
	paper.Sheet
	w, h        float64
	left, right float64 // where text begins and ends
	y           float64 // where the next mark's top is
	page, pages int
	foot        string // at the left of every page's foot
	demo        bool
	artworks    Pictured
	repeat      func() // heads a table again on a new page; nil: nothing
}

const (
	margin = 52
	bottom = 56 // kept free for the foot
)

// size is the paper of a country: letter where dollars of North America are paid, else A4.
func size(currency string) (w, h float64) {
	switch currency {
	case "USD", "CAD", "MXN":
		return 612, 792
	}
	return 595.28, 841.89
}

func newDoc(s paper.Sheet, job quote.Job, foot string, pages int) *doc {
	d := &doc{Sheet: s, foot: foot, pages: pages, demo: demo(job)}
	d.w, d.h = size(job.Currency)
	d.left, d.right = margin, d.w-margin
	d.newPage()
	return d
}

func demo(job quote.Job) bool { return job.Paper != nil && job.Paper.Demo }

func (d *doc) newPage() {
	d.page++
	d.Page(d.w, d.h)
	d.y = margin
	d.footer()
}

func (d *doc) footer() {
	y := d.h - 34
	d.Text(d.left, y, letters.Clip(d.foot, caption.Weight, caption.Size, (d.right-d.left)*0.7), caption)
	paper.Right(d, d.right, y, fmt.Sprintf("page %d of %d", d.page, d.pages), caption)
	if d.demo {
		d.mark()
	}
}

// mark says on every page of the demo shop that nothing of it is real.
func (d *doc) mark() {
	text := "DEMO – an invented shop, nothing of this is an offer"
	s := paper.Style{Size: 7.5, Weight: letters.Semibold, Color: warn}
	w := s.Width(text) + 16
	paper.Box(d, d.w/2-w/2, 22, w, 15, paper.Look{Fill: warnOn})
	d.Text(d.w/2-w/2+8, 32, text, s)
}

// need makes room for h points, on a new page where this one has not got them.
func (d *doc) need(h float64) {
	if d.y+h <= d.h-bottom {
		return
	}
	d.newPage()
	if d.repeat != nil {
		d.repeat()
	}
}

func (d *doc) gap(h float64) { d.y += h }

// line sets one line at the left and moves down.
func (d *doc) line(text string, s paper.Style) {
	d.need(s.Size * 1.4)
	d.y += s.Size * 1.4
	d.Text(d.left, d.y-s.Size*0.35, text, s)
}

// paragraph sets text over as many lines as it takes, in a column from x.
func (d *doc) paragraph(x, width float64, text string, s paper.Style) {
	for _, l := range letters.Wrap(text, s.Weight, s.Size, width) {
		d.need(s.Size * 1.45)
		d.y += s.Size * 1.45
		d.Text(x, d.y-s.Size*0.4, l, s)
	}
}

// heading sets a section's heading, with room for some lines under it.
func (d *doc) heading(text string) {
	d.need(60)
	d.gap(13)
	d.line(text, section)
	d.gap(3)
}

// rule draws a hairline over the width.
func (d *doc) hairline() {
	paper.Rule(d, d.left, d.y, d.right, d.y, paper.Look{Stroke: rule, Width: 0.6})
}

// render makes a document that shows no pictures.
func render(job quote.Job, name, foot string, date time.Time, lay func(*doc)) ([]byte, error) {
	return Pictured(nil).render(job, name, foot, date, lay)
}

// render lays a document out twice: once to count its pages, once for good.
func (a Pictured) render(job quote.Job, name, foot string, date time.Time, lay func(*doc)) ([]byte, error) {
	pdf := paper.NewPDF(name, shopName(job), date)
	draw(pdf, job, foot, func(d *doc) { d.artworks = a; lay(d) })
	return pdf.Bytes()
}

// draw lays a document out on a sheet.
func draw(s paper.Sheet, job quote.Job, foot string, lay func(*doc)) {
	count := newDoc(&paper.Record{}, job, foot, 0)
	lay(count)
	lay(newDoc(s, job, foot, count.page))
}

func shopName(job quote.Job) string {
	if job.Paper == nil {
		return ""
	}
	return job.Paper.Shop.Name
}
