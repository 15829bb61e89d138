package book

import (
	"context"
	"slices"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// stepsSection is the way of an accepted job from approved artwork to collected goods: each step dated with one click.
func (q *quotePage) stepsSection() fyne.CanvasObject {
	rows := parts.Column(0)
	next := nextStep(q.head.Steps)
	for i, name := range catalog.Steps {
		if taken, ok := catalog.Taken(q.head.Steps, name); ok {
			rows.Add(q.takenRow(taken, i))
			continue
		}
		rows.Add(q.openRow(name, i, name == next))
	}
	s := parts.NewSection("From yes to collected", q.lateWords(), rows)
	if next == "" {
		finish := parts.NewButton(parts.Filled, "Finish the job", "", func() { q.place.push(newFinishPage(q.place, q.head)) })
		q.first = finish
		s.Body.Add(parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, parts.NewText("All is handed over.", parts.MutedStyle), finish))
	}
	return s
}

// nextStep is the first step that has not been taken, or nothing.
func nextStep(taken []catalog.Step) string {
	for _, name := range catalog.Steps {
		if _, ok := catalog.Taken(taken, name); !ok {
			return name
		}
	}
	return ""
}

// lateWords says how far off the day is on which the job is needed.
func (q *quotePage) lateWords() string {
	if q.head.NeededBy == "" {
		return "no day is promised"
	}
	return "needed by " + q.place.until(q.head.NeededBy)
}

var stepTracks = []parts.Track{parts.Fixed(26), parts.Fixed(132), parts.Share(1), parts.Fit()}

func (q *quotePage) takenRow(s catalog.Step, i int) fyne.CanvasObject {
	words := q.place.day(s.On)
	var who []string
	for _, w := range []string{s.Who, s.How} {
		if w != "" {
			who = append(who, w)
		}
	}
	if len(who) > 0 {
		words += " · " + strings.Join(who, ", ")
	}
	back := parts.NewSmallDeed(parts.Link, "Take back", func() { q.dropStep(s) })
	return parts.Row(8, stepTracks, newMark(i, markDone), parts.NewText(named(s.Name), parts.Style{Weight: parts.Medium}),
		parts.NewText(words, parts.MutedStyle.Shortened()), back)
}

// openRow is a step still to be taken. The first of them has the filled button and room to say more.
func (q *quotePage) openRow(name string, i int, next bool) fyne.CanvasObject {
	if !next {
		mark := parts.NewSmallDeed(parts.Link, "Done today", func() { q.takeStep(catalog.Step{Name: name}, "", "") })
		return parts.Row(8, stepTracks, newMark(i, markOpen), parts.NewText(named(name), parts.MutedStyle), parts.Gap(0, 30), mark)
	}
	day, said := parts.NewCell(), newStepWords(name)
	day.SetHint("today")
	take := func() { q.takeStep(catalog.Step{Name: name, Who: said.who(), How: said.way()}, day.Text(), "") }
	button := parts.NewSmallDeed(parts.Filled, "Done", take)
	day.OnSubmitted = func(string) { take() }
	q.first = button
	if name == catalog.GoodsOrdered && q.place.Buying != nil {
		said.object = parts.Row(0, nil, parts.NewSmallButton(parts.Link, "To buy", q.place.toBuy), parts.Gap(0, 34))
	}
	tracks := []parts.Track{parts.Fixed(26), parts.Fixed(132), parts.Share(1), parts.Fixed(92), parts.Fit()}
	if said.name == nil {
		return parts.Row(8, tracks, newMark(i, markNext), parts.NewText(named(name), parts.StrongStyle), said.object, day, button)
	}
	first := parts.Row(8, tracks, newMark(i, markNext), parts.NewText(named(name), parts.StrongStyle), parts.Gap(0, 34), day, button)
	return parts.Column(0, first, parts.Row(8, []parts.Track{parts.Fixed(26), parts.Share(1)}, newMark(i, markLine), said.object))
}

// stepWords is what is said of a step beside its day: for approved artwork who approved it and how.
type stepWords struct {
	object fyne.CanvasObject
	name   *parts.Field
	how    *parts.Choice
}

// approvals are how artwork gets approved.
var approvals = []string{"by e-mail", "on the proof, signed", "by message", "at the counter"}

func newStepWords(step string) *stepWords {
	w := &stepWords{object: parts.Gap(0, 34)}
	if step == catalog.ArtApproved {
		w.name = parts.NewSmallField("approved by")
		w.how = parts.NewChoice(parts.Words(approvals...), nil).Small()
		w.how.SetKey(approvals[0])
		w.object = parts.Row(8, []parts.Track{parts.Share(1), parts.Share(1)}, w.name, w.how)
	}
	return w
}

