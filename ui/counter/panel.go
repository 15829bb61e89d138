package counter

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/chart"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// panel is the live cost panel.
type panel struct {
	scroll *container.Scroll
	column *fyne.Container
	height float32 // of the column, when it was last laid out

	hint   *parts.Band
	key    *keyFigures
	prices *priceTable
	next   *parts.Paragraph
	cost   *costList
	ladder *ladder
	bands  *bands
	levers *levers
	sheets *sheets
	dates  *dates
	drawn  *fyne.Container
	bodies *chart.Garments
	notes  *notes
}

// nextStyle is how the next break stands out.
var nextStyle = parts.Style{Color: look.Accent, Weight: parts.Semibold}

func newPanel(p *present.Counter) *panel {
	s := &panel{
		hint: parts.NewBand(parts.Note, ""), key: newKeyFigures(), prices: newPriceTable(p),
		next: parts.NewParagraph("", nextStyle),
		cost: newCostList(), ladder: newLadder(), bands: newBands(p), levers: newLevers(p), sheets: newSheets(), dates: newDates(), notes: newNotes(), bodies: chart.NewGarments(104),
	}
	s.drawn = parts.Column(8, parts.Row(8, []parts.Track{parts.Fit(), parts.Share(1)}, parts.NewText("On the garment", parts.TitleStyle),
		parts.NewText("smallest and largest size", parts.CaptionStyle.Shortened())), s.bodies.Box)
	s.column = parts.Column(16, s.hint, s.key, s.prices.box, s.next, s.dates.line, s.cost.box, s.ladder.box, s.bands.box, s.levers.box, s.dates.box, s.sheets.box, s.drawn, s.notes.box)
	s.cost.changed = s.fit
	s.scroll = parts.NewScroll(parts.Inset(20, 18, s.column))
	return s
}

// show brings the panel to a view.
func (s *panel) show(v present.Panel) {
	s.hint.SetText(v.Hint)
	full := !v.Empty
	for _, o := range []fyne.CanvasObject{s.key, s.prices.box, s.cost.box, s.ladder.box, s.levers.box} {
		visible(o, full)
	}
	visible(s.next, full && v.Next != "")
	visible(s.bands.box, full && len(v.Bands.Rows) > 0)
	visible(s.sheets.box, full && len(v.Sheets) > 0)
	visible(s.dates.line, full && v.Dates.Line != "")
	visible(s.dates.box, full && v.Dates.Line != "")
	visible(s.drawn, full && len(v.Drawn) > 0)
	visible(s.notes.box, full && len(v.Notes) > 0)
	if full {
		s.fill(v)
	}
	s.fit()
}

func (s *panel) fill(v present.Panel) {
	s.key.set(v)
	s.prices.set(v.Prices, v.Stale)
	s.next.SetText(v.Next)
	s.next.SetStyle(faint(nextStyle, v.Stale))
	s.cost.set(v.Cost, v.Stale)
	s.ladder.set(v.Ladder, v.Stale)
	s.bands.set(v.Bands, v.Stale)
	s.levers.set(v.Levers, v.Stale)
	s.sheets.set(v.Sheets, v.Stale)
	s.dates.set(v.Dates)
	s.notes.set(v.Notes)
	bodies := make([]chart.Garment, len(v.Drawn))
	for i, d := range v.Drawn {
		bodies[i] = chart.Garment(d)
	}
	s.bodies.Set(bodies)
}

// fit lays the column out anew where its height has changed.
func (s *panel) fit() {
	if h := s.column.MinSize().Height; h != s.height {
		s.height = h
		fitScroll(s.scroll, s.column)
	}
	relay(s.column)
}
