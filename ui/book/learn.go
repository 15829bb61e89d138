package book

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// learnPage is what finished jobs say about the shop's rates, and which of them lost money.
type learnPage struct {
	place  *Place
	object fyne.CanvasObject
	body   *fyne.Container
	table  *parts.Button
	done   []catalog.Done
	turn   int
}

func newLearn(p *Place) page {
	l := &learnPage{place: p, body: parts.Column(look.SectionApart)}
	l.table = parts.NewSmallButton(parts.Quiet, "Save as CSV", func() { p.writeTable("finished-jobs", doneTable(l.done)) })
	line := parts.Row(12, []parts.Track{parts.Share(1), parts.Fit()},
		parts.NewText("Finished jobs against their plans. Nothing changes until it is taken over.", parts.MutedStyle.Shortened()), l.table)
	l.object = container.New(pageEdges{}, parts.NewPageScroll(parts.Column(12, line, l.body)))
	return l
}

func (l *learnPage) content() fyne.CanvasObject { return l.object }
func (l *learnPage) focus()                     { parts.Focus(l.table) }

func (l *learnPage) shown() {
	l.turn++
	turn := l.turn
	l.place.workOut(func() bool { return turn == l.turn }, func() { l.read(turn) })
}

// read reads what finished jobs say, and shows it unless it is read anew meanwhile.
func (l *learnPage) read(turn int) {
	parts.Background(func() func() {
		ctx := context.Background()
		all, err := l.place.Figures.Figured(ctx, "", "9999-12-31")
		var rates quote.Shop
		if err == nil {
			rates, err = l.place.Figures.Rates(ctx)
		}
		done := catalog.FinishedJobs(all)
		learned := catalog.Learn(done, rates)
		return func() {
			if turn != l.turn {
				return
			}
			if err != nil {
				l.place.failed("What was learned could not be read", err)
				return
			}
			l.done = done
			l.place.leftOut(all)
			l.show(learned)
		}
	})
}

func (l *learnPage) show(x catalog.Learned) {
	l.body.Objects = []fyne.CanvasObject{l.suggestions(x), l.lost(x.Lost), l.jobs()}
	l.body.Refresh()
	l.object.Refresh()
}

// suggestions are the rates that finished jobs speak for, each with its evidence and a button.
func (l *learnPage) suggestions(x catalog.Learned) fyne.CanvasObject {
	s := parts.NewSection("What finished jobs say", countOf(x.Jobs, "job"))
	s.Body.Add(parts.NewParagraph(x.Sentence, parts.StrongStyle))
	for _, r := range x.Suggestions {
		words := "as it is: " + figure(r, r.Now.String())
		if r.Offered {
			words = figure(r, r.Now.String()) + " → " + figure(r, r.Suggest.String())
		}
		line := []fyne.CanvasObject{parts.NewText(r.Name, parts.Style{Weight: parts.Medium}), parts.NewText(words, parts.BodyStyle)}
		tracks := []parts.Track{parts.Fixed(150), parts.Share(1)}
		if r.Offered {
			line = append(line, parts.NewSmallDeed(parts.Quiet, "Take over", func() { l.takeOver(r) }))
			tracks = append(tracks, parts.Fit())
		}
		s.Body.Add(parts.NewRule())
		row := parts.Column(2, parts.Row(12, tracks, line...))
		if r.Sentence != x.Sentence { // said already
			row.Add(parts.NewParagraph(r.Sentence, parts.CaptionStyle))
		}
		s.Body.Add(row)
	}
	return s
}

// figure writes a rate with its unit.
func figure(s catalog.Suggestion, n string) string {
	if s.Path == "handling_s" {
		return n + " s"
	}
	return n + " %"
}

func (l *learnPage) takeOver(s catalog.Suggestion) {
	put := func(ctx context.Context) error { return l.place.Figures.TakeOver(ctx, s.Path, s.Suggest) }
	l.place.act(s.Name+" could not be changed", fmt.Sprintf("%s is %s from now on.", s.Name, figure(s, s.Suggest.String())), put, &step{
		done: fmt.Sprintf("%s is %s again.", s.Name, figure(s, s.Now.String())),
		back: func(ctx context.Context) error { return l.place.Figures.TakeOver(ctx, s.Path, s.Now) },
	})
}

