package store

import (
	"encoding/json"
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote/sizes"
)

// styleChange is what an import does to a style that the catalog has.
type styleChange struct {
	id      int64
	edits   int
	note    string // what it was like before, as JSON
	said    int64
	attrs   *oldAttrs // nil: they stay
	words   bool      // what it is found by changes
	add     []newColor
	resize  []oldColor // known colours with other sizes, or back, or gone
	entries []catalog.Price
	breaks  []string // of the entries
	posFrom int      // of the first colour added
}

type newColor struct{ name, hex, shade, sizes string }

// comparer compares styles price by price and counts what it finds.
type comparer struct {
	plan            *ImportPlan // looked at, not changed
	dearer, cheaper []float64
	counts          map[string]int
	changes         []catalog.PriceChange // the first of them
	changed         []styleChange
	same            []sameStyle
}

// sameStyle is a style that says the same in other words, with its new sum.
type sameStyle struct{ id, said int64 }

// style compares a style of the file with what the catalog says about it.
func (c *comparer) style(old *oldStyle, at int32) {
	want := c.plan.file.wanted(at)
	was := make(map[listAt]string)
	old.cells(func(color, size, price string) { was[listAt{color, size}] = price })
	for _, w := range want.cells {
		before := was[w.at]
		delete(was, w.at)
		c.count(old.number, w.at, before, w.price, w.line)
	}
	for cell, before := range was {
		if c.plan.Options.Whole {
			c.count(old.number, cell, before, "", 0)
		}
	}
	if !c.plan.Options.Whole { // what is not in a partial file stays
		for cell, price := range was {
			want.cells = append(want.cells, wantedCell{at: cell, price: price})
		}
	}
	change := c.change(old, want)
	change.said = c.plan.file.said(at)
	if !c.plan.Options.Whole && len(was) > 0 {
		change.said = 0
	}
	if change.idle() {
		c.same = append(c.same, sameStyle{old.id, change.said})
		return
	}
	c.changed = append(c.changed, change)
}

func (s *styleChange) idle() bool {
	return s.attrs == nil && !s.words && len(s.add)+len(s.resize)+len(s.entries) == 0
}

// gone counts what a style loses that is not listed any more.
func (c *comparer) gone(old *oldStyle) {
	old.cells(func(color, size, price string) { c.count(old.number, listAt{color, size}, price, "", 0) })
}

func (c *comparer) count(style string, at listAt, before, after string, line int) {
	kind := catalog.ChangeSame
	switch {
	case before == after:
	case before == "":
		kind = catalog.ChangeNew
	case after == "":
		kind = catalog.ChangeGone
	default:
		kind = c.turn(before, after)
	}
	c.counts[kind]++
	if kind != catalog.ChangeSame && len(c.changes) < catalog.ListedChanges {
		c.changes = append(c.changes, catalog.PriceChange{Kind: kind, Line: line, Style: style, Color: at.color, Size: at.size, Before: before, After: after})
	}
}

// turn says whether prices rose or fell: at the first break, or where that is the same at the later ones.
func (c *comparer) turn(before, after string) string {
	b, a := figures64(before), figures64(after)
	percent := 0.0
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] && b[i] > 0 {
			percent = (a[i] - b[i]) / b[i] * 100
			break
		}
	}
	if percent > 0 || percent == 0 && len(a) < len(b) {
		c.dearer = append(c.dearer, percent)
		return catalog.ChangeDearer
	}
	c.cheaper = append(c.cheaper, -percent)
	return catalog.ChangeCheaper
}

// figures64 reads the prices of breaks for a percentage that is shown, never computed with.
func figures64(breaks string) (out []float64) {
	for word := range strings.FieldsSeq(breaks) {
		_, each, found := strings.Cut(word, ":")
		if !found {
			each = word
		}
		f, _ := strconv.ParseFloat(each, 64)
		out = append(out, f)
	}
	return out
}

// change makes of a style what the file wants it to be, with as few entries as say so.
func (c *comparer) change(old *oldStyle, want wantedStyle) styleChange {
	x := styleChange{id: old.id, edits: old.edits, note: old.note()}
	x.words = old.retired
	if old.edits == 0 { // what a person wrote stays
		if now := want.attrs.over(old.attrs); now != old.attrs {
			x.attrs, x.words = &now, true
		}
	}
	c.colors(&x, old, want)
	list := c.entries(&x, old, want)
	for _, e := range list {
		e.From = c.plan.Options.ValidFrom
		x.entries = append(x.entries, e.Price)
		x.breaks = append(x.breaks, e.breaks)
	}
	return x
}

// over keeps what the file leaves empty.
func (a oldAttrs) over(old oldAttrs) oldAttrs {
	keep := func(now, was string) string {
		if now == "" {
			return was
		}
		return now
	}
	return oldAttrs{
		keep(a.Name, old.Name), keep(a.Mill, old.Mill), keep(a.Category, old.Category), keep(a.Fabric, old.Fabric), keep(a.Weight, old.Weight),
		keep(a.HeatLimit, old.HeatLimit),
	}
}

// styleNote is what undoing an import gives back.
type styleNote struct {
	Attrs   oldAttrs    `json:"attrs"`
	Retired bool        `json:"retired"`
	Said    int64       `json:"said"`
	Colors  []colorNote `json:"colors"`
}

type colorNote struct {
	Pos     int    `json:"pos"`
	Sizes   string `json:"sizes"`
	Retired bool   `json:"retired"`
}

