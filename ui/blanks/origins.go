package blanks

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// mostOrigins is how many of them are shown.
const mostOrigins = 6

// origin is a price file, or a person, that prices of one kind came from with one span of days.
type origin struct{ kind, from, until, name string }

// origins say where a style's prices came from, the latest first.
func origins(entries []catalog.Price) (lines []fyne.CanvasObject) {
	counts := map[origin]int{}
	var order []origin
	for _, p := range entries {
		if p.File.Undone || p.Kind == catalog.GonePrice {
			continue
		}
		o := origin{p.Kind, p.From, p.Until, p.File.Name}
		if len(p.Each) == 0 {
			o.kind = p.Kind + " ended"
		}
		if counts[o]++; counts[o] == 1 {
			order = append(order, o)
		}
	}
	slices.Reverse(order)
	slices.SortStableFunc(order, func(a, b origin) int { return strings.Compare(b.from, a.from) })
	for _, o := range order[:min(len(order), mostOrigins)] {
		days := o.from
		if o.until != "" {
			days += "–" + strings.TrimPrefix(o.until, o.from[:5]) // the year once
		}
		style := parts.Style{}.Shortened()
		if o.kind != catalog.ListPrice {
			style = style.In(look.Accent)
		}
		what := o.kind
		if !strings.HasSuffix(what, "ended") {
			what += ", " + many(counts[o], "price")
		}
		lines = append(lines, parts.Row(8, []parts.Track{parts.Share(5), parts.Share(3), parts.Share(3)}, parts.NewText(days, parts.MutedStyle.Shortened()),
			parts.NewText(o.name, style), parts.NewText(what, parts.MutedStyle.Shortened())))
	}
	return lines
}
