package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/money"
)

// Quote is the customer's quote as a PDF. It shows prices and nothing of what stands behind them.
func Quote(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return Pictured(nil).Quote(job, result, date)
}

func layQuote(d *doc, job quote.Job, result quote.Result, date time.Time) {
	d.letterhead(job, "Quote", validity(job, date)...)
	d.addressee(job)
	if vs := d.views(job, result, true); len(vs) > 0 {
		d.pictures(vs, 124)
		d.artwork(job, result)
	}
	d.prices(job, result)
	d.sumsAndMore(job, result)
	d.small(job)
}

// artwork says in words what is printed where.
func (d *doc) artwork(job quote.Job, result quote.Result) {
	var parts []string
	for _, m := range result.Methods {
		p := placementOf(job, m.Placement)
		text := fmt.Sprintf("%s %s, %s", p.Name, inches(job, p.Width, p.Height), inkWords(p))
		for _, v := range p.Variants {
			text += fmt.Sprintf(" (%s on %s)", inches(job, v.Width, v.Height), strings.Join(v.Sizes, ", "))
		}
		parts = append(parts, text)
	}
	d.paragraph(d.left, d.right-d.left, "Drawn to scale. "+strings.Join(parts, "; ")+".", small)
}

// prices lists the garments by price each.
func (d *doc) prices(job quote.Job, result quote.Result) {
	d.gap(8)
	t := d.table(columnSpec{title: "garment", share: 3}, columnSpec{title: "sizes", share: 4},
		columnSpec{title: "pieces", width: 42, right: true}, columnSpec{title: "each", width: 58, right: true},
		columnSpec{title: "amount in " + job.Currency, width: 88, right: true})
	for _, l := range result.Garments {
		name := named(garmentOf(job, l.ID))
		for _, p := range byPrice(l) {
			t.row([]string{name, p.sizes, fmt.Sprint(p.pieces), grouped(p.each), grouped(p.amount())},
				[]paper.Style{strong, body, body, body, body})
			name = ""
		}
	}
	t.end()
}

// priced are sizes of a garment line at one price each.
type priced struct {
	each   money.Amount
	sizes  string
	pieces int
}

// amount is what they come to; it is a sum of equal prices, so that nothing is rounded.
func (p priced) amount() money.Amount {
	as := make([]money.Amount, p.pieces)
	for i := range as {
		as[i] = p.each
	}
	return quote.Sum(as...)
}

func byPrice(l quote.GarmentLine) (ps []priced) {
	for _, s := range l.Sizes {
		if s.Qty == 0 {
			continue
		}
		k := slices.IndexFunc(ps, func(p priced) bool { return p.each.Cmp(s.UnitPrice) == 0 })
		if k < 0 {
			k = len(ps)
			ps = append(ps, priced{each: s.UnitPrice})
		}
		ps[k].sizes = strings.TrimPrefix(fmt.Sprintf("%s · %s %d", ps[k].sizes, sizeWord(s.Size), s.Qty), " · ")
		ps[k].pieces += s.Qty
	}
	return ps
}

// sizeWord is a size as a customer says it.
func sizeWord(size string) string {
	if size == "OS" {
		return "one size"
	}
	return size
}
