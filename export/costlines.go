package export

import (
	"fmt"
	"strings"
	"time"

	"pressworth/export/paper"
	"pressworth/quote"
)

func (d *doc) costLines(job quote.Job, r quote.Result, date time.Time) {
	t := d.table(columnSpec{title: "cost", width: 82}, columnSpec{title: "for", share: 4}, columnSpec{title: "basis", share: 5},
		columnSpec{title: "priced on", width: 50}, columnSpec{title: "amount in " + job.Currency, width: 72, right: true})
	var old []string
	for _, l := range r.Cost.Lines {
		if zero(l.Amount) {
			continue
		}
		priced, style := pricedOn(job, l.Entries), small
		if days := staleFor(job, priced, date); days > 0 {
			style = colored(small, warn)
			old = append(old, fmt.Sprintf("%s of %s: %d days old", kindName(l.Kind), refName(job, l), days))
		}
		top := t.row([]string{"    " + kindName(l.Kind), refName(job, l), l.Basis, priced, grouped(l.Amount)},
			[]paper.Style{body, body, colored(body, muted), style, body})
		paper.Box(d, d.left, top+3.5, 6, 6, paper.Look{Fill: kindColor(l.Kind)})
	}
	t.row([]string{"Together", "", "", "", grouped(r.Cost.Total)}, plain(5, strong))
	t.end()
	if len(old) > 0 {
		d.paragraph(d.left, d.right-d.left, fmt.Sprintf("Prices older than %d days: %s.", paperOf(job).StaleDays, strings.Join(old, "; ")), colored(small, warn))
	}
}

// staleFor is how many days old prices of a day are on another, where that is more than the shop allows.
func staleFor(job quote.Job, priced string, date time.Time) int {
	limit := paperOf(job).StaleDays
	since, err := time.Parse(time.DateOnly, priced)
	if err != nil || limit <= 0 {
		return 0
	}
	on := time.Date(date.Year(), date.Month(), date.Day(), 0, 0, 0, 0, time.UTC)
	if days := int(on.Sub(since).Hours() / 24); days > limit {
		return days
	}
	return 0
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
