package counter

import (
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// garments are the garment lines, and the search that adds to them.
type garments struct {
	section   *parts.Section
	search    *parts.Typeahead
	count     *parts.Text
	list      *fyne.Container
	blocks    []*block
	presenter *present.Counter
	next      func() // where Enter leads from an empty search
	changed   func() // the height has changed
}

// ownKey is the option that takes what was typed for a customer's own garment.
const ownKey = "own"

func newGarments(p *present.Counter) *garments {
	g := &garments{presenter: p, count: parts.NewText("", parts.MutedStyle), list: parts.Column(12)}
	g.search = parts.NewTypeahead("Search blanks…", func(text string, show func([]parts.Option)) {
		show(styleOptions(p.FindStyles(text), text))
	})
	g.search.OpenEmpty = true
	g.search.OnChosen = g.take
	g.search.OnUnknown = func(text string) {
		if strings.TrimSpace(text) == "" {
			g.next()
		}
	}
	g.section = parts.NewSection("Garments", "type a style, a colour, a word", g.search.Field, g.list)
	g.section.Right.Add(g.count)
	return g
}

func styleOptions(found []catalog.StyleRow, text string) []parts.Option {
	options := make([]parts.Option, 0, len(found)+1)
	for _, r := range found {
		name, detail := present.Describe(r)
		options = append(options, parts.Option{Name: name, Detail: detail, Hex: r.Color.Hex, Any: r})
	}
	if text = strings.TrimSpace(text); text != "" {
		options = append(options, parts.Option{Key: ownKey, Name: "Customer's own: " + text, Detail: "a garment they bring", Any: text})
	}
	return options
}

// take adds the chosen garment and goes on to its sizes, or to its colour where that is still open.
func (g *garments) take(o parts.Option) {
	g.search.Field.SetText("")
	if o.Key == ownKey {
		g.focusCells(g.presenter.AddOwnGarment(o.Any.(string)))
		return
	}
	r := o.Any.(catalog.StyleRow)
	key := g.presenter.AddGarment(r.StyleID, r.Color.Name)
	if r.Color.Name == "" {
		if b, row := g.find(key); row != nil {
			b.focusColor(row)
			return
		}
	}
	g.focusCells(key)
}

func (g *garments) focusCells(key string) {
	if _, row := g.find(key); row != nil {
		row.cells.Focus(0)
	}
}

func (g *garments) find(key string) (*block, *blockRow) {
	for _, b := range g.blocks {
		for _, r := range b.rows {
			if r.key == key && r.used {
				return b, r
			}
		}
	}
	return nil, nil
}

// reach puts the focus into the search.
func (g *garments) reach() { parts.Focus(g.search.Field) }

func (g *garments) show(v *present.View, anew bool) {
	g.count.SetText(v.Form.Pieces)
	visible(g.count, len(v.Form.Blocks) > 0)
	for len(g.blocks) < len(v.Form.Blocks) {
		b := newBlock(g)
		g.blocks = append(g.blocks, b)
		g.list.Add(b.box)
	}
	most := 0
	for _, b := range v.Form.Blocks {
		most = max(most, len(b.Sizes))
	}
	for i, b := range g.blocks {
		visible(b.box, i < len(v.Form.Blocks))
		if i < len(v.Form.Blocks) {
			b.show(v.Form.Blocks[i], most, anew)
		} else {
			b.clear()
		}
	}
	visible(g.list, len(v.Form.Blocks) > 0)
}

// step goes from a cell to the same size of another row: by is how many rows down.
func (g *garments) step(from *blockRow, at, by int) {
	var rows []*blockRow
	here := 0
	for _, b := range g.blocks {
		for _, r := range b.rows {
			if !r.used {
				continue
			}
			if r == from {
				here = len(rows)
			}
			rows = append(rows, r)
		}
	}
	switch to := here + by; {
	case to < 0:
		g.reach()
	case to < len(rows):
		rows[to].cells.Focus(at)
	default:
		g.next()
	}
}

// measures of a block at 100 %.
const (
	blockHeadTall = 24
	blockRowApart = 5
	blockTotal    = 40
	blockRemove   = 24
	blockLabel    = 100
	problemTall   = 17
	ownTall       = 50
)

func px(v float32) float32 { return look.Px(v) }
