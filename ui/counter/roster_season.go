package counter

import (
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// season holds the roster against that of the season before: from an earlier quote of the customer, or from a file.
type season struct {
	box    *fyne.Container
	open   *parts.Button
	head   *parts.Text
	choose *fyne.Container // where the list may come from
	quotes []*parts.Button
	past   []catalog.PastRoster
	words  *parts.Paragraph
	take   *parts.Button
	close  *parts.Button
	roster *roster
	asking bool
}

// seasonQuotes is how many earlier quotes are offered.
const seasonQuotes = 4

func newSeason(r *roster) *season {
	s := &season{roster: r, words: parts.NewParagraph("", parts.CaptionStyle), head: parts.NewText("", parts.StrongStyle)}
	p := r.presenter
	s.open = parts.NewSmallButton(parts.Quiet, "Last season…", s.begin)
	s.choose = parts.Flow(8)
	for i := range seasonQuotes {
		b := parts.NewSmallButton(parts.Quiet, "", func() { s.with(func() { p.CompareWith(s.past[i]) }) })
		s.quotes = append(s.quotes, b)
		s.choose.Add(b)
	}
	s.choose.Add(parts.NewSmallButton(parts.Quiet, "From a file…", func() {
		r.ask(func(name string, rows [][]string) { s.with(func() { p.CompareWithFile(name, rows) }) })
	}))
	s.take = parts.NewSmallButton(parts.Quiet, "Put those not on the list onto it", p.TakeLastRoster)
	s.close = parts.NewSmallButton(parts.Quiet, "Close the comparison", func() { s.with(p.CompareNoMore) })
	s.box = parts.Column(6, s.head, s.choose, s.words, parts.Flow(8, s.take, s.close))
	s.box.Hide()
	return s
}

// begin asks where last season's list is.
func (s *season) begin() {
	s.asking = true
	s.past = s.roster.presenter.EarlierRosters()
	s.show(s.roster.view)
	s.roster.changed()
}

func (s *season) with(do func()) {
	s.asking = false
	do()
	s.roster.changed()
}

func (s *season) show(v present.Roster) {
	comparing := v.SeasonOf != ""
	visible(s.box, comparing || s.asking)
	visible(s.choose, s.asking)
	visible(s.words, comparing)
	visible(s.take, comparing)
	if s.asking {
		s.head.SetText("Where is last season’s list?")
	} else {
		s.head.SetText("Against " + v.SeasonOf)
	}
	for i, b := range s.quotes {
		visible(b, i < len(s.past))
		if i < len(s.past) {
			b.SetText(strings.TrimSpace(s.past[i].Number + " " + s.past[i].Title))
		}
	}
	s.words.SetText(strings.Join(v.Season, "\n"))
}
