package counter

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/chart"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// levers are what would change the price most, behind a link: they take work that is done only while they are shown.
type levers struct {
	box  *fyne.Container
	link *parts.Button
	note *parts.Text
	bars *chart.Levers
	open bool
}

func newLevers(p *present.Counter) *levers {
	l := &levers{bars: chart.NewLevers(), note: parts.NewText("", parts.CaptionStyle.Shortened())}
	l.link = parts.NewButton(parts.Link, "", "", func() { p.OpenLevers(!l.open) })
	head := parts.Row(4, []parts.Track{parts.Fit(), parts.Share(1)}, l.link, l.note)
	l.box = parts.Column(6, parts.Inset(-4, 0, head), l.bars) // the link's word, not its ground, stands at the edge
	return l
}

func (l *levers) set(v present.Levers, stale bool) {
	l.open = v.Open
	words := map[bool]string{false: "What would change this price most?", true: "What would change this price most"}
	l.link.SetText(words[v.Open])
	note := ""
	if v.Open {
		note = "each ±10 %, before rounding"
		if v.Seeking && len(v.Rows) == 0 {
			note = "being worked out…"
		}
	}
	l.note.SetText(note)
	visible(l.bars, v.Open && len(v.Rows) > 0)
	rows := make([]chart.Lever, len(v.Rows))
	for i, r := range v.Rows {
		rows[i] = chart.Lever(r)
	}
	l.bars.Set(rows, stale || v.Seeking)
}
