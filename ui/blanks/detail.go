package blanks

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/measure"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// detail is one style, at the right of the table.
type detail struct {
	object  fyne.CanvasObject
	name    *parts.Text
	where   *parts.Text
	facts   *fyne.Container
	colors  *fyne.Container
	prices  *fyne.Container
	caution *parts.Band
	body    *fyne.Container
	buttons *fyne.Container // what can be done with the style
	usual   *parts.Button
	retire  *parts.Button
	style   catalog.Style
	stale   *parts.Band
	past    *history
	pastBox *parts.Section
	origins *fyne.Container // where the prices came from, the latest first
	came    *parts.Section
}

func newDetail() *detail {
	d := &detail{
		name: parts.NewText("", parts.KeyStyle.Shortened()), where: parts.NewText("", parts.MutedStyle.Shortened()),
		facts: parts.Column(3), colors: parts.Flow(6), prices: parts.Column(0), caution: parts.NewBand(parts.Warning, ""), buttons: parts.Flow(6),
		stale: parts.NewBand(parts.Warning, ""), past: newHistory(),
	}
	d.pastBox = parts.NewPlainSection("Over time", "", d.past)
	d.origins = parts.Column(2)
	d.came = parts.NewPlainSection("Where prices came from", "", d.origins)
	d.body = parts.Column(14,
		parts.Column(2, d.name, d.where), d.buttons, d.stale, d.caution, d.facts,
		parts.NewPlainSection("Colours", "", d.colors), parts.NewPlainSection("Prices each", "by pieces bought", d.prices), d.pastBox, d.came)
	d.body.Hide()
	d.object = container.NewStack(parts.NewSheetGround(), parts.NewScroll(parts.Inset(look.SectionPadX, look.SectionPadY, d.body)))
	return d
}

// offer adds what can be done with the style that is shown.
func (d *detail) offer(p *Place) {
	d.usual = parts.NewSmallDeed(parts.Quiet, "", func() {
		p.change(d.style, d.style.Number+" changed.", func(s *catalog.Style) { s.Usual = !s.Usual })
	})
	d.retire = parts.NewSmallDeed(parts.Quiet, "", func() {
		p.change(d.style, d.style.Number+" changed; Ctrl+Z brings it back.", func(s *catalog.Style) { s.Retired = !s.Retired })
	})
	d.buttons.Objects = []fyne.CanvasObject{
		parts.NewSmallButton(parts.Quiet, "Edit", func() { p.openStyle(d.style) }), d.usual,
		parts.NewSmallButton(parts.Quiet, "Copy", func() { p.copied(d.style) }), d.retire,
	}
}

func (d *detail) nameButtons() {
	if d.usual == nil {
		return
	}
	d.usual.SetText(map[bool]string{false: "Make it my usual", true: "Not my usual"}[d.style.Usual])
	d.retire.SetText(map[bool]string{false: "Retire", true: "Use again"}[d.style.Retired])
}

func (d *detail) clear() { d.body.Hide() }

// show shows a style with all its price entries; old is how many days old its prices are where that is too many.
func (d *detail) show(s catalog.Style, row catalog.StyleRow, entries []catalog.Price, old, limit int) {
	d.stale.SetText("")
	if old > 0 {
		d.stale.SetText(fmt.Sprintf("These prices are %d days old (limit %d).", old, limit))
	}
	size := d.past.set(entries)
	d.pastBox.Hint.SetText("size " + size + ", list price by day")
	if len(d.past.moments) > 1 {
		d.pastBox.Show()
	} else {
		d.pastBox.Hide()
	}
	d.style = s
	d.origins.Objects = origins(entries)
	if len(d.origins.Objects) == 0 {
		d.came.Hide()
	} else {
		d.came.Show()
	}
	d.nameButtons()
	d.name.SetText(s.Number + " " + s.Name)
	where := row.Supplier
	if s.Mill != "" {
		where += " · made by " + s.Mill
	}
	d.where.SetText(where)
	d.caution.SetText(s.Caution)
	d.facts.Objects = facts(s)
	d.colors.Objects = chips(s)
	d.prices.Objects = priceRows(s, row.Color.Name)
	d.body.Show()
	for _, c := range []*fyne.Container{d.facts, d.colors, d.prices, d.body} {
		c.Refresh()
	}
}

