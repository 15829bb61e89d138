package catalog

import (
	"cmp"
	"slices"
	"strings"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Sale is a decided quote as reports count it.
type Sale struct {
	Number   string `json:"-"`
	Customer string `json:"-"`
	Won      bool   `json:"-"` // accepted, or finished; else declined
	Decided  string `json:"-"` // 2006-01-02
	Subtotal money.Amount
	Cost     money.Amount // with the card fee that the shop bears
	Lines    []SaleLine
}

// SaleLine is one garment line of a sale.
type SaleLine struct {
	Methods  string // names of the cards that its artwork goes on, joined by +
	Category string // of the garment
	Pieces   int
	Goods    money.Amount
	Cost     money.Amount
}

// SaleOf reads a decided quote from the revision that was decided upon.
func SaleOf(o Outcome, job quote.Job, r quote.Result) Sale {
	s := Sale{
		Number: o.Number, Customer: o.Customer, Won: o.won(), Decided: o.Decided,
		Subtotal: r.Price.Subtotal, Cost: quote.Sum(r.Cost.Total, r.Price.AbsorbedFee),
	}
	for _, g := range r.Garments {
		if g.Pieces > 0 {
			s.Lines = append(s.Lines, SaleLine{
				Methods: methodsOn(job, r, g.ID), Category: categoryOf(job, g.ID), Pieces: g.Pieces, Goods: g.Goods, Cost: g.Cost,
			})
		}
	}
	return s
}

// methodsOn joins the names of the cards that a garment line's artwork goes on.
func methodsOn(job quote.Job, r quote.Result, garment string) string {
	var names []string
	for _, p := range job.Placements {
		if p.On != nil && !contains(p.On, garment) {
			continue
		}
		for _, m := range r.Methods {
			if m.Placement != p.ID {
				continue
			}
			if name := plainCard(job, m.Card); !contains(names, name) {
				names = append(names, name)
			}
		}
	}
	slices.Sort(names)
	return strings.Join(names, " + ")
}

// plainCard is the name of a card without what this job had added to it: rush, set-up on file.
func plainCard(job quote.Job, id string) string {
	for _, c := range job.RateCards {
		if c.ID == id {
			name, _, _ := strings.Cut(c.Name, ", rush ")
			return strings.TrimSuffix(name, ", set-up on file")
		}
	}
	return PaidCard(id)
}

func categoryOf(job quote.Job, garment string) string {
	for _, g := range job.Garments {
		if g.ID == garment {
			return g.Info.Category
		}
	}
	return ""
}

// MonthRow is what was won and lost in one month.
type MonthRow struct {
	Month     string // 2006-01
	Won, Lost int
	WonFor    money.Amount // subtotals
	LostFor   money.Amount
}

// ByMonth counts decided quotes by month, the earliest first; months between without any are there too.
func ByMonth(sales []Sale) []MonthRow {
	rows := map[string]*MonthRow{}
	first, last := "", ""
	for _, s := range sales {
		if len(s.Decided) < 7 {
			continue
		}
		m := s.Decided[:7]
		if rows[m] == nil {
			rows[m] = &MonthRow{Month: m}
		}
		if s.Won {
			rows[m].Won++
			rows[m].WonFor = quote.Sum(rows[m].WonFor, s.Subtotal)
		} else {
			rows[m].Lost++
			rows[m].LostFor = quote.Sum(rows[m].LostFor, s.Subtotal)
		}
		if first == "" || m < first {
			first = m
		}
		last = max(last, m)
	}
	var out []MonthRow
	for m := first; m != "" && m <= last; m = nextMonth(m) {
		if rows[m] == nil {
			rows[m] = &MonthRow{Month: m}
		}
		out = append(out, *rows[m])
	}
	return out
}

// MarginRow is what one method, category or customer brought.
type MarginRow struct {
	Name   string // empty: none was said
	Jobs   int
	Pieces int
	Sold   money.Amount
	Cost   money.Amount
	Margin string // percent, one place; empty where nothing was sold
}

// By names what reports are divided by.
const (
	ByMethod   = "method"
	ByCategory = "category"
	ByCustomer = "customer"
)

// Margins adds up what was won by method, category or customer, what was sold most first. By method and category the
// goods of each garment line count, with the line's share of the cost; by customer the whole quote.
func Margins(sales []Sale, by string) []MarginRow {
	var out []MarginRow
	place := map[string]int{}
	row := func(name string) *MarginRow {
		at, there := place[name]
		if !there {
			at = len(out)
			place[name], out = at, append(out, MarginRow{Name: name})
		}
		return &out[at]
	}
	for _, s := range sales {
		if !s.Won {
			continue
		}
		var seen []string
		for _, l := range s.divided(by) {
			r := row(l.name)
			if !contains(seen, l.name) {
				seen = append(seen, l.name)
				r.Jobs++
			}
			r.Pieces += l.pieces
			r.Sold, r.Cost = quote.Sum(r.Sold, l.sold), quote.Sum(r.Cost, l.cost)
		}
	}
	for i := range out {
		out[i].Margin = quote.MarginOf(out[i].Sold, out[i].Cost)
	}
	slices.SortStableFunc(out, func(a, b MarginRow) int { return cmp.Or(b.Sold.Cmp(a.Sold), cmp.Compare(a.Name, b.Name)) })
	return out
}

// part is one part of a sale that goes to one row.
type part struct {
	name       string
	pieces     int
	sold, cost money.Amount
}

func (s Sale) divided(by string) []part {
	if by == ByCustomer {
		pieces := 0
		for _, l := range s.Lines {
			pieces += l.Pieces
		}
		return []part{{s.Customer, pieces, s.Subtotal, s.Cost}}
	}
	parts := make([]part, len(s.Lines))
	for i, l := range s.Lines {
		parts[i] = part{l.Methods, l.Pieces, l.Goods, l.Cost}
		if by == ByCategory {
			parts[i].name = l.Category
		}
	}
	return parts
}
