package shop

import (
	"strconv"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// lines is a small table of three columns, the last two of figures.
type lines struct {
	object *fyne.Container
	heads  []string
}

func newLines(heads ...string) *lines {
	return &lines{object: parts.Column(2), heads: heads}
}

// row is one line; a strong one is what is shown above.
type row struct {
	cells  [3]string
	strong bool
}

func (l *lines) set(rows []row) {
	line := func(style parts.Style, cells ...string) fyne.CanvasObject {
		return parts.Row(6, []parts.Track{parts.Share(2), parts.Share(2), parts.Share(2)}, parts.NewText(cells[0], style.Shortened()),
			parts.NewText(cells[1], style.Right()), parts.NewText(cells[2], style.Right()))
	}
	l.object.Objects = []fyne.CanvasObject{line(parts.CaptionStyle, l.heads...)}
	for _, r := range rows {
		style := parts.Style{}
		if r.strong {
			style = parts.StrongStyle
		}
		l.object.Add(line(style, r.cells[:]...))
	}
	l.object.Refresh()
}

// quantities are the steps of the sample job's ladder.
func quantities(r quote.Result) (rows []row) {
	for _, s := range r.Ladder {
		if s.Unserved {
			continue
		}
		rows = append(rows, row{cells: [3]string{strconv.Itoa(s.Pieces), present.Amount(s.Each), present.Amount(s.Total)}})
	}
	return rows
}

// mostCompared is how many levels are priced at once.
const mostCompared = 6

// comparedLevels prices the sample job with each level; at is the one that was priced already.
func comparedLevels(sample func(catalog.Shop) (quote.Result, error), s catalog.Shop, at int, shown quote.Result) (rows []row) {
	for i, l := range s.Levels[:min(len(s.Levels), mostCompared)] {
		result, err := shown, error(nil)
		if i != at {
			result, err = sample(levelFirst(s, i))
		}
		r := row{cells: [3]string{l.Name, "–", "–"}, strong: i == at}
		if err == nil {
			r.cells[1] = present.Amount(result.Price.Total)
			if m := result.MarginPercent; m != nil {
				r.cells[2] = *m + " %"
			}
		}
		rows = append(rows, r)
	}
	return rows
}
