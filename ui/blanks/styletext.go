package blanks

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
)

// styleText is a style as it is typed.
type styleText struct {
	was    catalog.Style // what it was made from: id, and what has no field
	texts  map[string]string
	colors [][]string // name, colour, shade, retired
	prices [][]string // the first row says from how many pieces; then size and prices
}

const fromWord = "pieces from"

func textOf(s catalog.Style) styleText {
	t := styleText{was: s, texts: map[string]string{
		"number": s.Number, "name": s.Name, "supplier": strconv.FormatInt(s.SupplierID, 10), "mill": s.Mill, "category": s.Category,
		"fabric": s.Fabric, "tags": strings.Join(s.Tags, ", "), "heat_limit": s.HeatLimit, "caution": s.Caution,
		"weight": "", "handling": "", "usual": yes(s.Usual), "not_clothing": yes(s.NotClothing),
	}}
	if s.Weight.Sign() > 0 {
		t.texts["weight"] = s.Weight.String()
	}
	if s.Handling != nil {
		t.texts["handling"] = s.Handling.String()
	}
	for _, c := range s.Colors {
		t.colors = append(t.colors, []string{c.Name, c.Hex, c.Shade, yes(c.Retired)})
	}
	breaks := allBreaks(s.Sizes)
	if len(breaks) == 0 {
		breaks = []int{1}
	}
	head := []string{fromWord}
	for _, from := range breaks {
		head = append(head, strconv.Itoa(from))
	}
	t.prices = [][]string{head}
	for _, z := range s.Sizes {
		row := []string{z.Size}
		for _, from := range breaks {
			row = append(row, eachAt(z.Each, from))
		}
		t.prices = append(t.prices, row)
	}
	return t
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

// style reads the texts back and says by path what is wrong.
func (t styleText) style() (catalog.Style, []quote.Problem) {
	r := form.Reader{Get: func(path string) string { return t.texts[path] }}
	s := t.was
	s.Number, s.Name, s.Mill, s.Category = r.Text("number"), r.Text("name"), r.Text("mill"), r.Text("category")
	s.Fabric, s.HeatLimit, s.Caution, s.Tags = r.Text("fabric"), r.Text("heat_limit"), r.Text("caution"), r.Words("tags")
	s.SupplierID, _ = strconv.ParseInt(t.texts["supplier"], 10, 64)
	s.Weight, s.Usual, s.NotClothing = r.Number("weight"), t.texts["usual"] != "", t.texts["not_clothing"] != ""
	s.Handling = nil
	if r.Text("handling") != "" {
		n := r.Number("handling")
		s.Handling = &n
	}
	s.Colors = t.readColors()
	s.Sizes = t.readSizes(&r)
	if len(r.Problems) == 0 {
		r.Problems = catalog.CheckStyle(s)
	}
	return s, r.Problems
}

// readColors keeps of a colour that stays what has no cell.
func (t styleText) readColors() []catalog.Color {
	var out []catalog.Color
	for _, row := range t.colors {
		cell := cells(row)
		if cell(0)+cell(1)+cell(2) == "" {
			continue
		}
		c := catalog.Color{}
		if i := slices.IndexFunc(t.was.Colors, func(x catalog.Color) bool { return x.Name == cell(0) }); i >= 0 {
			c = t.was.Colors[i]
		}
		c.Name, c.Hex, c.Shade, c.Retired = cell(0), cell(1), cell(2), cell(3) != ""
		out = append(out, c)
	}
	return out
}

func (t styleText) readSizes(r *form.Reader) []catalog.StyleSize {
	if len(t.prices) == 0 {
		return nil
	}
	head := cells(t.prices[0])
	var out []catalog.StyleSize
	for i, row := range t.prices[1:] {
		cell := cells(row)
		z := catalog.StyleSize{Size: cell(0)}
		for c := 1; c < len(row); c++ {
			if cell(c) == "" {
				continue
			}
			z.Each = append(z.Each, quote.Break{From: wholeAt(r, head(c), fmt.Sprintf("column %d, %s", c, fromWord)), Each: priceAt(r, cell(c), fmt.Sprintf("size %s", cell(0)))})
		}
		if z.Size == "" && len(z.Each) == 0 {
			continue
		}
		if z.Size == "" {
			r.Say("sizes", fmt.Sprintf("row %d has a price and no size", i+1))
		}
		out = append(out, z)
	}
	return out
}

// cells reads a row's cells, empty ones beyond its end.
func cells(row []string) func(i int) string {
	return func(i int) string {
		if i < len(row) {
			return strings.TrimSpace(row[i])
		}
		return ""
	}
}

func wholeAt(r *form.Reader, text, where string) int {
	one := form.Reader{Get: func(string) string { return text }}
	n := one.Count("")
	if len(one.Problems) > 0 || n < 1 {
		r.Say("sizes", where+": enter a whole number from 1")
	}
	return n
}

func priceAt(r *form.Reader, text, where string) money.Amount {
	one := form.Reader{Get: func(string) string { return text }}
	a := one.Amount("")
	if len(one.Problems) > 0 {
		r.Say("sizes", where+": "+one.Problems[0].Problem)
	}
	return a
}
