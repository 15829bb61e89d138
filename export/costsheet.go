package export

import (
	"fmt"
	"strings"
	"time"

	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/money"
)

// CostSheet is the shop's own sheet as a PDF: every cost with its basis, how it splits, methods, plans, margin.
func CostSheet(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return render(job, "Cost sheet "+paperOf(job).Number, footText(job, "Cost sheet"), date, func(d *doc) { layCostSheet(d, job, result, date) })
}

func layCostSheet(d *doc, job quote.Job, result quote.Result, date time.Time) {
	d.letterhead(job, "Cost sheet", [][2]string{{"number", paperOf(job).Number}, {"date", day(date.Format(time.DateOnly))}, {"", "internal: not for the customer"}}...)
	d.addressee(job)
	d.keyFigures(result)
	d.costStack(result)
	d.costLines(job, result, date)
	d.byGarment(job, result)
	d.methods(job, result)
	d.plans(job, result)
	d.steps(job, result)
	d.priceLines(result)
	d.warnings(job, result)
}

// kindColor is the colour of a kind of cost, the same as in the window.
func kindColor(kind string) string {
	switch kind {
	case quote.KindBlanks:
		return "#0072B2"
	case quote.KindTransfers:
		return "#E69F00"
	case quote.KindLabour:
		return "#009E73"
	case quote.KindOverhead:
		return "#56B4E9"
	case quote.KindFreight:
		return "#CC79A7"
	case quote.KindArt:
		return "#D55E00"
	}
	return "#8A8A8A"
}

// kindName is a kind of cost in words.
func kindName(kind string) string {
	switch kind {
	case quote.KindLabour:
		return "Pressing time"
	case quote.KindPressWear:
		return "Press wear"
	case quote.KindExtra:
		return "Extra"
	}
	return strings.ToUpper(kind[:1]) + kind[1:]
}

// keyFigures are what the owner looks at first.
func (d *doc) keyFigures(r quote.Result) {
	margin, left := "–", "–"
	if r.MarginPercent != nil {
		margin = *r.MarginPercent + " %"
	}
	if r.LeftPerHour != nil {
		left = grouped(r.LeftPerHour)
	}
	figures := [][2]string{
		{"subtotal", grouped(r.Price.Subtotal)},
		{"cost", grouped(r.Cost.Total)},
		{"margin", margin},
		{"left per hour", left},
		{"hours", r.Hours},
		{"pieces", fmt.Sprint(r.Pieces)},
	}
	w := (d.right - d.left) / float64(len(figures))
	for i, f := range figures {
		x := d.left + w*float64(i)
		d.Text(x, d.y+8, f[0], caption)
		d.Text(x, d.y+25, f[1], grand)
	}
	d.gap(40)
}

// costStack draws the costs as one bar, in the order of the lines.
func (d *doc) costStack(r quote.Result) {
	total := number(r.Cost.Total)
	if total <= 0 {
		return
	}
	x := d.left
	for _, g := range r.Cost.Gather() {
		w := (d.right - d.left) * number(g.Amount) / total
		paper.Box(d, x, d.y, max(w-0.8, 0.3), 9, paper.Look{Fill: kindColor(g.Kind)})
		x += w
	}
	d.gap(16)
}

// number reads an amount for drawing; drawings need no exact numbers.
func number(a money.Amount) float64 {
	x, _ := a.Rat().Float64()
	return x
}

func (d *doc) steps(job quote.Job, r quote.Result) {
	if len(r.Ladder) == 0 {
		return
	}
	d.heading("Ladder")
	t := d.table(columnSpec{title: "pieces", width: 48, right: true}, columnSpec{title: "methods", share: 5},
		columnSpec{title: "each on average", width: 66, right: true}, columnSpec{title: "cost", width: 66, right: true}, columnSpec{title: "total", width: 66, right: true})
	for _, s := range r.Ladder {
		if s.Unserved {
			t.row([]string{fmt.Sprint(s.Pieces), "no rate card or blank price serves this quantity", "", "", ""}, plain(5, small))
			continue
		}
		var parts []string
		for _, p := range job.Placements {
			if c := s.Methods[p.ID]; c != "" {
				parts = append(parts, lower(p.Name)+": "+lower(cardOf(job, c).Name))
			}
		}
		t.row([]string{fmt.Sprint(s.Pieces), strings.Join(parts, ", "), grouped(s.Each), grouped(s.Cost), grouped(s.Total)},
			[]paper.Style{body, small, body, body, body})
	}
	t.end()
	for _, c := range r.Cliffs {
		d.paragraph(d.left, d.right-d.left, fmt.Sprintf("%d pieces cost the customer %s less than %d: offer them instead.", c.To, grouped(c.Saves), c.From), small)
	}
}

// priceLines are the totals with the formulas behind them.
func (d *doc) priceLines(r quote.Result) {
	p := r.Price
	d.heading("Price")
	t := d.table(columnSpec{title: "amount of", width: 110}, columnSpec{title: "basis", share: 1}, columnSpec{title: "", width: 80, right: true})
	for _, row := range []struct {
		name, key string
		a         money.Amount
	}{
		{"Goods", "goods", p.Goods},
		{"Rush", "rush", p.Rush},
		{"Discount, taken off", "discount", p.Discount},
		{"To the minimum order", "minimum_order", p.MinimumOrder},
		{"Extras", "extras", p.Extras},
		{"Art", "art", p.Art},
		{"Delivery", "delivery", p.Delivery},
		{"Subtotal", "subtotal", p.Subtotal},
		{"Tax", "tax", p.Tax},
		{"Card fee", "card_fee", p.CardFee},
		{"Card fee, absorbed", "absorbed_fee", p.AbsorbedFee},
		{"Total", "total", p.Total},
		{"Deposit", "deposit", p.Deposit},
		{"Balance", "balance", p.Balance},
	} {
		if !zero(row.a) {
			t.row([]string{row.name, p.Basis[row.key], grouped(row.a)}, []paper.Style{body, colored(body, muted), body})
		}
	}
	t.end()
}

func (d *doc) warnings(job quote.Job, r quote.Result) {
	texts := tooLarge(job, r)
	for _, w := range r.Warnings {
		texts = append(texts, w.Text)
	}
	if len(texts) == 0 {
		return
	}
	d.heading("To be looked at")
	for _, t := range texts {
		d.paragraph(d.left, d.right-d.left, t, colored(body, warn))
	}
}
