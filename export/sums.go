package export

import (
	"fmt"

	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/money"
)

// sumsAndMore sets what larger quantities would cost beside the sums where there is room for it, else below.
func (d *doc) sumsAndMore(job quote.Job, result quote.Result) {
	rows, larger := totalRows(job, result), largerSteps(result)
	if len(larger) == 0 || len(larger) > 8 || len(result.Groups) > 2 {
		d.sums(result, rows)
		d.more(job, result, larger)
		return
	}
	d.need(60 + 18*float64(max(len(rows), len(larger)+2)))
	top, right, page := d.y, d.right, d.page
	d.sums(result, rows)
	low := d.y
	d.y, d.right = top-6, d.left+(d.right-d.left)*0.465
	d.more(job, result, larger)
	d.right = right
	if d.page == page {
		d.y = max(d.y, low)
	}
}

// largerSteps are the steps of the ladder above the quantity quoted.
func largerSteps(result quote.Result) (larger []quote.Step) {
	for _, s := range result.Ladder {
		if s.Pieces > result.Pieces && !s.Unserved {
			larger = append(larger, s)
		}
	}
	return larger
}

// sumRow is one row of what the order comes to.
type sumRow struct {
	name, amount string
	big, light   bool
}

// printedGarments is the row of the goods.
const printedGarments = "Garments, printed"

func totalRows(job quote.Job, result quote.Result) (rows []sumRow) {
	p, pr := result.Price, job.Pricing
	add := func(name string, a money.Amount, sign string) {
		if !zero(a) {
			rows = append(rows, sumRow{name: name, amount: sign + grouped(a)})
		}
	}
	add(printedGarments, p.Goods, "")
	add("Rush "+percent(pr.RushPercent), p.Rush, "")
	add("Discount", p.Discount, "−")
	add("To the minimum order", p.MinimumOrder, "")
	for _, x := range p.ExtraLines {
		add(x.Name, x.Amount, "")
	}
	add("Artwork", p.Art, "")
	add("Delivery", p.Delivery, "")
	if !zero(p.Tax) {
		add("Sales tax "+percent(pr.Tax.Percent), p.Tax, "")
	} else if pr.Tax.Exempt {
		rows = append(rows, sumRow{name: "Sales tax", amount: "exempt"})
	}
	add("Card fee", p.CardFee, "")
	rows = append(rows, sumRow{name: "Total", amount: grouped(p.Total), big: true})
	if !zero(p.Deposit) && !zero(p.Balance) {
		rows = append(rows, sumRow{name: "Deposit to start", amount: grouped(p.Deposit), light: true},
			sumRow{name: "Balance", amount: grouped(p.Balance), light: true})
	}
	return rows
}

// sums sets rows in the right half.
func (d *doc) sums(result quote.Result, rows []sumRow) {
	x := d.left + (d.right-d.left)*0.5
	d.need(18 * float64(min(len(rows), 8)))
	d.gap(6)
	for _, r := range rows {
		name, figure, h := body, body, 15.0
		switch {
		case r.big:
			name, figure, h = paper.Style{Size: 12, Weight: letters.Semibold, Color: ink}, grand, 25
		case r.light:
			name, figure = small, body
		}
		d.need(h)
		if r.big {
			paper.Rule(d, x, d.y+4, d.right, d.y+4, paper.Look{Stroke: ink, Width: 0.8})
		}
		amount := r.amount
		if r.big {
			amount = result.Currency + " " + amount
		}
		d.Text(x, d.y+h-4.5, letters.Clip(r.name, name.Weight, name.Size, (d.right-x)*0.58), name)
		paper.Right(d, d.right, d.y+h-4.5, amount, figure)
		d.gap(h)
	}
}

// more says what larger quantities would cost each.
func (d *doc) more(job quote.Job, result quote.Result, larger []quote.Step) {
	if len(larger) == 0 {
		return
	}
	d.heading("If you took more")
	groups := result.Groups[:min(len(result.Groups), 3)]
	specs := []columnSpec{{title: "pieces", width: 48}}
	for _, g := range groups {
		specs = append(specs, columnSpec{title: lower(groupName(job, result, g)), share: 1, right: true})
	}
	specs = append(specs, columnSpec{title: "order", width: 54, right: true})
	t := d.table(specs...)
	row := []string{fmt.Sprintf("%d quoted", result.Pieces)}
	for _, g := range groups {
		row = append(row, grouped(g.UnitPrice))
	}
	t.row(append(row, grouped(result.Price.Total)), plain(len(specs), colored(body, muted)))
	for _, s := range larger {
		row := []string{fmt.Sprint(s.Pieces)}
		for _, g := range groups {
			row = append(row, unitAt(s, g))
		}
		styles := plain(len(specs), body)
		for i := range groups {
			styles[i+1] = colored(strong, accent)
		}
		t.row(append(row, grouped(s.Total)), styles)
	}
	t.end()
}

func unitAt(s quote.Step, g quote.Group) string {
	for _, l := range g.Lines {
		if u, ok := s.Units[l]; ok {
			return grouped(u)
		}
	}
	return "–"
}

// groupName is what a price group is called: its first garment, with its colour where another group is called the same.
func groupName(job quote.Job, result quote.Result, g quote.Group) string {
	if len(g.Lines) == 0 {
		return g.ID
	}
	first := garmentOf(job, g.Lines[0])
	for _, other := range result.Groups {
		if other.ID != g.ID && len(other.Lines) > 0 && garmentOf(job, other.Lines[0]).Name == first.Name {
			return named(first)
		}
	}
	if first.Name == "" {
		return first.Style
	}
	return first.Name
}