func (w *stepWords) who() string {
	if w.name == nil {
		return ""
	}
	return strings.TrimSpace(w.name.Text())
}

func (w *stepWords) way() string {
	if w.how == nil {
		return ""
	}
	return w.how.Key()
}

// takeStep dates a step: with a day as it is typed at a counter, today where none is.
func (q *quotePage) takeStep(s catalog.Step, typed, note string) {
	s.On, s.Note = q.place.today(), note
	if typed = strings.TrimSpace(typed); typed != "" && typed != "today" {
		day, ok := pastDate(typed, q.place.Now())
		if !ok {
			q.place.failed("The step was not dated", errNoDay)
			return
		}
		s.On = day
	}
	id := q.id
	q.place.act("The step was not dated", q.head.Number+": "+s.Name+" on "+q.place.day(s.On)+".", func(ctx context.Context) error {
		return q.place.Ledger.TakeStep(ctx, id, s)
	}, &step{done: q.head.Number + ": " + s.Name + " is open again.", back: func(ctx context.Context) error {
		return q.place.Ledger.UndoStep(ctx, id, s.Name)
	}})
}

func (q *quotePage) dropStep(s catalog.Step) {
	id := q.id
	q.place.act("The step could not be taken back", q.head.Number+": "+s.Name+" is open again.", func(ctx context.Context) error {
		return q.place.Ledger.UndoStep(ctx, id, s.Name)
	}, &step{done: q.head.Number + ": " + s.Name + " is dated as it was.", back: func(ctx context.Context) error {
		return q.place.Ledger.TakeStep(ctx, id, s)
	}})
}

// pastDate reads a day that has been: a day without a year is the last one up to today.
func pastDate(typed string, now time.Time) (string, bool) {
	if strings.EqualFold(typed, "yesterday") {
		return now.AddDate(0, 0, -1).Format(time.DateOnly), true
	}
	day, ok := present.ParseDate(typed, now)
	if !ok {
		return "", false
	}
	if day.After(now) && !strings.HasPrefix(typed, "+") && !strings.Contains(typed, day.Format("2006")) {
		day = lastOf(day, typed, now)
	}
	return day.Format(time.DateOnly), true
}

// lastOf is the last day called so up to now: a week before for the name of a weekday, else a year.
func lastOf(day time.Time, typed string, now time.Time) time.Time {
	if strings.HasPrefix(strings.ToLower(day.Weekday().String()), strings.ToLower(typed)) {
		return day.AddDate(0, 0, -7)
	}
	if before := day.AddDate(-1, 0, 0); now.Sub(before) < 300*24*time.Hour {
		return before
	}
	return day
}

// named is a step's name as a heading.
func named(step string) string { return strings.ToUpper(step[:1]) + step[1:] }

// marks of steps.
const (
	markOpen = iota
	markNext
	markDone
	markLine // the line alone, beside what belongs to the step above
)

// mark is a step's sign at the left: a ring, a thick ring for the next one, a full disc with a tick for one taken; a
// line leads from each to the next.
type mark struct {
	parts.Figure
	at, kind int
}

func newMark(at, kind int) *mark {
	m := &mark{at: at, kind: kind}
	m.SetUp(m, func() fyne.Size { return fyne.NewSize(look.Px(22), look.Px(34)) }, m.draw)
	return m
}

func (m *mark) draw(p *parts.Pen, s fyne.Size) {
	x, y, r := s.Width/2, s.Height/2, look.Px(8)
	line := look.Color(look.Rule)
	if m.kind == markLine {
		p.Line(x, 0, x, s.Height, line, 2)
		return
	}
	if m.at > 0 {
		p.Line(x, 0, x, y-r, line, 2)
	}
	if m.at < len(catalog.Steps)-1 {
		p.Line(x, y+r, x, s.Height, line, 2)
	}
	switch m.kind {
	case markDone:
		p.Rect(parts.Box{X: x - r, Y: y - r, W: 2 * r, H: 2 * r}, parts.Fill{Color: look.Color(look.Accent), Radius: r}) // discs would lie over the tick
		tick := look.Color(look.OnAccent)
		p.Line(x-r*0.45, y+r*0.02, x-r*0.1, y+r*0.38, tick, 2)
		p.Line(x-r*0.1, y+r*0.38, x+r*0.48, y-r*0.34, tick, 2)
	case markNext:
		p.Disc(x, y, r, look.Color(look.Accent), nil)
		p.Disc(x, y, r-look.Px(2.5), look.Color(look.Panel), nil)
	default:
		p.Disc(x, y, r, look.Color(look.Panel), look.Color(look.Rim))
	}
}

// approved tells whether the artwork of a job has been approved.
func approved(steps []catalog.Step) bool {
	return slices.ContainsFunc(steps, func(s catalog.Step) bool { return s.Name == catalog.ArtApproved })
}
