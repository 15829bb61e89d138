package blanks

import (
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/measure"
	"pressworth/quote/money"
	"pressworth/ui/form"
)

// styleText is a style as it is typed.
type styleText struct {
	was    catalog.Style // what it was made from: id, and what has no field
	wasOwn []catalog.Price
	texts  map[string]string
	colors [][]string            // name, colour, shade, retired, sizes it comes in
	prices map[string][][]string // by colour, "" for every one: the first row says from how many pieces; then size and prices
	own    [][]string            // kind, colour, size, prices, from, until
	print  [][]string            // size, width, height of the largest artwork
}

const fromWord = "pieces from"

func textOf(s catalog.Style, own []catalog.Price) styleText {
	t := styleText{was: s, wasOwn: own, texts: map[string]string{
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
		t.colors = append(t.colors, []string{c.Name, c.Hex, c.Shade, yes(c.Retired), strings.Join(c.Sizes, " ")})
	}
	t.prices = map[string][][]string{"": priceText(s.Sizes)}
	for color, sizes := range s.ByColor {
		t.prices[color] = priceText(sizes)
	}
	for _, p := range own {
		t.own = append(t.own, []string{p.Kind, p.Color, p.Size, catalog.WriteBreaks(p.Each), p.From, p.Until})
	}
	for _, x := range s.Printable {
		t.print = append(t.print, []string{x.Size, x.Width.String(), x.Height.String()})
	}
	return t
}

// priceText writes sizes down and breaks across.
func priceText(sizes []catalog.StyleSize) [][]string {
	breaks := allBreaks(sizes)
	if len(breaks) == 0 {
		breaks = []int{1}
	}
	head := []string{fromWord}
	for _, from := range breaks {
		head = append(head, strconv.Itoa(from))
	}
	rows := [][]string{head}
	for _, z := range sizes {
		row := []string{z.Size}
		for _, from := range breaks {
			row = append(row, eachAt(z.Each, from))
		}
		rows = append(rows, row)
	}
	return rows
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

// style reads the texts back, with the shop's own prices and sales, and says by path what is wrong; today is the day from
// which new prices hold.
func (t styleText) style(today string) (catalog.Style, []catalog.Price, []quote.Problem) {
	r := form.Reader{Get: func(path string) string { return t.texts[path] }}
	s := t.was
	s.Number, s.Name, s.Mill, s.Category = r.Text("number"), r.Text("name"), r.Text("mill"), r.Text("category")
	s.Fabric, s.HeatLimit, s.Caution, s.Tags = r.Text("fabric"), r.Text("heat_limit"), r.Text("caution"), r.Words("tags")
	s.SupplierID, _ = strconv.ParseInt(t.texts["supplier"], 10, 64)
	s.Weight, s.Usual, s.NotClothing = weightAt(&r), t.texts["usual"] != "", t.texts["not_clothing"] != ""
	s.Handling = nil
	if r.Text("handling") != "" {
		n := r.Number("handling")
		s.Handling = &n
	}
	s.Colors = t.readColors()
	s.Sizes = readSizes(&r, t.prices[""], "sizes")
	s.ByColor = t.readByColor(&r, s.Colors)
	s.Printable = t.readPrintable(&r)
	own := t.readOwn(&r, s)
	if len(r.Problems) == 0 {
		r.Problems = catalog.CheckStyle(s)
	}
	if len(r.Problems) == 0 {
		r.Problems = catalog.CheckOwn(s, own, t.wasOwn, today)
	}
	return s, own, r.Problems
}

// weightAt reads grams per square metre, or ounces per square yard where oz stands behind the number.
func weightAt(r *form.Reader) money.Number {
	text := strings.ToLower(r.Text("weight"))
	ounces, isOunces := strings.CutSuffix(strings.TrimSuffix(text, "/yd²"), "oz")
	if !isOunces {
		return r.Number("weight")
	}
	one := form.Reader{Get: func(string) string { return ounces }}
	n := one.Number("")
	for range one.Problems {
		r.Say("weight", "enter grams like 180, or ounces like 5.3 oz")
	}
	return measure.GramsPerSquareMetre(n, 1)
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
		c.Sizes = nil
		if cell(4) != "" {
			c.Sizes = strings.Fields(strings.ReplaceAll(cell(4), ",", " "))
		}
		out = append(out, c)
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