// lost are the jobs that lost money, with why.
func (l *learnPage) lost(all []catalog.Loss) fyne.CanvasObject {
	s := parts.NewSection("Jobs that lost money", "the worst first")
	if len(all) == 0 {
		s.Body.Add(parts.NewText("None.", parts.MutedStyle))
	}
	for _, x := range all[:min(len(all), mostJobs)] {
		s.Body.Add(parts.Column(2, parts.Row(12, []parts.Track{parts.Share(1), parts.Fixed(110), parts.Fixed(110)}, parts.NewText(x.Number+" · "+or(x.Customer, x.Title), parts.StrongStyle.Shortened()),
			parts.NewText("planned "+present.Amount(x.Planned), parts.MutedStyle.Right()), parts.NewText(present.Amount(x.Left), parts.BodyStyle.In(look.Fault).Right())),
			parts.NewParagraph(joinWords(x.Why), parts.CaptionStyle)))
	}
	andMore(s, len(all))
	return s
}

// mostJobs is how many jobs a list shows; the table has all.
const mostJobs = 25

// andMore says how many jobs a list does not show.
func andMore(s *parts.Section, n int) {
	if n > mostJobs {
		s.Body.Add(parts.NewText("and "+present.Grouped(fmt.Sprint(n-mostJobs))+" more, in the table that Save as CSV writes", parts.MutedStyle.Shortened()))
	}
}

func joinWords(all []string) string {
	text := ""
	for i, w := range all {
		if i > 0 {
			text += "; "
		}
		text += w
	}
	return text
}

// jobs is every finished job, what it left least first.
func (l *learnPage) jobs() fyne.CanvasObject {
	rows := catalog.Worst(l.done)
	s := parts.NewSection("Planned and taken", "minutes, spoiled pieces, what was left; what left least first")
	if len(rows) == 0 {
		s.Body.Add(parts.NewText("No job is finished yet.", parts.MutedStyle))
		return s
	}
	t := parts.NewTable([]parts.TableColumn{
		{Title: "number", Width: 90},
		{Title: "customer", Share: 2},
		{Title: "planned", Width: 80, Right: true},
		{Title: "took", Width: 80, Right: true},
		{Title: "spoiled", Width: 60, Right: true},
		{Title: "planned to leave", Width: 110, Right: true},
		{Title: "left", Width: 90, Right: true},
	})
	t.Whole = true
	t.Len = func() int { return min(len(rows), mostJobs) }
	t.Row = func(i int) []parts.TableCell {
		d := rows[i]
		return []parts.TableCell{
			{Text: d.Number},
			{Text: d.Customer, Strong: true},
			{Text: minutesWords(d.PlannedSetUp + d.PlannedPressing)},
			{Text: minutesWords(d.SetUp + d.Pressing)},
			{Text: fmt.Sprint(d.Spoiled)},
			{Text: present.Amount(d.Outturn.Planned), Color: look.Muted},
			{Text: present.Amount(d.Outturn.Left), Strong: true},
		}
	}
	s.Body.Add(t)
	andMore(s, len(rows))
	return s
}

func minutesWords(m float64) string { return fmt.Sprintf("%.0f min", m) }

// doneTable is every finished job for a spreadsheet.
func doneTable(done []catalog.Done) [][]string {
	rows := [][]string{{"number", "customer", "title", "finished", "pieces", "planned set-up minutes", "planned pressing minutes", "set-up minutes", "pressing minutes", "spoiled", "planned to leave", "left"}}
	one := func(f float64) string { return fmt.Sprintf("%.1f", f) }
	for _, d := range done {
		rows = append(rows, []string{
			d.Number, d.Customer, d.Title, d.On, fmt.Sprint(d.Pieces), one(d.PlannedSetUp), one(d.PlannedPressing), one(d.SetUp), one(d.Pressing),
			fmt.Sprint(d.Spoiled), d.Outturn.Planned.String(), d.Outturn.Left.String(),
		})
	}
	return rows
}
