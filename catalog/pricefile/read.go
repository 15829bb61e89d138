package pricefile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"pressworth/catalog"
	"pressworth/quote/measure"
	"pressworth/quote/money"
	"pressworth/quote/sizes"
)

// defaultCase is the number of pieces of a case where neither the file nor a person says it. Common practice, no source.
const defaultCase = 72

// Rows gives the rows of the list, one for each size, to take, and the rows that are not to be taken to refuse; a row
// with anything wrong in it is refused whole. It stops at the first error of take. An error of the file is *Error and
// means that it must not be used at all. The rows are read once.
func (f *File) Rows(c Columns, take func(catalog.PriceRow) error, refuse func(catalog.Refused)) error {
	if err := c.Check(); err != nil {
		return err
	}
	b, err := f.bind(c)
	if err != nil {
		return err
	}
	b.take, b.refuse = take, refuse
	return f.each(b.skip, b.row)
}

// binding is a list's columns, found, with what was read before.
type binding struct {
	at       [fields]int // field to column, -1: none
	prices   []int       // columns below a size's name
	sizeOf   []string
	skip     int // rows up to the header
	width    int // cells of the header
	comma    bool
	ounces   bool // weights are ounces per square yard
	caseQty  int
	problems []catalog.Refused

	lastCategory, lastSmall string

	take   func(catalog.PriceRow) error
	refuse func(catalog.Refused)
	normal map[string]string // sizes as they are written here
}

func (f *File) bind(c Columns) (*binding, error) {
	head, skip := f.header(c)
	if head == nil {
		return nil, &Error{Problem: fmt.Sprintf("no row of the first %d has the headers %s", headRows, strings.Join(headers(c), ", "))}
	}
	b := &binding{skip: skip, width: len(head), caseQty: c.Case, normal: make(map[string]string)}
	if b.caseQty == 0 {
		b.caseQty = defaultCase
	}
	for i, field := range Fields() {
		b.at[i] = -1
		if text := c.Fields[field]; text != "" {
			b.at[i] = column(head, text)
		}
	}
	for _, size := range c.Sizes {
		b.prices = append(b.prices, column(head, size))
		b.sizeOf = append(b.sizeOf, sizes.Normal(size))
	}
	weight := plainWords(c.Fields[Weight])
	b.ounces = strings.Contains(weight, "oz") || weight == "weight" || weight == "fabric weight"
	b.comma = f.comma(c, b)
	return b, nil
}

// header finds the row that has every header asked for.
func (f *File) header(c Columns) (head []string, skip int) {
	wanted := headers(c)
	rows := f.Head()
	if h := c.Header; h > 0 && h <= len(rows) && hasAll(rows[h-1], wanted) {
		return rows[h-1], h
	}
	for i, row := range rows {
		if hasAll(row, wanted) {
			return row, i + 1
		}
	}
	return nil, 0
}

func headers(c Columns) []string {
	var all []string
	for _, text := range c.Fields {
		if text != "" {
			all = append(all, text)
		}
	}
	all = append(all, c.Sizes...)
	slices.Sort(all)
	return all
}

func hasAll(row, wanted []string) bool {
	return !slices.ContainsFunc(wanted, func(w string) bool { return column(row, w) < 0 })
}

// column finds a header by its words, exactly as written if there is such a one.
func column(row []string, header string) int {
	if i := slices.IndexFunc(row, func(cell string) bool { return strings.TrimSpace(readable(cell)) == header }); i >= 0 {
		return i
	}
	want := plainWords(header)
	return slices.IndexFunc(row, func(cell string) bool { return want != "" && plainWords(cell) == want })
}

// comma is as said, or as the amounts at the beginning of the list show.
func (f *File) comma(c Columns, b *binding) bool {
	if c.Comma != nil {
		return *c.Comma
	}
	columns := slices.Clone(b.prices)
	for _, field := range []int{price0, dozen0, case0, sale0} {
		if b.at[field] >= 0 {
			columns = append(columns, b.at[field])
		}
	}
	var cells []string
	for _, r := range f.sample[min(b.skip, len(f.sample)):] {
		for _, i := range columns {
			if i < len(r.cells) {
				cells = append(cells, r.cells[i])
			}
		}
	}
	return decimalComma(cells)
}

