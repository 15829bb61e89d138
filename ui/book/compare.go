package book

import (
	"context"
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// comparePage sets two versions of a quote side by side, line by line.
type comparePage struct {
	*sheetPage
	head  catalog.QuoteHead
	a, b  *parts.Choice
	only  *parts.Check
	lines []present.Line
	turn  int
}

// asItStands is the key of the choice that is not frozen.
const asItStands = "now"

func newComparePage(p *Place, h catalog.QuoteHead) *comparePage {
	c := &comparePage{sheetPage: newSheetPage(p, "Compare", h.Number+" · "+h.Customer), head: h}
	var options []parts.Option
	for _, r := range h.Revisions {
		name := fmt.Sprintf("revision %d", r.Number)
		if r.OptionName != "" {
			name += ", " + r.OptionName
		}
		options = append(options, parts.Option{Key: strconv.FormatInt(r.ID, 10), Name: name, Detail: present.Grouped(r.Total)})
	}
	options = append([]parts.Option{{Key: asItStands, Name: "as it stands now", Detail: present.Grouped(h.Total)}}, options...)
	c.a, c.b = parts.NewChoice(options, func(parts.Option) { c.shown() }), parts.NewChoice(options, func(parts.Option) { c.shown() })
	c.a.SetKey(options[min(len(options)-1, 2)].Key)
	c.b.SetKey(options[min(len(options)-1, 1)].Key)
	if len(h.Revisions) == 1 {
		c.a.SetKey(options[1].Key)
		c.b.SetKey(asItStands)
	}
	c.only = parts.NewCheck("only what differs", func(bool) { c.show() })
	c.only.SetChecked(true)
	c.first = c.a
	return c
}

// read is one of the two versions, priced.
func (c *comparePage) read(ctx context.Context, key string) (quote.Job, quote.Result, error) {
	if key == asItStands {
		return c.place.Compare.Standing(ctx, c.head.ID)
	}
	id, err := strconv.ParseInt(key, 10, 64)
	if err != nil {
		return quote.Job{}, quote.Result{}, err
	}
	return c.place.Ledger.Opened(ctx, id)
}

func (c *comparePage) shown() {
	c.turn++
	turn, a, b := c.turn, c.a.Key(), c.b.Key()
	parts.Background(func() func() {
		ctx := context.Background()
		jobA, resultA, err := c.read(ctx, a)
		var lines []present.Line
		if err == nil {
			var jobB quote.Job
			var resultB quote.Result
			if jobB, resultB, err = c.read(ctx, b); err == nil {
				lines = present.CompareJobs(jobA, resultA, jobB, resultB)
			}
		}
		return func() {
			if turn != c.turn {
				return
			}
			c.place.failed("The two cannot be compared", err)
			c.lines = lines
			c.show()
		}
	})
}

func (c *comparePage) show() {
	choose := parts.NewSection("Line by line", "", parts.Fields(200, parts.NewCaptioned("Before", c.a), parts.NewCaptioned("After", c.b)), c.only)
	sections := []fyne.CanvasObject{choose}
	for _, part := range []string{"Garments", "Artwork", "Price", "Cost"} {
		if t := c.table(part); t != nil {
			sections = append(sections, t)
		}
	}
	if len(sections) == 1 && len(c.lines) > 0 {
		choose.Body.Add(parts.NewText("The two say the same, to the cent.", parts.MutedStyle))
	}
	c.fill(sections...)
}

// table is the lines of one part, or nil where nothing is to be shown of it.
func (c *comparePage) table(part string) fyne.CanvasObject {
	var lines []present.Line
	for _, l := range c.lines {
		if l.Part == part && (!l.Same || !c.only.Checked()) {
			lines = append(lines, l)
		}
	}
	if len(lines) == 0 {
		return nil
	}
	return parts.NewSection(part, "", compareTable(c.a.Text(), c.b.Text(), lines))
}

// compareTable is lines under the names of the two versions.
func compareTable(a, b string, lines []present.Line) *parts.Table {
	amounts := lines[0].Part == "Price" || lines[0].Part == "Cost"
	columns := []parts.TableColumn{{Title: "", Share: 2}, {Title: a, Share: 3}, {Title: b, Share: 3}}
	if amounts {
		columns = []parts.TableColumn{{Title: "", Share: 1}, {Title: a, Width: 124, Right: true}, {Title: b, Width: 124, Right: true}, {Title: "difference", Width: 90, Right: true}}
	}
	t := parts.NewTable(columns)
	t.Whole = true
	t.Len = func() int { return len(lines) }
	t.Row = func(i int) []parts.TableCell {
		l := lines[i]
		strong := l.Name == "Total with tax" || l.Name == "Total cost"
		color := look.Muted
		if !l.Same {
			color = look.Ink
		}
		cells := []parts.TableCell{{Text: l.Name, Strong: strong || !l.Same}, {Text: l.A, Strong: strong, Color: look.Muted}, {Text: l.B, Strong: strong, Color: color}}
		if amounts {
			cells = append(cells, parts.TableCell{Text: l.Differ, Strong: true, Color: look.Accent})
		}
		return cells
	}
	return t
}
