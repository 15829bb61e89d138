package book

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Open is an open quote as it is priced at present.
type Open struct {
	Number, Customer string
	Job              quote.Job
}

// sharing says which open quotes could be printed on one another's sheets. It stands at the right of the table in the
// place of the marked quote.
type sharing struct {
	object *fyne.Container
	list   *fyne.Container
	fault  *parts.Band
	turn   int
}

func newSharing(back func()) *sharing {
	s := &sharing{list: parts.Column(14), fault: parts.NewBand(parts.Fault, "")}
	body := parts.Column(12,
		parts.NewText("Share sheets", parts.KeyStyle),
		parts.NewParagraph("Open quotes with prints on the same sheet card and in the same inks can ride on one another's sheets. Each quote keeps its own price until you say otherwise.", parts.MutedStyle),
		s.fault, s.list, parts.Flow(8, parts.NewButton(parts.Quiet, "Back to the quote", "", back)))
	s.object = container.NewStack(parts.NewSheetGround(), parts.NewScroll(parts.Inset(look.SectionPadX, look.SectionPadY, body)))
	s.object.Hide()
	return s
}

// look plans all open quotes together, off the window's goroutine.
func (s *sharing) look(q Quotes) {
	s.turn++
	turn := s.turn
	s.say("Planning the open quotes together …")
	parts.Background(func() func() {
		open, err := q.Open(context.Background())
		jobs := make([]quote.Job, len(open))
		for i, o := range open {
			jobs[i] = o.Job
		}
		var found []quote.Shared
		if err == nil {
			found, err = quote.Together(jobs)
		}
		return func() {
			if turn == s.turn {
				s.show(open, found, err)
			}
		}
	})
}

func (s *sharing) say(words string) {
	s.fault.SetText("")
	s.list.Objects = []fyne.CanvasObject{parts.NewParagraph(words, parts.MutedStyle)}
	s.list.Refresh()
}

func (s *sharing) show(open []Open, found []quote.Shared, err error) {
	switch {
	case err != nil:
		s.say("")
		s.fault.SetText("The open quotes could not be planned together: " + err.Error())
		return
	case len(found) == 0:
		s.say(fmt.Sprintf("None of the %d open quotes would save anything on another's sheets.", len(open)))
		return
	}
	s.list.Objects = nil
	for _, f := range found {
		s.list.Add(group(open, f))
	}
	s.list.Refresh()
}

// group is one set of quotes that share, with what each would pay.
func group(open []Open, f quote.Shared) fyne.CanvasObject {
	rows := parts.Column(4, parts.NewText(fmt.Sprintf("%s, %d sheets: saves %s", cardName(open, f), f.Sheets, present.Grouped(f.Saves.String())), parts.StrongStyle.Shortened()),
		parts.NewParagraph(fmt.Sprintf("%s together in place of %s apart.", present.Grouped(f.Together.String()), present.Grouped(f.Separate.String())), parts.MutedStyle))
	for k, j := range f.Jobs {
		rows.Add(parts.Row(10, []parts.Track{parts.Fixed(82), parts.Share(1), parts.Fit()}, parts.NewText(open[j].Number, parts.MutedStyle),
			parts.NewText(or(open[j].Customer, "no name yet"), parts.Style{Cut: true}), parts.NewText(present.Grouped(f.Parts[k].String()), parts.BodyStyle.Right())))
	}
	return rows
}

// cardName is the name of the card that is shared.
func cardName(open []Open, f quote.Shared) string {
	cards := open[f.Jobs[0]].Job.RateCards
	if i := slices.IndexFunc(cards, func(c quote.RateCard) bool { return c.ID == f.Card }); i >= 0 && strings.TrimSpace(cards[i].Name) != "" {
		return cards[i].Name
	}
	return f.Card
}