// row reads one row of the file: one size, or one for each column of a size.
func (b *binding) row(r record) error {
	b.problems = b.problems[:0]
	line := rowReader{b, r}
	base := line.common()
	line.overlong()
	var rows []catalog.PriceRow
	if len(b.prices) == 0 {
		if one, ok := line.single(base); ok {
			if len(b.problems) == 0 {
				return b.take(one)
			}
		}
	} else {
		rows = line.spread(base)
	}
	if len(b.problems) > 0 {
		for _, p := range b.problems {
			b.refuse(p)
		}
		return nil
	}
	for _, one := range rows {
		if err := b.take(one); err != nil {
			return err
		}
	}
	return nil
}

// rowReader reads the cells of one row.
type rowReader struct {
	*binding
	record
}

func (r rowReader) say(field, format string, args ...any) {
	r.binding.problems = append(r.binding.problems, catalog.Refused{Line: r.line, Field: field, Reason: fmt.Sprintf(format, args...)})
}

// overlong refuses a row with digits alone behind the last header: a comma within a price has divided it, and what stands
// in the price's column is not the price.
func (r rowReader) overlong() {
	if len(r.cells) <= r.width {
		return
	}
	beyond := strings.TrimSpace(r.cells[r.width])
	if beyond != "" && len(beyond) <= 4 && digits(beyond) {
		r.say("row", "%q stands behind the last header: is a price divided by its comma, like 4,35?", beyond)
	}
}

func (r rowReader) cell(i int) string {
	if i < 0 || i >= len(r.cells) {
		return ""
	}
	s := r.cells[i]
	if plain(s) {
		return s
	}
	return strings.Join(strings.Fields(readable(s)), " ")
}

// plain is a cell that needs no care: ASCII in one line without spaces around it.
func plain(s string) bool {
	if s == "" {
		return true
	}
	if s[0] <= ' ' || s[len(s)-1] <= ' ' {
		return false
	}
	for i := range len(s) {
		if s[i] >= 0x80 || s[i] < ' ' {
			return false
		}
	}
	return true
}

func (r rowReader) text(field int) string {
	s := r.cell(r.at[field])
	if len(s) > 200 && field != fabric0 {
		r.say(Fields()[field], "longer than 200 characters")
	}
	return s
}

// common reads what a row says about its style and colour.
func (r rowReader) common() catalog.PriceRow {
	row := catalog.PriceRow{
		Line: r.line, Style: r.cell(r.at[style0]), Name: r.text(name0), Mill: r.text(mill0), Category: r.category(), Fabric: r.text(fabric0),
		HeatLimit: r.text(heat0), Color: r.text(color0), Hex: r.hex(), Shade: r.shade(), Weight: r.weight(),
	}
	switch {
	case row.Style == "":
		r.say(Style, "no style number")
	case len(row.Style) > 60:
		r.say(Style, "longer than 60 characters: is this a style number?")
	}
	return row
}

func (r rowReader) single(row catalog.PriceRow) (catalog.PriceRow, bool) {
	row.Size = r.size(r.text(size0))
	row.Piece = r.price(Price, r.at[price0])
	if row.Piece == 0 && len(r.binding.problems) == 0 {
		r.say(Price, "no price")
	}
	row.Dozen, row.Case, row.CaseQty = r.amount(dozen0), r.amount(case0), r.caseOf()
	row.Sale, row.SaleUntil = r.amount(sale0), r.until()
	if row.Sale > 0 && r.text(until0) == "" {
		r.say(SaleUntil, "a sale price without its last day")
	}
	if row.Dozen > row.Piece {
		r.say(Dozen, "the price each by the dozen, %s, is above the price of one piece, %s: is it for the whole dozen?", row.Dozen, row.Piece)
	}
	if row.Case > row.Piece {
		r.say(Case, "the price each by the case, %s, is above the price of one piece, %s: is it for the whole case?", row.Case, row.Piece)
	}
	return row, true
}

