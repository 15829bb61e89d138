package book

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// detail is the marked quote, at the right of the table.
type detail struct {
	object fyne.CanvasObject
	state  *parts.Badge
	number *parts.Text
	name   *parts.Text
	title  *parts.Text
	total  *parts.Text
	facts  *fyne.Container
	body   *fyne.Container
}

func newDetail(p *Place) *detail {
	d := &detail{
		state: parts.NewBadge("", look.Muted), number: parts.NewText("", parts.MutedStyle),
		name: parts.NewText("", parts.KeyStyle.Shortened()), title: parts.NewText("", parts.MutedStyle.Shortened()),
		total: parts.NewText("", parts.DisplayStyle), facts: parts.Column(4),
	}
	open := parts.NewButton(parts.Filled, "Open on the counter", "", func() { p.opened(p.table.Selected()) })
	again := parts.NewButton(parts.Quiet, "Same again", "", func() {
		p.fetch(p.table.Selected(), func(c catalog.Draft) { p.OnCopy(c) })
	})
	d.body = parts.Column(14,
		parts.Row(8, []parts.Track{parts.Fit(), parts.Share(1)}, d.state, d.number),
		parts.Column(2, d.name, d.title),
		parts.Column(0, parts.NewText("total with tax", parts.CaptionStyle), d.total),
		d.facts, parts.Flow(8, open, again))
	d.body.Hide()
	d.object = container.NewStack(parts.NewSheetGround(), parts.NewScroll(parts.Inset(look.SectionPadX, look.SectionPadY, d.body)))
	return d
}

func (d *detail) clear() { d.body.Hide() }

func (d *detail) show(r catalog.QuoteRow) {
	d.state.Set(r.State, StateColor(r.State))
	d.number.SetText(r.Number)
	d.name.SetText(or(r.Customer, "no name yet"))
	d.title.SetText(r.Title)
	d.total.SetText(or(present.Grouped(r.Total), "–"))
	pieces, margin := "", ""
	if r.Pieces > 0 {
		pieces = fmt.Sprint(r.Pieces)
	}
	if r.Margin != "" {
		margin = r.Margin + " %"
	}
	d.facts.Objects = nil
	for _, f := range [][2]string{{"Pieces", pieces}, {"Margin", margin}, {"Needed by", r.NeededBy}, {"Next step", r.NextStep}, {"Changed", day(r.Changed)}} {
		if f[1] != "" {
			d.facts.Add(parts.Row(10, []parts.Track{parts.Fixed(80), parts.Share(1)},
				parts.NewText(f[0], parts.MutedStyle), parts.NewText(f[1], parts.Style{Cut: true})))
		}
	}
	d.body.Show()
	d.facts.Refresh()
	d.body.Refresh()
}

func or(text, instead string) string {
	if text == "" {
		return instead
	}
	return text
}

// day is the day and minute of an RFC 3339 time.
func day(changed string) string {
	if len(changed) >= 16 {
		return changed[:10] + " " + changed[11:16]
	}
	return changed
}
