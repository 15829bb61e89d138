package export

import (
	"fmt"
	"slices"
	"strings"
	"time"

	"pressworth/export/letters"
	"pressworth/export/paper"
	"pressworth/quote"
	"pressworth/quote/money"
)

// Quote is the customer's quote as a PDF. It shows prices and nothing of what stands behind them.
func Quote(job quote.Job, result quote.Result, date time.Time) ([]byte, error) {
	return Pictured(nil).Quote(job, result, date)
}

// footText stands at the foot of every page of a document.
func footText(job quote.Job, what string) string {
	p := paperOf(job)
	return strings.Join(nonEmpty(p.Shop.Name, strings.TrimSpace(what+" "+p.Number), job.Title), " · ")
}

func nonEmpty(texts ...string) []string {
	return slices.DeleteFunc(texts, func(s string) bool { return s == "" })
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

// letterhead sets the shop at the left, the kind of document and its facts at the right.
func (d *doc) letterhead(job quote.Job, what string, facts ...[2]string) {
	shop := paperOf(job).Shop
	top := d.y
	d.Text(d.left, top+14, letters.Clip(shop.Name, section.Weight, 13, 300), paper.Style{Size: 13, Weight: letters.Semibold, Color: ink})
	y := top + 29
	for _, l := range nonEmpty(append(strings.Split(shop.Address, "\n"), shop.Phone, shop.Email, shop.Website)...) {
		d.Text(d.left, y, letters.Clip(l, small.Weight, small.Size, 300), small)
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
	d.y = max(y, fy) + 2
	paper.Rule(d, d.left, d.y, d.right, d.y, paper.Look{Stroke: accent, Width: 1.2})
	d.gap(15)
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

// sumRow is one row of what the order comes to.
type sumRow struct {
	name, amount string
	big, light   bool
}

func totalRows(job quote.Job, result quote.Result) (rows []sumRow) {
	p, pr := result.Price, job.Pricing
	add := func(name string, a money.Amount, sign string) {
		if !zero(a) {
			rows = append(rows, sumRow{name: name, amount: sign + grouped(a)})
		}
	}
	add("Garments, printed", p.Goods, "")
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

// small are notes, terms and cautions.
func (d *doc) small(job quote.Job) {
	p := paperOf(job)
	w := d.right - d.left
	if p.Notes != "" {
		d.heading("Notes")
		d.paragraph(d.left, w, p.Notes, body)
	}
	d.heading("Good to know")
	for _, t := range nonEmpty(append([]string{p.Terms}, customerCautions(job)...)...) {
		d.gap(2)
		d.paragraph(d.left, w, t, small)
	}
}

// customerCautions are what the customer should know before saying yes.
func customerCautions(job quote.Job) []string {
	out := []string{
		"Sizes of garments and the place of a print vary a little from piece to piece; colours on paper and screen are a guide, not a match.",
		"Wash inside out, cool, and do not iron on the print; the garment's care label and the transfer maker's advice come first.",
		"By ordering you confirm that you own the artwork or have its owner's permission to print it.",
	}
	if slices.ContainsFunc(job.Garments, isForChildren) {
		out = append(out, "Garments for children carry legal duties of their own (flammability, lead, phthalates, tracking labels): tell us if they are to be sold on.")
	}
	if slices.ContainsFunc(job.Garments, func(g quote.Garment) bool { return g.FromCustomer }) {
		out = append(out, "Garments that you bring are pressed with care but at your risk: heat can mark or shrink them, and a spoiled piece cannot be replaced by us.")
	}
	return out
}

func isForChildren(g quote.Garment) bool {
	text := strings.ToLower(g.Info.Category + " " + g.Name)
	return strings.Contains(text, "youth") || strings.Contains(text, "toddler") || strings.Contains(text, "child") || strings.Contains(text, "infant")
}
