package blanks

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// columnStep shows which column holds what, to be corrected once for a supplier.
func (g *importPage) columnStep() {
	headers := g.sheet.headers()
	options := []parts.Option{{Name: "–"}}
	for _, h := range headers {
		if h != "" && !slices.ContainsFunc(options, func(o parts.Option) bool { return o.Key == h }) {
			options = append(options, parts.Option{Key: h, Name: h})
		}
	}
	g.form.Forget("column.")
	var fields []fyne.CanvasObject
	for _, field := range g.sheet.Fields {
		fields = append(fields, g.form.Choice("column."+field, fieldWord(field), options))
		g.form.Set("column."+field, g.sheet.Matched.Fields[field])
	}
	sizes := g.form.Text("column.sizes", "Columns that are sizes, divided by commas", "where the file has one row a style")
	g.form.Set("column.sizes", strings.Join(g.sheet.Matched.Sizes, ", "))
	section := parts.NewSection("Columns", "2 · "+g.sheet.Kind+" file; remembered for "+g.supplier().Name, g.headTable(), parts.Fields(150, fields...), sizes,
		parts.Row(8, nil, g.nextButton(1, "Compare", g.compare)))
	g.steps.Objects = append(g.steps.Objects[:1:1], section)
	g.steps.Refresh()
	parts.Focus(g.next[1])
}

func fieldWord(field string) string {
	words := strings.ReplaceAll(field, "_", " ")
	if field == "color" {
		return "colour"
	}
	return words
}

// headTable is the first rows of the file.
func (g *importPage) headTable() fyne.CanvasObject {
	rows := g.sheet.Head[:min(len(g.sheet.Head), 6)]
	wide := 0
	for _, r := range rows {
		wide = max(wide, len(r))
	}
	wide = min(wide, 10)
	column := parts.Column(2)
	for i, r := range rows {
		style := parts.MutedStyle.Shortened()
		if i == 0 {
			style = parts.StrongStyle.Shortened()
		}
		var cells []fyne.CanvasObject
		var tracks []parts.Track
		for c := range wide {
			text := ""
			if c < len(r) {
				text = r[c]
			}
			cells = append(cells, parts.NewText(text, style))
			tracks = append(tracks, parts.Share(1))
		}
		column.Add(parts.Row(10, tracks, cells...))
	}
	return column
}

func (g *importPage) matching() Matching {
	m := g.sheet.Matched
	m.Fields = map[string]string{}
	for _, field := range g.sheet.Fields {
		if header := g.form.Get("column." + field); header != "" {
			m.Fields[field] = header
		}
	}
	r := form.Reader{Get: g.form.Get}
	m.Sizes = r.Words("column.sizes")
	return m
}

// report is the third step: what the file would change.
type report struct {
	take  *parts.Button
	chips []*parts.Chip
	kinds []string
	shown string
	table *parts.Table
	rows  []catalog.PriceChange
	all   catalog.ImportReport
}

const refusedKind = "refused"

func (g *importPage) reportStep() {
	r := &report{all: g.compared.Report}
	g.report = r
	chips := parts.Flow(6)
	for _, kind := range []string{catalog.ChangeNew, catalog.ChangeDearer, catalog.ChangeCheaper, catalog.ChangeSame, catalog.ChangeGone, refusedKind} {
		n := r.all.Counts[kind]
		if kind == refusedKind {
			n = r.all.Refused
		}
		chip := parts.NewWordChip(fmt.Sprintf("%s %d", kind, n), func() { r.show(kind) })
		r.chips, r.kinds = append(r.chips, chip), append(r.kinds, kind)
		chips.Add(chip)
	}
	r.table = parts.NewTable([]parts.TableColumn{
		{Title: "line", Width: 52, Right: true},
		{Title: "style", Width: 90},
		{Title: "colour", Share: 2},
		{Title: "size", Width: 52},
		{Title: "before", Share: 2, Right: true},
		{Title: "after, or why not", Share: 3, Right: true},
	})
	r.table.Len = func() int { return len(r.rows) }
	r.table.Row = r.row
	r.table.Empty = "None."
	r.take = g.nextButton(2, "Take these prices", g.apply).Deed()
	section := parts.NewSection("What changes", "3 · nothing has been changed yet", parts.NewParagraph(r.words(), parts.Style{}), chips,
		container.New(tall{260}, r.table))
	g.steps.Objects = append(g.steps.Objects[:2:2], section)
	if len(g.compared.Touched) > 0 {
		g.steps.Objects = append(g.steps.Objects, touchedSection(g.compared.Touched))
	}
	g.steps.Objects = append(g.steps.Objects, parts.Row(8, nil, r.take))
	g.steps.Refresh()
	r.show(r.most())
	g.scroll.Refresh()
	g.scroll.ScrollToBottom()
	parts.Focus(r.take)
}

