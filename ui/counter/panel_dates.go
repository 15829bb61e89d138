package counter

import (
	"reflect"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// dates are by when the job can be ready, a line near the price, and by when each thing has to be ordered, a part of its
// own further down.
type dates struct {
	line  *parts.Text
	box   *fyne.Container
	basis *parts.Paragraph
	rows  *fyne.Container
	shown present.Dates
}

func newDates() *dates {
	d := &dates{line: parts.NewText("", parts.StrongStyle.Shortened()), basis: parts.NewParagraph("", parts.CaptionStyle), rows: parts.Column(5)}
	d.box = parts.Column(6, parts.NewText("Dates", parts.TitleStyle), d.basis, d.rows)
	return d
}

func (d *dates) set(v present.Dates) {
	if reflect.DeepEqual(v, d.shown) {
		return
	}
	d.shown = v
	d.line.SetText(v.Line)
	d.line.SetStyle(inTime(parts.StrongStyle.Shortened(), v.Late))
	d.basis.SetText(v.Basis)
	d.rows.Objects = nil
	for _, r := range v.Rows {
		d.rows.Add(parts.Column(0,
			parts.Row(10, []parts.Track{parts.Share(1), parts.Fit()}, parts.NewText(r.Name, parts.BodyStyle.Shortened()),
				parts.NewText(r.When, inTime(parts.BodyStyle.Right(), r.Late))),
			parts.NewText(r.Basis, parts.CaptionStyle.Shortened())))
	}
	d.rows.Refresh()
}

// inTime colours what is late; the words say the same.
func inTime(s parts.Style, late bool) parts.Style {
	if late {
		return s.In(look.Fault)
	}
	return s
}
