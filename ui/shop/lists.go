package shop

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/quote/sizes"
	"pressworth/ui/form"
)

// Lists are typed in one field as pairs: "12 45, 24 42" is 45 from 12 pieces and 42 from 24.

func pairs(text string) [][2]string {
	var out [][2]string
	for _, part := range strings.Split(text, ",") {
		if words := strings.Fields(part); len(words) > 0 {
			out = append(out, [2]string{words[0], strings.Join(words[1:], " ")})
		}
	}
	return out
}

func writePercents(p *quote.Pricing) string {
	var out []string
	for _, b := range p.Percents {
		out = append(out, fmt.Sprintf("%d %s", b.From, b.Percent))
	}
	return strings.Join(out, ", ")
}

func readPercents(r *form.Reader, path string, p *quote.Pricing) {
	p.Percents = nil
	for _, pair := range pairs(r.Text(path)) {
		from, err := strconv.Atoi(pair[0])
		percent, err2 := money.ParseNumber(pair[1])
		if err != nil || err2 != nil {
			r.Say(path, "enter pieces and percent, like 12 45, 24 42")
			return
		}
		p.Percents = append(p.Percents, quote.PercentBreak{From: from, Percent: percent})
	}
}

func writeUpcharges(p *quote.Pricing) string {
	names := slices.Collect(maps.Keys(p.Upcharges))
	sizes.Sort(names)
	var out []string
	for _, size := range names {
		out = append(out, size+" "+p.Upcharges[size].String())
	}
	return strings.Join(out, ", ")
}

func readUpcharges(r *form.Reader, path string, p *quote.Pricing) {
	p.Upcharges = nil
	for _, pair := range pairs(r.Text(path)) {
		a, err := money.ParseAmount(pair[1])
		if err != nil {
			r.Say(path, "enter size and amount, like 2XL 2.00, 3XL 3.50")
			return
		}
		if p.Upcharges == nil {
			p.Upcharges = map[string]money.Amount{}
		}
		p.Upcharges[pair[0]] = a
	}
}

// table is a list of the shop's as rows of text.
type table struct {
	path  string
	heads []string
	words []int // columns that hold words
	write func(s *record) [][]string
	read  func(r *form.Reader, rows [][]string, s *record)

	caption string // empty where the section's title says it
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

// rowReader reads one row of a table by the number of its column.
func rowReader(row []string) *form.Reader {
	get := func(column string) string {
		c, _ := strconv.Atoi(column)
		if c < len(row) {
			return row[c]
		}
		return ""
	}
	return &form.Reader{Get: get}
}

func said(r *form.Reader, path string, at int, one *form.Reader) {
	for _, p := range one.Problems {
		r.Say(path, fmt.Sprintf("row %d: %s", at+1, p.Problem))
	}
}

var equipment = table{
	"shop.equipment",
	[]string{"machine", "cost", "worth at the end", "months", "or hits"},
	[]int{0},
	func(s *record) (rows [][]string) {
		for _, m := range s.Rates.Equipment {
			rows = append(rows, []string{
				m.Name, m.Cost.String(), m.Salvage.String(),
				nonzero(m.LifeMonths, strconv.Itoa(m.LifeMonths)), nonzero(m.LifeHits, strconv.Itoa(m.LifeHits)),
			})
		}
		return rows
	},
	func(r *form.Reader, rows [][]string, s *record) {
		s.Rates.Equipment = nil
		for i, row := range rows {
			one := rowReader(row)
			s.Rates.Equipment = append(s.Rates.Equipment, quote.Machine{
				Name: one.Need("0", "the machine a name"), Cost: one.Amount("1"),
				Salvage: one.Amount("2"), LifeMonths: one.Count("3"), LifeHits: one.Count("4"),
			})
			said(r, "shop.equipment", i, one)
		}
	}, "",
}

var extras = table{
	"extras",
	[]string{"extra", "cost", "seconds", "charge", "per order", "taxed", "on every job"},
	[]int{0, 4, 5, 6},
	func(s *record) (rows [][]string) {
		for _, x := range s.Extras {
			e := x.Extra
			rows = append(rows, []string{e.Name, e.Cost.String(), e.Seconds.String(), e.Charge.String(), yes(e.PerOrder), yes(e.Taxable), yes(x.Usual)})
		}
		return rows
	},
	func(r *form.Reader, rows [][]string, s *record) {
		before := s.Extras
		s.Extras = nil
		for i, row := range rows {
			one := rowReader(row)
			x := catalog.Extra{Key: "extra-" + strconv.Itoa(i+1), Usual: one.Text("6") != ""}
			if i < len(before) {
				x.Key, x.Extra = before[i].Key, before[i].Extra
			}
			x.Extra.ID, x.Extra.Name, x.Extra.Cost = x.Key, one.Need("0", "the extra a name"), one.Amount("1")
			x.Extra.Seconds, x.Extra.Charge = one.Number("2"), one.Amount("3")
			x.Extra.PerOrder, x.Extra.Taxable = one.Text("4") != "", one.Text("5") != ""
			s.Extras = append(s.Extras, x)
			said(r, "extras", i, one)
		}
	}, "",
}

var presets = table{
	"presets",
	[]string{"placement", "width, in", "height, in", "side", "where"},
	[]int{0, 3, 4},
	func(s *record) (rows [][]string) {
		for _, p := range s.Presets {
			rows = append(rows, []string{p.Name, p.Width.String(), p.Height.String(), p.Side, p.Position})
		}
		return rows
	},
	func(r *form.Reader, rows [][]string, s *record) {
		s.Presets = nil
		for i, row := range rows {
			one := rowReader(row)
			s.Presets = append(s.Presets, catalog.Preset{
				Name: one.Need("0", "the placement a name"), Width: one.Length("1"),
				Height: one.Length("2"), Side: one.Text("3"), Position: one.Text("4"),
			})
			said(r, "presets", i, one)
		}
	}, "",
}

func sorted[V any](m map[string]V) []string { return slices.Sorted(maps.Keys(m)) }
