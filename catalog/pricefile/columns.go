package pricefile

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"pressworth/quote/sizes"
)

// Fields that a column of a price list may hold.
const (
	Style     = "style"
	Name      = "name"
	Mill      = "mill"
	Category  = "category"
	Fabric    = "fabric"
	Weight    = "weight"
	HeatLimit = "heat_limit"
	Color     = "color"
	Hex       = "hex"
	Shade     = "shade"
	Size      = "size"
	Price     = "price"
	Dozen     = "dozen"
	Case      = "case"
	CaseQty   = "case_quantity"
	Sale      = "sale"
	SaleUntil = "sale_until"
)

// Places of the fields in Fields.
const (
	style0 = iota
	name0
	mill0
	category0
	fabric0
	weight0
	heat0
	color0
	hex0
	shade0
	size0
	price0
	dozen0
	case0
	caseQty0
	sale0
	until0
	fields
)

// Fields are all fields, in the order a window lists them.
func Fields() []string { return fieldList[:] }

var fieldList = [fields]string{Style, Name, Mill, Category, Fabric, Weight, HeatLimit, Color, Hex, Shade, Size, Price, Dozen, Case, CaseQty, Sale, SaleUntil}

// Columns says which column holds which field, by the header's words. It is kept as JSON for the supplier's next file.
type Columns struct {
	Header int               `json:"header,omitempty"` // the row the header stands in, the first is 1; 0: wherever its words are found
	Fields map[string]string `json:"columns"`          // field to the header's text
	Sizes  []string          `json:"sizes,omitempty"`  // headers that are sizes, with prices below them: one row a style
	Comma  *bool             `json:"decimal_comma,omitempty"`
	Case   int               `json:"case_quantity,omitempty"` // pieces of a case where no column says so; 0: 72
}

// words that name a field, in lower case without marks.
var known = map[string][]string{
	Style:     {"style", "style number", "style no", "style code", "style id", "item", "item number", "item no", "item code", "product code", "article", "article number", "model", "code", "number", "sku"},
	Name:      {"name", "description", "style name", "product name", "product", "title", "garment", "item name", "item description", "product description"},
	Mill:      {"mill", "brand", "brand name", "manufacturer", "maker", "make"},
	Category:  {"category", "type", "product type", "group", "department", "class"},
	Fabric:    {"fabric", "material", "composition", "fabric content", "content", "fibre", "fiber"},
	Weight:    {"weight", "fabric weight", "oz", "weight oz", "weight oz yd", "weight oz yd2", "gsm", "weight gsm", "g m2", "weight g m2", "fabric weight oz", "fabric weight gsm"},
	HeatLimit: {"heat limit", "max heat", "max temperature", "heat"},
	Color:     {"color", "colour", "color name", "colour name"},
	Hex:       {"hex", "hex code", "rgb", "color hex", "colour hex", "swatch"},
	Shade:     {"shade", "shade group"},
	Size:      {"size", "size name", "size code"},
	Price:     {"price", "piece", "piece price", "price each", "each", "unit price", "net price", "net", "your price", "list price", "cost", "price piece", "single"},
	Dozen:     {"dozen", "dozen price", "dz", "doz", "price dozen", "dz price"},
	Case:      {"case", "case price", "price case", "carton price"},
	CaseQty:   {"case qty", "case quantity", "case pack", "case size", "pieces per case", "pcs case", "pack"},
	Sale:      {"sale", "sale price", "special", "special price", "promo price"},
	SaleUntil: {"sale until", "sale end", "sale ends", "sale to", "special until", "promo end", "promo ends"},
}

// plainWords writes a header in lower case, its marks as single spaces.
func plainWords(header string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(readable(header)), func(r rune) bool {
		return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9' || r > 127)
	}), " ")
}

// Guess matches columns by the words of the most telling row among the first 20.
func (f *File) Guess() Columns {
	best := Columns{Fields: map[string]string{}}
	for i, head := range f.Head() {
		c := guessRow(head)
		if c.weight() > best.weight() {
			best = c
			best.Header = i + 1
		}
	}
	return best
}

func (c Columns) weight() int { return 2*len(c.Fields) + len(c.Sizes) }

func guessRow(head []string) Columns {
	c := Columns{Fields: make(map[string]string)}
	taken := make(map[int]bool)
	for _, field := range Fields() {
		at := -1
		rank := len(known[field])
		for i, cell := range head {
			if r := slices.Index(known[field], plainWords(cell)); r >= 0 && r < rank && !taken[i] {
				at, rank = i, r
			}
		}
		if at >= 0 {
			c.Fields[field], taken[at] = strings.TrimSpace(head[at]), true
		}
	}
	if c.Fields[Size] == "" {
		for _, cell := range head {
			if isSize(cell) {
				c.Sizes = append(c.Sizes, strings.TrimSpace(cell))
			}
		}
	}
	return c
}

// isSize tells whether a header is the name of a size.
func isSize(cell string) bool {
	cell = strings.TrimSpace(cell)
	return cell != "" && len(cell) < 12 && sizes.Known(cell)
}

// Check says what is missing before rows can be read; nil where nothing is.
func (c Columns) Check() error {
	var missing []string
	if c.Fields[Style] == "" {
		missing = append(missing, "style")
	}
	if c.Fields[Price] == "" && len(c.Sizes) == 0 {
		missing = append(missing, "price")
	}
	if len(missing) > 0 {
		return &Error{Problem: fmt.Sprintf("no column is matched with %s", strings.Join(missing, " and "))}
	}
	return nil
}

// Recall gives columns as they were matched for an earlier file of the supplier, as JSON, where this file has the same
// headers; else the guess.
func (f *File) Recall(kept string) Columns {
	var c Columns
	if err := json.Unmarshal([]byte(kept), &c); err != nil || c.Check() != nil {
		return f.Guess()
	}
	if head, _ := f.header(c); head == nil {
		return f.Guess()
	}
	return c
}

// Keep writes columns for Recall.
func (c Columns) Keep() string {
	b, _ := json.Marshal(c) // texts and numbers always marshal
	return string(b)
}
