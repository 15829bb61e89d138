package catalog

import (
	"cmp"
	"slices"
	"strconv"
	"sync"

	"pressworth/quote"
	"pressworth/quote/sizes"
)

// Kinds of price entry.
const (
	ListPrice = "list" // of a price list
	NetPrice  = "net"  // the shop's own agreed price, goes before the list
	SalePrice = "sale" // until its last day it goes before both
	GonePrice = "gone" // the supplier lists the size no more
)

// Price is one price entry of a style: it holds from its first day until a later one of its kind, or its last day. It
// is never changed.
type Price struct {
	StyleID int64
	Seq     int    // counts the entries of the style
	Color   string // empty: every colour
	Size    string
	Kind    string
	Each    []quote.Break
	From    string // 2006-01-02
	Until   string // or empty
	File    PriceFile
}

// PriceFile is where prices came from.
type PriceFile struct {
	ID         int64
	SupplierID int64
	Name       string // of the file, or of the person
	Source     string // file, person, demo
	ValidFrom  string // 2006-01-02
	TakenAt    string // RFC 3339
	Whole      bool   // it lists all that the supplier has: what is not in it is gone
	Undone     bool
}

// EntryID names the entry in a job: style and count, like p12.3.
func (p Price) EntryID() string {
	return "p" + strconv.FormatInt(p.StyleID, 10) + "." + strconv.Itoa(p.Seq)
}

// beats says whether p goes before q where both hold.
func (p Price) beats(q Price) bool {
	if a, b := rank(p.Kind), rank(q.Kind); a != b {
		return a > b
	}
	if p.From != q.From {
		return p.From > q.From
	}
	return p.Seq > q.Seq
}

func rank(kind string) int {
	switch kind {
	case SalePrice:
		return 2
	case NetPrice:
		return 1
	}
	return 0
}

// holds says whether the entry holds on a day.
func (p Price) holds(on string) bool { return p.From <= on && (p.Until == "" || on <= p.Until) }

// cell is a size of a colour; no colour stands for every one.
type cell struct{ color, size string }

// InForce picks of a style's entries, in their order, those that hold on a day: one for each size, and for each size
// of a colour that has prices of its own. A size whose latest list entry says that it is gone has none. A net or sale
// price without figures takes the one before it back. One for every colour also goes before a colour's own list price.
func InForce(entries []Price, on string) []Price {
	latest := make(map[cell]*ranks)
	var order []cell
	for _, p := range entries {
		if !p.holds(on) {
			continue
		}
		c := cell{p.Color, p.Size}
		if latest[c] == nil {
			latest[c] = &ranks{}
			order = append(order, c)
		}
		if now := &latest[c][rank(p.Kind)]; now.Kind == "" || p.beats(*now) {
			*now = p
		}
	}
	var out []Price
	for _, c := range order {
		best, ok := latest[c].best()
		if !ok {
			continue
		}
		if all := latest[cell{"", c.size}]; c.color != "" && all != nil {
			if x, ok := all.best(); ok && rank(x.Kind) > rank(best.Kind) {
				x.Color = c.color
				best = x
			}
		}
		out = append(out, best)
	}
	return out
}

// ranks are the latest entries of a size by rank: list, net, sale.
type ranks [3]Price

// best is the entry that goes before the others, false where the size is gone.
func (r *ranks) best() (Price, bool) {
	if r[0].Kind == GonePrice {
		return Price{}, false
	}
	for i := len(r) - 1; i >= 0; i-- {
		if len(r[i].Each) > 0 {
			return r[i], true
		}
	}
	return Price{}, false
}

// Listed are the entries of the price list: no net or sale prices.
func Listed(entries []Price) []Price {
	return slices.DeleteFunc(slices.Clone(entries), func(p Price) bool { return rank(p.Kind) > 0 })
}