// words sums the report up.
func (r *report) words() string {
	a := r.all
	out := fmt.Sprintf("%s read. New styles: %d. No longer listed: %d.", many(a.Rows, "row"), a.NewStyles, a.Gone)
	if a.Counts[catalog.ChangeDearer] > 0 {
		out += fmt.Sprintf(" Dearer by %s, from %s to %s.", share(a.DearerBy.Middle), share(a.DearerBy.Least), share(a.DearerBy.Most))
	}
	if a.Counts[catalog.ChangeCheaper] > 0 {
		out += fmt.Sprintf(" Cheaper by %s, from %s to %s.", share(a.CheaperBy.Middle), share(a.CheaperBy.Least), share(a.CheaperBy.Most))
	}
	if a.Refused > 0 {
		out += fmt.Sprintf(" Not taken: %s, each with its reason below.", many(a.Refused, "row"))
	}
	return out
}

// most is the kind of change there is most of, leaving out what does not change.
func (r *report) most() string {
	best, most := catalog.ChangeNew, 0
	for _, k := range r.kinds {
		n := r.all.Counts[k]
		if k == refusedKind {
			n = r.all.Refused
		}
		if k != catalog.ChangeSame && n > most {
			best, most = k, n
		}
	}
	return best
}

func many(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

func share(percent float64) string {
	return strconv.FormatFloat(max(percent, -percent), 'f', 1, 64) + " %"
}

func percent(perMille int64) string { return strconv.FormatInt(perMille/10, 10) + " %" }

// show lists the changes of one kind; the report keeps the first thousand of all.
func (r *report) show(kind string) {
	r.shown, r.rows = kind, nil
	for i, c := range r.chips {
		c.SetChosen(r.kinds[i] == kind)
	}
	if kind == refusedKind {
		for _, x := range r.all.Refusals {
			r.rows = append(r.rows, catalog.PriceChange{Kind: kind, Line: x.Line, Style: x.Field, After: x.Reason})
		}
	}
	for _, c := range r.all.Changes {
		if c.Kind == kind {
			r.rows = append(r.rows, c)
		}
	}
	r.table.Reset()
}

func (r *report) row(i int) []parts.TableCell {
	c := r.rows[i]
	line := ""
	if c.Line > 0 {
		line = strconv.Itoa(c.Line)
	}
	after := parts.TableCell{Text: inWords(c.After), Strong: c.Kind == catalog.ChangeDearer}
	if c.Kind == refusedKind {
		after = parts.TableCell{Text: c.After, Color: look.Fault}
	}
	return []parts.TableCell{
		{Text: line, Color: look.Muted},
		{Text: c.Style, Strong: true},
		{Text: c.Color},
		{Text: c.Size},
		{Text: inWords(c.Before), Color: look.Muted},
		after,
	}
}

func touchedSection(quotes []catalog.TouchedQuote) fyne.CanvasObject {
	t := parts.NewTable([]parts.TableColumn{
		{Title: "quote", Width: 82},
		{Title: "customer", Share: 2},
		{Title: "total before", Width: 80, Right: true},
		{Title: "after", Width: 80, Right: true},
		{Title: "margin before", Width: 84, Right: true},
		{Title: "after", Width: 64, Right: true},
		{Title: "", Share: 1},
	})
	t.Len = func() int { return len(quotes) }
	t.Row = func(i int) []parts.TableCell {
		q := quotes[i]
		note := parts.TableCell{Text: q.Unpriced, Color: look.Muted}
		if q.BelowFloor {
			note = parts.TableCell{Text: "below the floor", Color: look.Fault, Strong: true}
		}
		return []parts.TableCell{
			{Text: q.Number, Strong: true},
			{Text: q.Customer},
			{Text: q.TotalBefore},
			{Text: q.TotalAfter},
			{Text: q.MarginBefore},
			{Text: q.MarginAfter},
			note,
		}
	}
	return parts.NewSection("Open quotes it touches", "", container.New(tall{150}, t))
}

// tall gives its object a height at 100 %.
type tall struct{ height float32 }

func (t tall) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(o[0].MinSize().Width, look.Px(t.height))
}

func (t tall) Layout(o []fyne.CanvasObject, s fyne.Size) { o[0].Resize(s) }
