package book

import (
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// detail is the marked quote, at the right of the table.
type detail struct {
	list   *list
	object fyne.CanvasObject
	state  *parts.Badge
	number *parts.Text
	name   *parts.Text
	title  *parts.Text
	total  *parts.Text
	facts  *fyne.Container
	body   *fyne.Container
	id     int64
}

func newDetail(l *list) *detail {
	d := &detail{
		list: l, state: parts.NewBadge("", look.Muted), number: parts.NewText("", parts.MutedStyle.Shortened()),
		name: parts.NewText("", parts.KeyStyle.Shortened()), title: parts.NewText("", parts.MutedStyle.Shortened()),
		total: parts.NewText("", parts.DisplayStyle), facts: parts.Column(4),
	}
	open := parts.NewButton(parts.Filled, "Open", "Enter", func() { l.place.openQuote(d.id) })
	counter := parts.NewButton(parts.Quiet, "On the counter", "", func() { l.place.toCounter(d.id) })
	again := parts.NewDeed(parts.Quiet, "Same again", "", func() { l.place.again(d.id, 0) })
	d.body = parts.Column(14,
		parts.Row(8, []parts.Track{parts.Fit(), parts.Share(1)}, d.state, d.number),
		parts.Column(2, d.name, d.title),
		parts.Column(0, parts.NewText("total with tax", parts.CaptionStyle), d.total),
		d.facts, parts.Flow(8, open, counter, again))
	d.body.Hide()
	d.object = container.NewStack(parts.NewSheetGround(), parts.NewScroll(parts.Inset(look.SectionPadX, look.SectionPadY, d.body)))
	return d
}

func (d *detail) clear() { d.body.Hide() }

func (d *detail) show(r catalog.QuoteRow) {
	d.id = r.ID
	d.state.Set(r.State, StateColor(r.State))
	d.number.SetText(numbered(r))
	d.name.SetText(or(r.Customer, "no name yet"))
	d.title.SetText(r.Title)
	d.total.SetText(or(present.Grouped(r.Total), "–"))
	p := d.list.place
	pieces := ""
	if r.Pieces > 0 {
		pieces = fmt.Sprint(r.Pieces)
	}
	d.facts.Objects = facts(80, [][2]string{
		{"Pieces", pieces},
		{"Margin", percent(r.Margin)},
		{"Needed by", p.until(r.NeededBy)},
		{"Next step", r.NextStep},
		{"Follow up", openDay(r, p.until(r.FollowUp))},
		{"Holds until", openDay(r, p.day(r.Expires))},
		{"Paid", paid(r)},
		{"Changed", changed(p, r.Changed)},
	})
	d.body.Show()
	d.facts.Refresh()
	d.body.Refresh()
}

// numbered is a quote's number with its latest revision.
func numbered(r catalog.QuoteRow) string {
	text := r.Number
	if r.Revision > 0 {
		text += fmt.Sprintf(" · revision %d", r.Revision)
	}
	if r.Options > 1 {
		text += fmt.Sprintf(" · %d options", r.Options)
	}
	return text
}

// openDay is a day that says something only while a quote waits for its answer.
func openDay(r catalog.QuoteRow, day string) string {
	if r.State != catalog.Sent && r.State != catalog.Drafted {
		return ""
	}
	return day
}

func paid(r catalog.QuoteRow) string {
	if r.Paid == "" || strings.Trim(r.Paid, "0.") == "" {
		return ""
	}
	return present.Grouped(r.Paid)
}

// facts are names and values in two columns, without those that say nothing.
func facts(wide float32, pairs [][2]string) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, f := range pairs {
		if f[1] != "" {
			out = append(out, parts.Row(10, []parts.Track{parts.Fixed(wide), parts.Share(1)},
				parts.NewText(f[0], parts.MutedStyle), parts.NewText(f[1], parts.Style{Cut: true})))
		}
	}
	return out
}

func or(text, instead string) string {
	if text == "" {
		return instead
	}
	return text
}
