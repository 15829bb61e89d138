package export

import (
	"fmt"
	"strings"
	"time"

	"pressworth/export/letters"
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
	d.costLines(job, result)
	d.byGarment(job, result)
	d.methods(job, result)
	d.plans(job, result)
	d.steps(job, result)
	d.priceLines(result)
	d.warnings(result)
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
	figures := [][2]string{{"subtotal", grouped(r.Price.Subtotal)}, {"cost", grouped(r.Cost.Total)}, {"margin", margin},
		{"left per hour", left}, {"hours", r.Hours}, {"pieces", fmt.Sprint(r.Pieces)}}
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

func (d *doc) costLines(job quote.Job, r quote.Result) {
	t := d.table(columnSpec{title: "cost", width: 82}, columnSpec{title: "for", share: 4}, columnSpec{title: "basis", share: 5},
		columnSpec{title: "priced on", width: 50}, columnSpec{title: "amount in " + job.Currency, width: 72, right: true})
	for _, l := range r.Cost.Lines {
		if zero(l.Amount) {
			continue
		}
		top := t.row([]string{"    " + kindName(l.Kind), refName(job, l), l.Basis, pricedOn(job, l.Entries), grouped(l.Amount)},
			[]paper.Style{body, body, colored(body, muted), small, body})
		paper.Box(d, d.left, top+3.5, 6, 6, paper.Look{Fill: kindColor(l.Kind)})
	}
	t.row([]string{"Together", "", "", "", grouped(r.Cost.Total)}, plain(5, strong))
	t.end()
}

// refName is what a cost line belongs to.
func refName(job quote.Job, l quote.CostLine) string {
	switch l.Kind {
	case quote.KindBlanks, quote.KindSpoilage:
		return named(garmentOf(job, l.Ref))
	case quote.KindTransfers:
		return placementOf(job, l.Ref).Name
	case quote.KindFreight:
		return supplierName(job, l.Ref)
	case quote.KindExtra:
		for _, x := range job.Extras {
			if x.ID == l.Ref {
				return x.Name
			}
		}
	}
	return ""
}

// pricedOn is the oldest date among the price entries that a line came from.
func pricedOn(job quote.Job, entries []string) (oldest string) {
	dates := entryDates(job)
	for _, e := range entries {
		if at := dates[e]; at != "" && (oldest == "" || at < oldest) {
			oldest = at
		}
	}
	return oldest
}

func entryDates(job quote.Job) map[string]string {
	dates := map[string]string{}
	keep := func(bs []quote.Break) {
		for _, b := range bs {
			dates[b.Info.EntryID] = b.Info.PricedOn
		}
	}
	for _, g := range job.Garments {
		for _, s := range g.Sizes {
			keep(s.Each)
		}
	}
	for _, c := range job.RateCards {
		keep(c.Rates)
		keep(c.FullColorEach)
		for _, row := range c.Prices {
			keep(row.Each)
		}
		for _, s := range c.Sizes {
			for _, row := range s.Prices {
				keep(row.Each)
			}
		}
		for _, l := range c.Lengths {
			dates[l.Info.EntryID] = l.Info.PricedOn
		}
	}
	delete(dates, "")
	return dates
}

func (d *doc) byGarment(job quote.Job, r quote.Result) {
	d.heading("By garment")
	t := d.table(columnSpec{title: "garment", share: 4}, columnSpec{title: "its share of the costs", share: 6},
		columnSpec{title: "pieces", width: 30, right: true}, columnSpec{title: "cost", width: 50, right: true},
		columnSpec{title: "cost each", width: 42, right: true}, columnSpec{title: "price each", width: 44, right: true})
	for _, l := range r.Garments {
		if l.Pieces == 0 {
			continue
		}
		t.row([]string{named(garmentOf(job, l.ID)), splitWords(job, l), fmt.Sprint(l.Pieces), grouped(l.Cost), grouped(l.CostEach), grouped(l.UnitPrice)},
			[]paper.Style{body, small, body, body, body, strong})
	}
	t.end()
	for _, g := range r.Groups {
		d.gap(2)
		d.paragraph(d.left, d.right-d.left, fmt.Sprintf("%s: %s each = %s", groupName(job, r, g), grouped(g.UnitPrice), g.Basis), small)
	}
}

func splitWords(job quote.Job, l quote.GarmentLine) string {
	var parts []string
	for _, c := range l.Split {
		name := lower(kindName(c.Kind))
		if of := refName(job, c); c.Kind == quote.KindTransfers || c.Kind == quote.KindExtra {
			name = lower(of)
		}
		parts = append(parts, name+" "+grouped(c.Amount))
	}
	return strings.Join(parts, " · ")
}

func (d *doc) methods(job quote.Job, r quote.Result) {
	if len(r.Methods) == 0 {
		return
	}
	d.heading("Methods")
	t := d.table(columnSpec{title: "placement", share: 3}, columnSpec{title: "size and inks", share: 5}, columnSpec{title: "rate card", share: 3},
		columnSpec{title: "next best", share: 4}, columnSpec{title: "transfers", width: 40, right: true}, columnSpec{title: "amount", width: 48, right: true})
	for _, m := range r.Methods {
		p := placementOf(job, m.Placement)
		next := "none"
		if m.Difference != nil {
			next = fmt.Sprintf("%s, job costs %s more", cardOf(job, m.RunnerUp).Name, grouped(m.Difference))
		}
		t.row([]string{p.Name, inches(job, p.Width, p.Height) + ", " + inkWords(p), cardOf(job, m.Card).Name, next, fmt.Sprint(m.Needed), grouped(m.Transfers)},
			plain(6, body))
	}
	t.end()
}

// plans draws each run to scale beside its figures.
func (d *doc) plans(job quote.Job, r quote.Result) {
	if len(r.Plans) == 0 {
		return
	}
	d.heading("Sheets and lengths")
	for _, p := range r.Plans {
		for _, run := range p.Runs {
			d.need(110)
			h := d.thumbnail(job, run, 90, 120)
			x, y := d.left+140, d.y+10
			d.Text(x, y, runWords(job, run), strong)
			for i, t := range []string{
				cardOf(job, p.Card).Name + " · " + supplierName(job, cardOf(job, p.Card).Supplier),
				fmt.Sprintf("%d × %s%s", run.Sheets, run.Each, setupWords(run)),
				run.UsedPercent + " % used · " + boundWords(p),
				leftoverWords(job, r, run),
			} {
				d.Text(x, y+13*float64(i+1), letters.Clip(t, small.Weight, small.Size, d.right-x), small)
			}
			d.gap(max(h, 64) + 12)
		}
	}
}

func runWords(job quote.Job, run quote.Run) string {
	if run.Length != "" {
		return fmt.Sprintf("%s of %s × %s", plural(run.Sheets, "length", "lengths"), run.Width, run.Height) + unitWord(job)
	}
	return fmt.Sprintf("%s of %s × %s", plural(run.Sheets, "sheet", "sheets"), run.Width, run.Height) + unitWord(job) + ", " + plural(run.Inks, "ink", "inks")
}

func unitWord(job quote.Job) string {
	if job.Unit == "mm" {
		return " mm"
	}
	return " in"
}

func setupWords(run quote.Run) string {
	if zero(run.Setup) {
		return ""
	}
	return " + setup " + run.Setup.String()
}

// boundWords says how far a plan is from the best that can be.
func boundWords(p quote.Plan) string {
	if p.Cost.Cmp(p.Bound) <= 0 {
		return "best possible"
	}
	cost, bound := number(p.Cost), number(p.Bound)
	return fmt.Sprintf("within %.1f %% of the best possible", (cost-bound)/max(bound, 0.01)*100)
}

func leftoverWords(job quote.Job, r quote.Result, run quote.Run) string {
	var parts []string
	for _, l := range r.Leftovers {
		for _, p := range run.Pieces {
			if p.Placement == l.Placement && p.Variant == l.Variant {
				parts = append(parts, fmt.Sprintf("%d × %s left for the shelf", l.Copies, lower(placementOf(job, l.Placement).Name)))
				break
			}
		}
	}
	return strings.Join(parts, ", ")
}

// thumbnail draws a run into a box of w × h at the left and returns its height.
func (d *doc) thumbnail(job quote.Job, run quote.Run, h, w float64) float64 {
	sw, sh := inchesOf(job, run.Width), inchesOf(job, run.Height)
	scale := min(w/sw, h/sh)
	x, y := d.left, d.y+2
	paper.Box(d, x, y, sw*scale, sh*scale, paper.Look{Fill: white, Stroke: "#bfb9ad", Width: 0.6})
	for i, p := range run.Pieces {
		px, py := x+inchesOf(job, p.X)*scale, y+inchesOf(job, p.Y)*scale
		pw, ph := inchesOf(job, p.W)*scale, inchesOf(job, p.H)*scale
		paper.Box(d, px, py, pw, ph, paper.Look{Fill: "#f5dfae", Stroke: "#c98f10", Width: 0.4})
		if i < 60 && pw > 26 && ph > 8 {
			name := letters.Clip(lower(placementOf(job, p.Placement).Name), caption.Weight, 6, pw-3)
			d.Text(px+2, py+ph/2+2, name, paper.Style{Size: 6, Weight: letters.Regular, Color: ink})
		}
	}
	return sh * scale
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
		{"Goods", "goods", p.Goods}, {"Rush", "rush", p.Rush}, {"Discount, taken off", "discount", p.Discount},
		{"To the minimum order", "minimum_order", p.MinimumOrder}, {"Extras", "extras", p.Extras}, {"Art", "art", p.Art},
		{"Delivery", "delivery", p.Delivery}, {"Subtotal", "subtotal", p.Subtotal}, {"Tax", "tax", p.Tax},
		{"Card fee", "card_fee", p.CardFee}, {"Card fee, absorbed", "absorbed_fee", p.AbsorbedFee}, {"Total", "total", p.Total},
		{"Deposit", "deposit", p.Deposit}, {"Balance", "balance", p.Balance},
	} {
		if !zero(row.a) {
			t.row([]string{row.name, p.Basis[row.key], grouped(row.a)}, []paper.Style{body, colored(body, muted), body})
		}
	}
	t.end()
}

func (d *doc) warnings(r quote.Result) {
	if len(r.Warnings) == 0 {
		return
	}
	d.heading("To be looked at")
	for _, w := range r.Warnings {
		d.paragraph(d.left, d.right-d.left, w.Text, colored(body, warn))
	}
}
