package export

import (
	"slices"
	"strings"
	"time"

	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
)

// footText stands at the foot of every page of a document.
func footText(job quote.Job, what string) string {
	p := paperOf(job)
	return strings.Join(nonEmpty(p.Shop.Name, strings.TrimSpace(what+" "+p.Number), job.Title), " · ")
}

// nonEmpty are the texts that say something; what was given is left as it is.
func nonEmpty(texts ...string) []string {
	return slices.DeleteFunc(slices.Clone(texts), func(s string) bool { return s == "" })
}

// LogoKey is under which Pictured holds the picture of the letterhead; no placement has such an id.
const LogoKey = "\x00logo"

const (
	logoHigh, logoWide = 46.0, 150.0 // room for a logo
	headWide           = 300.0       // room for logo and address together
)

// letterhead sets the shop at the left, its logo before it, the kind of document and its facts at the right.
func (d *doc) letterhead(job quote.Job, what string, facts ...[2]string) {
	shop := paperOf(job).Shop
	top := d.y
	x, foot := d.logo(top)
	room := headWide - (x - d.left)
	d.Text(x, top+14, letters.Clip(shop.Name, section.Weight, 13, room), paper.Style{Size: 13, Weight: letters.Semibold, Color: ink})
	y := top + 29
	for _, l := range nonEmpty(append(strings.Split(shop.Address, "\n"), shop.Phone, shop.Email, shop.Website)...) {
		d.Text(x, y, letters.Clip(l, small.Weight, small.Size, room), small)
		y += 11.5
	}
	paper.Right(d, d.right, top+17, what, title)
	fy := top + 36
	for _, f := range facts {
		if f[1] == "" {
			continue
		}
		paper.Right(d, d.right, fy, f[1], body)
		paper.Right(d, d.right-max(body.Width(f[1]), 84)-10, fy, f[0], small)
		fy += 13.5
	}
	d.y = max(y, fy, foot) + 2
	paper.Rule(d, d.left, d.y, d.right, d.y, paper.Look{Stroke: accent, Width: 1.2})
	d.gap(15)
}

// logo sets the shop's picture at the left, as large as it fits. Text begins at x; foot is where the picture ends.
func (d *doc) logo(top float64) (x, foot float64) {
	img := d.artworks[LogoKey]
	if img == nil || img.Bounds().Empty() {
		return d.left, top
	}
	w, h := float64(img.Bounds().Dx()), float64(img.Bounds().Dy())
	scale := min(logoWide/w, logoHigh/h)
	w, h = w*scale, h*scale
	d.Image(LogoKey, img, paper.Place{CX: d.left + w/2, CY: top + 2 + h/2, W: w, H: h})
	return d.left + w + 14, top + 2 + h + 8
}

// validity are the facts at the head of a quote.
func validity(job quote.Job, date time.Time) [][2]string {
	p := paperOf(job)
	facts := [][2]string{{"number", p.Number}, {"date", day(date.Format(time.DateOnly))}}
	if p.ValidDays > 0 {
		facts = append(facts, [2]string{"valid until", day(date.AddDate(0, 0, p.ValidDays).Format(time.DateOnly))})
	}
	return append(facts, [2]string{"needed by", day(p.NeededBy)})
}

// addressee says for whom and for what.
func (d *doc) addressee(job quote.Job) {
	c := paperOf(job).Customer
	if job.Title != "" {
		d.paragraph(d.left, d.right-d.left, job.Title, grand)
	}
	if line := strings.Join(nonEmpty(c.Name, c.Contact, c.Email, c.Phone), "  ·  "); line != "" {
		d.gap(1)
		d.paragraph(d.left, d.right-d.left, "for "+line, small)
	}
	for _, l := range nonEmpty(strings.Split(c.Address, "\n")...) {
		d.paragraph(d.left, d.right-d.left, l, small)
	}
	d.gap(12)
}
