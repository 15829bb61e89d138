package blanks

import (
	"context"
	"fmt"
	"time"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Focus is part of the window's Place.
func (p *Place) Focus() {
	switch {
	case p.page != nil && p.page.object.Visible() && p.page.form != nil:
		parts.Focus(p.page.form.Field("file"))
	case p.houses != nil && p.houses.object.Visible():
		parts.Focus(p.houses.form.Field("name"))
	case p.editor != nil && p.editor.object.Visible() && p.editor.form != nil:
		parts.Focus(p.editor.form.Field("number"))
	default:
		parts.Focus(p.search)
	}
}

// Shown reads the list anew: prices may have changed.
func (p *Place) Shown() { p.find(p.search.Text()) }

// find looks for words as they are typed; without any it lists what the filter lets through.
func (p *Place) find(words string) {
	p.turn++
	turn, filter := p.turn, p.filter.value()
	parts.Background(func() func() {
		s, err := p.read(words, filter)
		rules := p.readRules()
		return func() {
			if turn != p.turn {
				return
			}
			p.rules, p.words, p.sight = rules, words, s
			p.failed(err)
			p.told()
			p.detail.clear()
			p.table.Reset()
			p.table.Select(0)
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

// read searches, or lists with its first page there already.
func (p *Place) read(words string, filter catalog.StyleFilter) (*sight, error) {
	ctx := context.Background()
	if words != "" {
		filter.Words = words
		rows, err := p.catalog.FindFiltered(ctx, filter, found)
		return &sight{Found: rows}, err
	}
	l, err := p.catalog.List(ctx, filter)
	if err != nil {
		return &sight{}, err
	}
	s := parts.NewSight(l)
	return s, s.Read(ctx, 0)
}

func (p *Place) failed(err error) {
	if err != nil {
		p.fault.SetText("The blanks could not be read: " + err.Error())
		return
	}
	p.fault.SetText("")
}

func (p *Place) told() {
	n := p.sight.Len()
	text := present.Grouped(fmt.Sprint(n)) + " rows"
	switch {
	case n == 1:
		text = "1 row"
	case p.words != "" && n == found:
		text = fmt.Sprintf("first %d", n)
	}
	p.count.SetText(text)
}

// fetch reads the page that a row lies on, if it is not there and nobody is reading it.
func (p *Place) fetch(i int) {
	s := p.sight
	s.Fetch(i, func(from, to int, err error) {
		if s != p.sight {
			return
		}
		p.failed(err)
		if err != nil {
			return
		}
		p.table.Reload()
		if i := p.table.Selected(); i >= from && i < to {
			p.selected(i)
		}
	})
}

func (p *Place) row(i int) []parts.TableCell {
	r, there := p.sight.At(i)
	if !there {
		p.fetch(i)
		if r, there = p.sight.At(i); !there {
			return []parts.TableCell{{}, {Text: "…", Color: look.Muted}}
		}
	}
	color := parts.TableCell{Text: r.Color.Name, Hex: r.Color.Hex}
	if r.Color.Name == "" {
		color = parts.TableCell{Text: colours(r.Colors), Color: look.Muted}
	}
	priced := parts.TableCell{Text: r.PricedOn, Color: look.Muted}
	if p.rules.Stale(r.PricedOn, p.today()) > 0 {
		priced = parts.TableCell{Text: r.PricedOn + " !", Color: look.Warn, Strong: true}
	}
	return []parts.TableCell{
		{Text: r.Supplier, Color: look.Muted},
		{Text: r.Number, Strong: true},
		{Text: r.Name, Strong: r.Usual},
		color,
		{Text: r.Sizes},
		{Text: r.From.String()},
		priced,
	}
}

func colours(n int) string {
	if n == 1 {
		return "1 colour"
	}
	return fmt.Sprintf("%d colours", n)
}

// selected shows the style of a row beside the table.
func (p *Place) selected(i int) {
	r, there := p.sight.At(i)
	if !there {
		p.fetch(i)
		return
	}
	turn := p.turn
	parts.Background(func() func() {
		ctx := context.Background()
		style, err := p.catalog.Style(ctx, r.StyleID)
		var entries []catalog.Price
		if err == nil {
			entries, err = p.catalog.Prices(ctx, r.StyleID)
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