// spread makes a row of every column of a size that has a price.
func (r rowReader) spread(base catalog.PriceRow) []catalog.PriceRow {
	var rows []catalog.PriceRow
	for k, i := range r.prices {
		row := base
		row.Size, row.Piece = r.sizeOf[k], r.price(r.sizeOf[k], i)
		if row.Piece > 0 {
			rows = append(rows, row)
		}
	}
	if len(rows) == 0 && len(r.binding.problems) == 0 {
		r.say(Price, "no price in any column of a size")
	}
	return rows
}

func (r rowReader) amount(field int) catalog.Myriad {
	if r.at[field] < 0 {
		return 0
	}
	return r.price(Fields()[field], r.at[field])
}

// category is in small letters, remembered from the row before: most rows have the same.
func (r rowReader) category() string {
	s := r.text(category0)
	if s != r.lastCategory {
		r.binding.lastCategory, r.binding.lastSmall = strings.Clone(s), strings.ToLower(s)
	}
	return r.binding.lastSmall
}

func (r rowReader) price(field string, i int) catalog.Myriad {
	cell := r.cell(i)
	m, err := price(cell, r.comma)
	if err != nil {
		r.say(field, "%q %v", clip(cell), err)
	}
	return m
}

func clip(s string) string {
	if runes := []rune(s); len(runes) > 40 {
		return string(runes[:40]) + "…"
	}
	return s
}

// size writes a size as the catalog does; a list without sizes has one size.
func (r rowReader) size(cell string) string {
	if cell == "" {
		return "OS"
	}
	s, ok := r.normal[cell]
	if !ok {
		s = sizes.Normal(cell)
		if strings.ContainsAny(s, " \t") {
			s = strings.ReplaceAll(s, " ", "-")
		}
		r.normal[cell] = s
	}
	if len(s) > 20 {
		r.say(Size, "longer than 20 characters: is this a size?")
	}
	return s
}

func (r rowReader) caseOf() int {
	cell := r.text(caseQty0)
	if cell == "" {
		return r.caseQty
	}
	n, err := strconv.Atoi(cell)
	if err != nil || n < 2 || n > 100_000 {
		r.say(CaseQty, "%q is not a number of pieces", clip(cell))
		return r.caseQty
	}
	if n <= 12 && r.amount(dozen0) > 0 {
		return 13 // a case no larger than a dozen: the dozen's price stands before it
	}
	return n
}

func (r rowReader) hex() string {
	s := strings.ToLower(strings.TrimPrefix(r.text(hex0), "#"))
	if len(s) != 6 {
		return ""
	}
	if _, err := strconv.ParseUint(s, 16, 32); err != nil {
		return ""
	}
	return "#" + s
}

func (r rowReader) shade() string {
	s := strings.ToLower(r.text(shade0))
	switch s {
	case "light", "dark", "heather", "neon":
		return s
	}
	return ""
}

// weight reads a fabric weight as grams per square metre; what is no weight is left out.
func (r rowReader) weight() string {
	cell := strings.ToLower(r.text(weight0))
	if cell == "" {
		return ""
	}
	number := strings.TrimRight(cell, "abcdefghijklmnopqrstuvwxyz²2/. ")
	if !strings.ContainsAny(cell, "abcdefghijklmnopqrstuvwxyz") {
		number = cell
	}
	n, err := money.ParseNumber(strings.Replace(number, ",", ".", 1))
	if err != nil || n.Sign() < 0 {
		return ""
	}
	if strings.Contains(cell, "oz") || r.ounces && !strings.ContainsAny(cell, "g") {
		n = measure.GramsPerSquareMetre(n, 1)
	}
	return n.String()
}

func (r rowReader) until() string {
	cell := r.text(until0)
	if cell == "" {
		return ""
	}
	for _, layout := range []string{time.DateOnly, "01/02/2006", "1/2/2006", "02.01.2006", "2.1.2006", "Jan 2, 2006", "2 Jan 2006", "1/2/06", "01-02-06"} {
		if day, err := time.Parse(layout, cell); err == nil {
			return day.Format(time.DateOnly)
		}
	}
	r.say(SaleUntil, "%q is not a day: write it like 2026-05-31", clip(cell))
	return ""
}