// facts are what is known of the garment, and nothing of what is not.
func facts(s catalog.Style) []fyne.CanvasObject {
	pairs := [][2]string{
		{"Category", s.Category},
		{"Fabric", s.Fabric},
		{"Weight", weight(s)},
		{"Heat limit", s.HeatLimit},
		{"Tags", strings.Join(s.Tags, ", ")},
		{"Handling", handling(s)},
		{"Prints up to", printable(s)},
		{"Priced on", s.PricedOn},
	}
	var objects []fyne.CanvasObject
	for _, p := range pairs {
		if p[1] != "" {
			objects = append(objects, parts.Row(10, []parts.Track{parts.Fixed(76), parts.Share(1)},
				parts.NewText(p[0], parts.MutedStyle), parts.NewText(p[1], parts.Style{Cut: true})))
		}
	}
	return objects
}

func weight(s catalog.Style) string {
	if s.Weight.Sign() == 0 {
		return ""
	}
	return fmt.Sprintf("%s oz/yd², %s g/m²", measure.OuncesPerSquareYard(s.Weight, 1), s.Weight)
}

// printable is the largest artwork by size, in inches.
func printable(s catalog.Style) string {
	var all []string
	for _, p := range s.Printable {
		all = append(all, fmt.Sprintf("%s %s × %s in", p.Size, p.Width, p.Height))
	}
	return strings.Join(all, ", ")
}

func handling(s catalog.Style) string {
	if s.Handling == nil {
		return ""
	}
	return s.Handling.String() + " s a piece"
}

func chips(s catalog.Style) []fyne.CanvasObject {
	var objects []fyne.CanvasObject
	for _, c := range s.Colors {
		if c.Retired {
			continue
		}
		word := c.Name
		if c.Shade != "" && c.Shade != "light" && c.Shade != "dark" {
			word += " (" + c.Shade + ")"
		}
		objects = append(objects, parts.NewChip(word, c.Hex, nil))
	}
	return objects
}

// priceRows is a table of sizes down and breaks across; sizes of one price share a row.
func priceRows(s catalog.Style, color string) []fyne.CanvasObject {
	sizes := s.Sizes
	if own, ok := s.ByColor[color]; ok {
		sizes = own
	}
	breaks := allBreaks(sizes)
	line := func(first string, style parts.Style, cells []string) fyne.CanvasObject {
		tracks := []parts.Track{parts.Share(1)}
		objects := []fyne.CanvasObject{parts.NewText(first, style.Shortened())}
		for _, c := range cells {
			tracks = append(tracks, parts.Fixed(52))
			objects = append(objects, parts.NewText(c, style.Right()))
		}
		return parts.Inset(0, 3, parts.Row(6, tracks, objects...))
	}
	var heads []string
	for _, from := range breaks {
		heads = append(heads, fmt.Sprintf("from %d", from))
	}
	objects := []fyne.CanvasObject{line("size", parts.CaptionStyle, heads), parts.NewRule()}
	for _, run := range alike(sizes, breaks) {
		objects = append(objects, line(run.name, parts.Style{}, run.cells))
	}
	return objects
}

func allBreaks(sizes []catalog.StyleSize) []int {
	seen := map[int]bool{}
	var breaks []int
	for _, s := range sizes {
		for _, b := range s.Each {
			if !seen[b.From] {
				seen[b.From] = true
				breaks = append(breaks, b.From)
			}
		}
	}
	slices.Sort(breaks)
	return breaks
}

type sizeRun struct {
	name  string
	last  string
	cells []string
}

// alike gathers neighbouring sizes that cost the same.
func alike(sizes []catalog.StyleSize, breaks []int) []sizeRun {
	var runs []sizeRun
	for _, s := range sizes {
		cells := make([]string, len(breaks))
		for i, from := range breaks {
			cells[i] = eachAt(s.Each, from)
		}
		if n := len(runs); n > 0 && strings.Join(runs[n-1].cells, "|") == strings.Join(cells, "|") {
			runs[n-1].last = s.Size
			continue
		}
		runs = append(runs, sizeRun{name: s.Size, cells: cells})
	}
	for i, r := range runs {
		if r.last != "" {
			runs[i].name = r.name + " – " + r.last
		}
	}
	return runs
}

// eachAt is the price at exactly this break, or nothing where the size has none.
func eachAt(each []quote.Break, from int) string {
	for _, b := range each {
		if b.From == from {
			return b.Each.String()
		}
	}
	return ""
}
