package blanks

import (
	"context"
	"fmt"
	"time"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Focus is part of the window's Place.
func (p *Place) Focus() {
	if p.page != nil && p.page.object.Visible() && p.page.form != nil {
		parts.Focus(p.page.form.Field("file"))
		return
	}
	if p.editor != nil && p.editor.object.Visible() && p.editor.form != nil {
		parts.Focus(p.editor.form.Field("number"))
		return
	}
	parts.Focus(p.search)
}

// Shown reads the list anew: prices may have changed.
func (p *Place) Shown() { p.find(p.search.Text()) }

// find looks for words as they are typed; without any it lists everything.
func (p *Place) find(words string) {
	p.turn++
	turn := p.turn
	parts.Background(func() func() {
		rows, err := p.read(words, 0)
		rules := p.readRules()
		return func() {
			if turn != p.turn {
				return
			}
			p.rules = rules
			p.words, p.rows = words, rows
			p.more = words == "" && len(rows) == page
			p.failed(err)
			p.asking = false
			p.table.Reset()
			p.told()
			p.table.Select(0)
			if len(rows) == 0 {
				p.detail.clear()
			}
		}
	})
}

func (p *Place) today() string { return p.now().Format(time.DateOnly) }

// readRules reads the shop's rules; where that fails nothing is flagged, and the failure is said in the Shop place.
func (p *Place) readRules() catalog.Shop {
	if p.Rules == nil {
		return catalog.Shop{}
	}
	rules, err := p.Rules(context.Background())
	if err != nil {
		return catalog.Shop{}
	}
	return rules
}

func (p *Place) read(words string, after int64) ([]catalog.StyleRow, error) {
	if words == "" {
		return p.catalog.Styles(context.Background(), after, page)
	}
	return p.catalog.FindBlanks(context.Background(), words, found)
}

func (p *Place) failed(err error) {
	if err != nil {
		p.fault.SetText("The blanks could not be read: " + err.Error())
		return
	}
	p.fault.SetText("")
}

func (p *Place) told() {
	switch n := len(p.rows); {
	case p.more || p.words != "" && n == found:
		p.count.SetText(fmt.Sprintf("first %d", n))
	case n == 1:
		p.count.SetText("1 row")
	default:
		p.count.SetText(fmt.Sprintf("%d rows", n))
	}
}

// next reads the rows after those there are.
func (p *Place) next() {
	if !p.more || p.asking || len(p.rows) == 0 {
		return
	}
	p.asking = true
	turn, after := p.turn, p.rows[len(p.rows)-1].StyleID
	parts.Background(func() func() {
		rows, err := p.read("", after)
		return func() {
			p.asking = false
			if turn != p.turn {
				return
			}
			p.failed(err)
			p.rows = append(p.rows, rows...)
			p.more = err == nil && len(rows) == page
			p.table.Reload()
			p.told()
		}
	})
}

// ahead is how many rows before the end the next ones are asked for.
const ahead = 60

func (p *Place) row(i int) []parts.TableCell {
	if i > len(p.rows)-ahead {
		p.next()
	}
	r := p.rows[i]
	color := parts.TableCell{Text: r.Color.Name, Hex: r.Color.Hex}
	if r.Color.Name == "" {
		color = parts.TableCell{Text: colours(r.Colors), Color: look.Muted}
	}
	name := parts.TableCell{Text: r.Name, Strong: r.Usual}
	priced := parts.TableCell{Text: r.PricedOn, Color: look.Muted}
	if p.rules.Stale(r.PricedOn, p.today()) > 0 {
		priced = parts.TableCell{Text: r.PricedOn + " !", Color: look.Warn, Strong: true}
	}
	return []parts.TableCell{
		{Text: r.Supplier, Color: look.Muted}, {Text: r.Number, Strong: true}, name, color,
		{Text: r.Sizes}, {Text: r.From.String()}, priced,
	}
}

func colours(n int) string {
	if n == 1 {
		return "1 colour"
	}
	return fmt.Sprintf("%d colours", n)
}

func (p *Place) selected(i int) {
	if i >= len(p.rows) {
		return
	}
	r := p.rows[i]
	turn := p.turn
	parts.Background(func() func() {
		style, err := p.catalog.Style(context.Background(), r.StyleID)
		var entries []catalog.Price
		if err == nil {
			entries, err = p.catalog.Prices(context.Background(), r.StyleID)
		}
		return func() {
			if turn != p.turn || p.table.Selected() != i {
				return
			}
			p.failed(err)
			if err == nil {
				p.detail.show(style, r, entries, p.rules.Stale(style.PricedOn, p.today()), p.rules.StaleDays)
			}
		}
	})
}

// searchKey lets the arrows move the mark while the focus stays in the search box.
func (p *Place) searchKey(e *fyne.KeyEvent) bool {
	switch e.Name {
	case fyne.KeyDown, fyne.KeyUp, fyne.KeyPageDown, fyne.KeyPageUp:
		p.table.TypedKey(e)
		return true
	case fyne.KeyEscape:
		if p.search.Text() == "" {
			return false
		}
		p.search.SetText("")
		p.find("")
		return true
	}
	return false
}