// OwnOn are the net and sale prices that hold on a day, and those to come where none of their kind holds yet: one for each
// kind, colour and size.
func OwnOn(entries []Price, on string) []Price {
	type place struct {
		cell
		kind string
	}
	chosen := make(map[place]Price)
	var order []place
	for _, p := range entries {
		if rank(p.Kind) == 0 || p.Until != "" && p.Until < on {
			continue
		}
		at := place{cell{p.Color, p.Size}, p.Kind}
		now, seen := chosen[at]
		if !seen {
			order = append(order, at)
		}
		if !seen || p.nearer(now, on) {
			chosen[at] = p
		}
	}
	var out []Price
	for _, at := range order {
		if p := chosen[at]; len(p.Each) > 0 {
			out = append(out, p)
		}
	}
	return out
}

// nearer says whether of two entries of a kind this one is to be shown on a day: the one in force, else the next.
func (p Price) nearer(q Price, on string) bool {
	switch {
	case p.From <= on && q.From <= on:
		return p.beats(q)
	case p.From <= on || q.From <= on:
		return p.From <= on
	case p.From != q.From:
		return p.From < q.From
	}
	return p.Seq > q.Seq
}

// SetPrices gives the style the prices in force. A list price counts as confirmed by the last whole price file, so its
// day is the later of the two.
func (s *Style) SetPrices(inForce []Price, lastWhole string) {
	s.Sizes, s.ByColor, s.PricedOn = nil, nil, ""
	for _, p := range inForce {
		day := p.From
		if p.File.Source == "file" && lastWhole > day {
			day = lastWhole
		}
		if s.PricedOn == "" || day < s.PricedOn {
			s.PricedOn = day
		}
		size := StyleSize{Size: p.Size, Each: p.Each}
		for i := range size.Each {
			size.Each[i].Info = quote.Info{EntryID: p.EntryID(), PricedOn: day}
		}
		if p.Color == "" {
			s.Sizes = append(s.Sizes, size)
			continue
		}
		if s.ByColor == nil {
			s.ByColor = make(map[string][]StyleSize)
		}
		s.ByColor[p.Color] = append(s.ByColor[p.Color], size)
	}
	sortSizes(s.Sizes)
	for _, own := range s.ByColor {
		sortSizes(own)
	}
}

func sortSizes(all []StyleSize) {
	slices.SortStableFunc(all, func(a, b StyleSize) int { return cmp.Compare(rack.place(a.Size), rack.place(b.Size)) })
}

// rack remembers the order of sizes seen before: comparing two of them afresh is slow, and a search sorts hundreds.
var rack = &sizeOrder{}

type sizeOrder struct {
	mu     sync.RWMutex
	places map[string]int
	sorted []string
}

// mostSizes bounds what is remembered; beyond it sizes go to the end.
const mostSizes = 5000

func (o *sizeOrder) place(size string) int {
	o.mu.RLock()
	at, ok := o.places[size]
	o.mu.RUnlock()
	if ok {
		return at
	}
	o.mu.Lock()
	defer o.mu.Unlock()
	if len(o.sorted) >= mostSizes {
		return mostSizes
	}
	o.sorted = append(o.sorted, size)
	sizes.Sort(o.sorted)
	o.places = make(map[string]int, len(o.sorted))
	for i, s := range o.sorted {
		o.places[s] = i
	}
	return o.places[size]
}

// SizeSpan says which sizes the style comes in, like S–3XL.
func (s Style) SizeSpan() string {
	var names []string
	for _, z := range s.Sizes {
		names = append(names, z.Size)
	}
	for _, own := range s.ByColor {
		for _, z := range own {
			if !contains(names, z.Size) {
				names = append(names, z.Size)
			}
		}
	}
	slices.SortStableFunc(names, func(a, b string) int { return cmp.Compare(rack.place(a), rack.place(b)) })
	switch len(names) {
	case 0:
		return ""
	case 1:
		return names[0]
	}
	return names[0] + "–" + names[len(names)-1]
}
