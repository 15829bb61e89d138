package blanks

import (
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
)

// readSizes reads a price table; what is wrong is said at a path.
func readSizes(r *form.Reader, rows [][]string, path string) []catalog.StyleSize {
	if len(rows) == 0 {
		return nil
	}
	head := cells(rows[0])
	var out []catalog.StyleSize
	for i, row := range rows[1:] {
		cell := cells(row)
		z := catalog.StyleSize{Size: cell(0)}
		for c := 1; c < len(row); c++ {
			if cell(c) == "" {
				continue
			}
			from := piecesAt(r, path, head(c), fmt.Sprintf("column %d, %s", c, fromWord))
			z.Each = append(z.Each, quote.Break{From: from, Each: priceAt(r, path, cell(c), "size "+cell(0))})
		}
		if z.Size == "" && len(z.Each) == 0 {
			continue
		}
		if z.Size == "" {
			r.Say(path, fmt.Sprintf("row %d has a price and no size", i+1))
		}
		out = append(out, z)
	}
	return out
}

// readByColor reads the tables of colours that have prices of their own. Sizes without a price are those of every colour.
func (t styleText) readByColor(r *form.Reader, colors []catalog.Color) (by map[string][]catalog.StyleSize) {
	for color, rows := range t.prices {
		if color == "" || !slices.ContainsFunc(colors, func(c catalog.Color) bool { return c.Name == color }) {
			continue
		}
		own := slices.DeleteFunc(readSizes(r, rows, "sizes"), func(z catalog.StyleSize) bool { return len(z.Each) == 0 })
		if len(own) == 0 {
			continue
		}
		if by == nil {
			by = map[string][]catalog.StyleSize{}
		}
		by[color] = own
	}
	return by
}

// readPrintable reads the largest artwork by size.
func (t styleText) readPrintable(r *form.Reader) (out []catalog.Printable) {
	for i, row := range t.print {
		cell := cells(row)
		if cell(0)+cell(1)+cell(2) == "" {
			continue
		}
		one := form.Reader{Get: func(path string) string { return cell(map[string]int{"size": 0, "width": 1, "height": 2}[path]) }}
		out = append(out, catalog.Printable{Size: one.Need("size", "a size"), Width: one.Length("width"), Height: one.Length("height")})
		for _, p := range one.Problems {
			r.Say(fmt.Sprintf("printable[%d]", i), p.Problem)
		}
	}
	return out
}

// readOwn reads net and sale prices. A row without a size stands for every size of the list.
func (t styleText) readOwn(r *form.Reader, s catalog.Style) (out []catalog.Price) {
	for i, row := range t.own {
		cell := cells(row)
		if strings.Join(row, "") == "" {
			continue
		}
		p := catalog.Price{Kind: strings.ToLower(cell(0)), Color: cell(1), Size: cell(2), From: cell(4), Until: cell(5)}
		each, err := breaksAt(cell(3))
		if err != nil {
			r.Say(fmt.Sprintf("own[%d]", i), "enter a price like 4.10, or 4.10 72:3.80 for less from 72 on")
		}
		p.Each = each
		if p.Size != "" {
			out = append(out, p)
			continue
		}
		for _, z := range s.Sizes {
			p.Size = z.Size
			out = append(out, p)
		}
	}
	return out
}

// breaksAt reads prices in a line, like 4.10 72:3.80 or 49.20/12.
func breaksAt(text string) ([]quote.Break, error) {
	var out []quote.Break
	for _, word := range strings.Fields(text) {
		from, each, found := strings.Cut(word, ":")
		if !found {
			from, each = "1", word
		}
		n, err := strconv.Atoi(from)
		if err != nil {
			return nil, err
		}
		a, err := eachOf(each)
		if err != nil {
			return nil, err
		}
		out = append(out, quote.Break{From: n, Each: a})
	}
	return out, nil
}

// dozen is how many pieces one is.
const dozen = 12

// piecesAt reads the head of a column: a number of pieces, "dozen", or "case 72".
func piecesAt(r *form.Reader, path, text, where string) int {
	words := strings.Fields(strings.ToLower(text))
	switch {
	case len(words) == 1 && words[0] == "piece":
		return 1
	case len(words) == 1 && (words[0] == "dozen" || words[0] == "dz"):
		return dozen
	case len(words) > 1 && words[0] == "case":
		text = words[len(words)-1]
	}
	one := form.Reader{Get: func(string) string { return text }}
	n := one.Count("")
	if len(one.Problems) > 0 || n < 1 {
		r.Say(path, where+": enter a whole number from 1, dozen, or a case like case 72")
	}
	return n
}

func priceAt(r *form.Reader, path, text, where string) money.Amount {
	a, err := eachOf(text)
	if err != nil {
		r.Say(path, where+": enter an amount each like 4.35, or of many like 49.20/12 or 49.20/dozen")
	}
	return a
}

// eachOf reads a price each; of 49.20/12 it is a twelfth, to eight places.
func eachOf(text string) (money.Amount, error) {
	whole, of, many := strings.Cut(text, "/")
	one := form.Reader{Get: func(string) string { return whole }}
	a := one.Amount("")
	if len(one.Problems) > 0 {
		return a, fmt.Errorf("%s", one.Problems[0].Problem)
	}
	if !many {
		return a, nil
	}
	of = strings.ToLower(strings.TrimSpace(of))
	if of == "dozen" || of == "dz" {
		of = strconv.Itoa(dozen)
	}
	n, err := strconv.Atoi(of)
	if err != nil || n < 1 {
		return a, fmt.Errorf("%q is no number of pieces", of)
	}
	share := new(big.Rat).Quo(a.Rat(), new(big.Rat).SetInt64(int64(n)))
	return money.ParseAmount(trimmed(share.FloatString(8)))
}

// trimmed drops zeros behind the second place.
func trimmed(text string) string {
	whole, places, _ := strings.Cut(text, ".")
	for len(places) > 2 && places[len(places)-1] == '0' {
		places = places[:len(places)-1]
	}
	return whole + "." + places
}
