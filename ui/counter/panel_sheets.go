package counter

import (
	"fyne.io/fyne/v2"

	"pressworth/ui/chart"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// sheets are the layouts of the gang plan, each drawn to scale beside its words.
type sheets struct {
	box  *fyne.Container
	rows []*sheetRow
	list *fyne.Container
}

type sheetRow struct {
	box                 *fyne.Container
	drawing             *chart.Sheet
	title, detail, left *parts.Text
}

func newSheets() *sheets {
	s := &sheets{list: parts.Column(12)}
	s.box = parts.Column(8, parts.NewText("Sheets", parts.TitleStyle), s.list)
	return s
}

func (s *sheets) set(list []present.Sheet, stale bool) {
	for len(s.rows) < len(list) {
		s.rows = append(s.rows, newSheetRow())
		s.list.Add(s.rows[len(s.rows)-1].box)
	}
	for i, r := range s.rows {
		visible(r.box, i < len(list))
		if i < len(list) {
			r.set(list[i], stale)
		}
	}
}

func newSheetRow() *sheetRow {
	r := &sheetRow{
		drawing: chart.NewSheet(124, 92), title: parts.NewText("", parts.StrongStyle.Shortened()),
		detail: parts.NewText("", parts.MutedStyle.Shortened()), left: parts.NewText("", parts.MutedStyle.Shortened()),
	}
	words := parts.Column(1, r.title, r.detail, r.left)
	r.box = parts.Row(16, []parts.Track{parts.Fixed(124), parts.Share(1)}, r.drawing, words)
	return r
}

func (r *sheetRow) set(s present.Sheet, stale bool) {
	l := chart.Layout{Width: s.Width, Height: s.Height, Edge: s.Edge, Film: isFilm(s.Kind)}
	for _, p := range s.Pieces {
		l.Pieces = append(l.Pieces, chart.Piece(p))
	}
	r.drawing.Set(l, stale)
	r.title.Set(s.Title, faint(parts.StrongStyle.Shortened(), stale))
	r.detail.SetText(s.Detail)
	visible(r.left, s.Left != "")
	r.left.SetText(s.Left)
}

// notes are warnings and cautions.
type notes struct {
	box   *fyne.Container
	bands []*parts.Band
	plain []*parts.Paragraph
}

func newNotes() *notes { return &notes{box: parts.Column(8)} }

func (n *notes) set(list []present.Note) {
	for len(n.bands) < len(list) {
		b, p := parts.NewBand(parts.Warning, ""), parts.NewParagraph("", parts.Style{Color: look.Muted})
		n.bands, n.plain = append(n.bands, b), append(n.plain, p)
		n.box.Add(b)
		n.box.Add(p)
	}
	for i, b := range n.bands {
		warning, plain := "", ""
		switch {
		case i < len(list) && list[i].Warning:
			warning = list[i].Text
		case i < len(list):
			plain = list[i].Text
		}
		b.SetText(warning)
		n.plain[i].SetText(plain)
		visible(n.plain[i], plain != "")
	}
}