func (o *oldStyle) note() string {
	n := styleNote{Attrs: o.attrs, Retired: o.retired, Said: o.said}
	for _, c := range o.colors {
		n.Colors = append(n.Colors, colorNote{c.pos, c.sizes, c.retired})
	}
	b, _ := json.Marshal(n) // plain fields always marshal
	return string(b)
}

// colors finds colours that are new, gone, back, or come in other sizes.
func (c *comparer) colors(x *styleChange, old *oldStyle, want wantedStyle) {
	wanted := want.colors()
	for _, o := range old.colors {
		x.posFrom = max(x.posFrom, o.pos+1)
		w, listed := wanted.find(o.name)
		now := o
		now.retired = !listed
		if listed {
			now.sizes = w.sizes
		}
		if now != o {
			x.resize = append(x.resize, now)
			x.words = x.words || now.retired != o.retired
		}
	}
	for _, w := range wanted {
		if w.name != "" && !slices.ContainsFunc(old.colors, func(o oldColor) bool { return o.name == w.name }) {
			x.add, x.words = append(x.add, w), true
		}
	}
}

// entry is a price entry with its breaks as they are kept.
type entry struct {
	catalog.Price
	breaks string
}

// entries are those needed: what the file says and the catalog does not.
func (c *comparer) entries(x *styleChange, old *oldStyle, want wantedStyle) []entry {
	var out []entry
	add := func(kind string, at listAt, breaks, until string) {
		out = append(out, entry{catalog.Price{StyleID: x.id, Color: at.color, Size: at.size, Kind: kind, Until: until}, breaks})
	}
	listed := make(map[string]bool)
	for _, g := range want.general() {
		listed[g.size] = true
		if old.list[listAt{"", g.size}] != g.price {
			add(catalog.ListPrice, listAt{"", g.size}, g.price, "")
		}
		for _, w := range g.cells {
			own := old.list[w.at]
			if w.at.color == "" || own == w.price || own == "" && w.price == g.price {
				continue
			}
			add(catalog.ListPrice, w.at, w.price, "")
		}
	}
	for at, price := range old.list {
		if price != "" && !listed[at.size] {
			add(catalog.GonePrice, at, "", "")
		}
	}
	for _, w := range want.cells {
		if w.sale != "" && old.sales[w.at] != (oldSale{w.sale, w.until}) {
			add(catalog.SalePrice, w.at, w.sale, w.until)
		}
	}
	return out
}

// wantedStyle is a style as the file has it, in words.
type wantedStyle struct {
	attrs oldAttrs
	cells []wantedCell
}

type wantedCell struct {
	at          listAt
	hex, shade  string
	price       string
	sale, until string
	line        int
}

func (s *staged) attrsOf(at int32) oldAttrs {
	a, all := s.attrs[s.styles[at].attrs], s.texts.all
	return oldAttrs{all[a.name], all[a.mill], all[a.category], all[a.fabric], all[a.weight], all[a.heat]}
}

func (s *staged) wanted(at int32) wantedStyle {
	style, all := s.styles[at], s.texts.all
	w := wantedStyle{attrs: s.attrsOf(at)}
	w.cells = make([]wantedCell, len(style.cells))
	for i, c := range style.cells {
		w.cells[i] = wantedCell{at: listAt{all[c.color], all[c.size]}, hex: all[c.hex], shade: all[c.shade], price: all[c.price], line: int(c.line)}
		if len(s.sales) > 0 {
			if x, ok := s.sales[cellAt{at, int32(i)}]; ok {
				w.cells[i].sale, w.cells[i].until = all[x.price], all[x.until]
			}
		}
	}
	return w
}

// generalPrice is what most colours of a size cost, with all of them.
type generalPrice struct {
	size, price string
	cells       []wantedCell
}

// general finds for each size the price that most colours have, ties to the earlier one.
func (w wantedStyle) general() []generalPrice {
	var out []generalPrice
	for _, c := range w.cells {
		i := slices.IndexFunc(out, func(g generalPrice) bool { return g.size == c.at.size })
		if i < 0 {
			i = len(out)
			out = append(out, generalPrice{size: c.at.size})
		}
		out[i].cells = append(out[i].cells, c)
	}
	for i, g := range out {
		out[i].price = most(g.cells)
	}
	return out
}

func most(cells []wantedCell) string {
	best, bestCount := cells[0].price, 0
	if !slices.ContainsFunc(cells, func(c wantedCell) bool { return c.price != best }) {
		return best
	}
	count := make(map[string]int)
	for _, c := range cells {
		count[c.price]++
	}
	for _, c := range cells {
		if count[c.price] > bestCount {
			best, bestCount = c.price, count[c.price]
		}
	}
	return best
}

type newColors []newColor

func (n newColors) find(name string) (newColor, bool) {
	i := slices.IndexFunc(n, func(c newColor) bool { return c.name == name })
	if i < 0 {
		return newColor{}, false
	}
	return n[i], true
}

// colors are the style's colours in the file's order, with the sizes of those that do not come in all of them.
func (w wantedStyle) colors() newColors {
	var out newColors
	own := make(map[string][]string)
	var all []string
	for _, c := range w.cells {
		if _, seen := own[c.at.color]; !seen {
			out = append(out, newColor{name: c.at.color, hex: c.hex, shade: c.shade})
		}
		own[c.at.color] = append(own[c.at.color], c.at.size)
		if !slices.Contains(all, c.at.size) {
			all = append(all, c.at.size)
		}
	}
	for i, c := range out {
		if len(own[c.name]) < len(all) {
			sizes.Sort(own[c.name])
			out[i].sizes = strings.Join(own[c.name], " ")
		}
	}
	return out
}
