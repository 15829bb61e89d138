package catalog

import (
	"strconv"
	"strings"
)

// Myriad is an exact price in ten-thousandths of a major unit: 43500 is 4.35. Price lists are compared in it.
type Myriad int64

// String writes the price with two places, or as many as it needs up to four.
func (m Myriad) String() string {
	if m < 0 {
		return "-" + (-m).String()
	}
	whole, rest := int64(m)/10000, int64(m)%10000
	digits := strconv.FormatInt(10000+rest, 10)[1:]
	for len(digits) > 2 && digits[len(digits)-1] == '0' {
		digits = digits[:len(digits)-1]
	}
	return strconv.FormatInt(whole, 10) + "." + digits
}

// PriceRow is what one row of a price file says about one size: prices are each, 0 where none is given.
type PriceRow struct {
	Line      int // in the file, the first is 1
	Style     string
	Name      string
	Mill      string
	Category  string
	Fabric    string
	Weight    string // grams per square metre
	HeatLimit string
	Color     string
	Hex       string
	Shade     string
	Size      string
	Piece     Myriad
	Dozen     Myriad // from 12
	Case      Myriad // from CaseQty
	CaseQty   int
	Sale      Myriad
	SaleUntil string // 2006-01-02
}

// Breaks writes the row's prices as ReadBreaks reads them. A break that saves nothing is left out.
func (r PriceRow) Breaks() string {
	var b strings.Builder
	b.WriteString(r.Piece.String())
	last := r.Piece
	for _, x := range []struct {
		from int
		each Myriad
	}{{12, r.Dozen}, {r.CaseQty, r.Case}} {
		if x.each > 0 && x.each < last {
			b.WriteByte(' ')
			b.WriteString(strconv.Itoa(x.from))
			b.WriteByte(':')
			b.WriteString(x.each.String())
			last = x.each
		}
	}
	return b.String()
}

// Refused is a row of a price file that is not taken, and why.
type Refused struct {
	Line   int
	Field  string // style, size, price, ...
	Reason string
}
