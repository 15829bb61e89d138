package book

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"pressworth/catalog"
)

// buySupplier is what is to be bought from one supplier over all accepted quotes.
type buySupplier struct {
	key, name string
	goods     []buyGoods
}

// buyGoods is one line of a supplier's list: a style in a colour with all its sizes, or what is printed on one card.
type buyGoods struct {
	name string
	kind string
	rows []catalog.PurchaseRow // one a size, or one a thing bought on the card
}

// bySupplier gathers rows of the purchase list, suppliers and goods in the order in which they come first.
func bySupplier(rows []catalog.PurchaseRow) []buySupplier {
	var out []buySupplier
	for _, r := range rows {
		i := slices.IndexFunc(out, func(s buySupplier) bool { return s.key == r.Supplier })
		if i < 0 {
			i = len(out)
			out = append(out, buySupplier{key: r.Supplier, name: or(r.SupplierName, r.Supplier)})
		}
		name := goodsName(r)
		k := slices.IndexFunc(out[i].goods, func(g buyGoods) bool { return g.name == name && g.kind == r.Kind })
		if k < 0 {
			k = len(out[i].goods)
			out[i].goods = append(out[i].goods, buyGoods{name: name, kind: r.Kind})
		}
		out[i].goods[k].rows = append(out[i].goods[k].rows, r)
	}
	return out
}

func goodsName(r catalog.PurchaseRow) string {
	if r.Kind == catalog.ShelfTransfer {
		return or(r.CardName, r.Card)
	}
	words := []string{}
	for _, w := range []string{r.Style + " " + r.Name, r.Color} {
		if w = strings.TrimSpace(w); w != "" {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

// rowName is a size, or what is bought on a card.
func rowName(r catalog.PurchaseRow) string {
	if r.Size != "" {
		return r.Size
	}
	return measured.ReplaceAllString(r.What, "$1 × $2")
}

// In a result the size of a sheet is written as 13x9.5, and a length of a roll as 36.
var (
	measured = regexp.MustCompile(`^([0-9.]+)x([0-9.]+)$`)
	length   = regexp.MustCompile(`^[0-9.]+$`)
)

// sizes lists the goods with a count each: "S 7 · M 11".
func (g buyGoods) sizes(count func(catalog.PurchaseRow) int) string {
	var words []string
	for _, r := range g.rows {
		n := count(r)
		switch {
		case n == 0:
		case measured.MatchString(r.What):
			words = append(words, fmt.Sprintf("%d sheets of %s", n, rowName(r)))
		case length.MatchString(r.What):
			words = append(words, fmt.Sprintf("%d lengths of %s in", n, r.What))
		case g.kind == catalog.ShelfTransfer:
			words = append(words, fmt.Sprintf("%d × %s", n, rowName(r)))
		default:
			words = append(words, fmt.Sprintf("%s %d", rowName(r), n))
		}
	}
	return strings.Join(words, " · ")
}

func (g buyGoods) sum(count func(catalog.PurchaseRow) int) int {
	n := 0
	for _, r := range g.rows {
		n += count(r)
	}
	return n
}

func needed(r catalog.PurchaseRow) int   { return r.Needed }
func toOrder(r catalog.PurchaseRow) int  { return r.Open() }
func awaited(r catalog.PurchaseRow) int  { return r.Awaited() }
func received(r catalog.PurchaseRow) int { return r.Received }
func short(r catalog.PurchaseRow) int    { return r.Short }

// stand says in words how far the goods are.
func (g buyGoods) stand() string {
	var words []string
	say := func(n int, form string) {
		if n > 0 {
			words = append(words, fmt.Sprintf(form, n))
		}
	}
	say(g.sum(toOrder), "%d to order")
	say(g.sum(awaited), "%d on the way")
	say(g.sum(short), "%d short")
	if len(words) == 0 {
		return "all here"
	}
	if n := g.sum(received); n > 0 {
		words = append(words, fmt.Sprintf("%d here", n))
	}
	return strings.Join(words, ", ")
}

// quotes are the numbers of the quotes that the goods are for, with the earliest day that one of them is needed by.
func (g buyGoods) quotes() (numbers []string, first string) {
	for _, r := range g.rows {
		for _, p := range r.Quotes {
			if !slices.Contains(numbers, p.Number) {
				numbers = append(numbers, p.Number)
			}
			if p.NeededBy != "" && (first == "" || p.NeededBy < first) {
				first = p.NeededBy
			}
		}
	}
	return numbers, first
}

// parts are the ids of the quotes' shares for which pick says yes.
func (g buyGoods) parts(pick func(catalog.PurchasePart) bool) []int64 {
	var ids []int64
	for _, r := range g.rows {
		for _, p := range r.Quotes {
			if pick(p) {
				ids = append(ids, p.ID)
			}
		}
	}
	return ids
}

func partToOrder(p catalog.PurchasePart) bool { return p.Ordered < p.Needed }
func partAwaited(p catalog.PurchasePart) bool { return p.Ordered > p.Received+p.Short }
func partTouched(p catalog.PurchasePart) bool { return p.Ordered > 0 }

// taken is what one quote's share of a delivery comes to.
type taken struct {
	part            catalog.PurchasePart
	received, short int // altogether, as the shop file keeps them
}

// shareOut gives what came of a size to the quotes that wait for it, the one needed first first. What did not come is
// short where the rest will not come.
func shareOut(r catalog.PurchaseRow, came int, restLater bool) []taken {
	waiting := slices.Clone(r.Quotes)
	slices.SortStableFunc(waiting, func(a, b catalog.PurchasePart) int { return strings.Compare(or(a.NeededBy, "9"), or(b.NeededBy, "9")) })
	var out []taken
	for i, p := range waiting {
		want := max(p.Ordered-p.Received-p.Short, 0)
		n := min(want, came)
		if i == len(waiting)-1 {
			n = came // more than was ordered: the last one keeps it
		}
		came -= n
		if n == 0 && (want == 0 || restLater) {
			continue
		}
		t := taken{part: p, received: p.Received + n, short: p.Short}
		if !restLater {
			t.short += max(want-n, 0)
		}
		out = append(out, t)
	}
	return out
}
