package book

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// revisions are the frozen versions of the quote, the latest first, each with whether it is as it was frozen.
func (q *quotePage) revisions() fyne.CanvasObject {
	rows := q.head.Revisions
	if len(rows) == 0 {
		return nil
	}
	option := parts.TableColumn{Title: "option", Share: 2, Least: 560}
	if !slices.ContainsFunc(rows, func(r catalog.RevisionRow) bool { return r.OptionName != "" }) {
		option.Least = 1e6 // no room is wide enough for a column that says nothing
	}
	t := parts.NewTable([]parts.TableColumn{
		{Title: "revision", Width: 56},
		option,
		{Title: "sent", Share: 3},
		{Title: "pieces", Width: 46, Right: true, Least: 560},
		{Title: "total", Width: 76, Right: true},
		{Title: "margin", Width: 54, Right: true, Least: 420},
		{Title: "seal", Width: 78, Right: true},
	})
	t.Whole = true
	t.Len = func() int { return len(rows) }
	t.Row = func(i int) []parts.TableCell { return q.revisionCells(rows[i]) }
	t.OnOpen = func(i int) { q.place.push(newFrozenPage(q.place, q.head, rows[i])) }
	s := parts.NewSection("Revisions", "Enter opens one as it was frozen", t)
	q.sealed = t
	if q.place.Compare != nil {
		s.Right.Add(parts.NewSmallButton(parts.Quiet, "Compare", func() { q.place.push(newComparePage(q.place, q.head)) }))
		if q.head.State == catalog.Drafted || q.head.State == catalog.Sent {
			s.Right.Add(parts.NewSmallButton(parts.Quiet, "Reprice", func() { q.place.push(newRepricePage(q.place, q.head)) }))
		}
	}
	return s
}

func (q *quotePage) revisionCells(r catalog.RevisionRow) []parts.TableCell {
	number, way := parts.TableCell{Text: fmt.Sprint(r.Number), Strong: true}, wayWords(r.SentHow)
	if r.ID == q.head.AcceptedID {
		number.Color, way = look.Accent, way+", accepted"
	}
	seal := parts.TableCell{Text: "…", Color: look.Muted}
	switch s := q.seals[r.ID]; {
	case s.known && s.intact:
		seal = parts.TableCell{Text: "as frozen", Color: look.Muted}
	case s.known:
		seal = parts.TableCell{Text: "altered", Color: look.Fault, Strong: true}
	}
	return []parts.TableCell{
		number,
		{Text: r.OptionName, Color: look.Muted},
		{Text: changed(q.place, r.MadeAt) + ", " + way},
		{Text: fmt.Sprint(r.Pieces)},
		{Text: present.Grouped(r.Total)},
		{Text: percent(r.Margin), Color: look.Muted},
		seal,
	}
}

// checkSeals reads every revision off the window's goroutine and says which are not as they were frozen.
func (q *quotePage) checkSeals(turn int) {
	rows := q.head.Revisions
	parts.Background(func() func() {
		found := map[int64]sealing{}
		for _, r := range rows {
			_, _, err := q.place.Ledger.Opened(context.Background(), r.ID)
			found[r.ID] = sealing{known: true, intact: err == nil, why: errorText(err)}
		}
		return func() {
			if turn != q.turn {
				return
			}
			q.seals = found
			if q.sealed != nil {
				q.sealed.Reload()
			}
			q.sayAltered()
		}
	})
}

// sayAltered tells of revisions that are not as they were frozen.
func (q *quotePage) sayAltered() {
	for _, r := range q.head.Revisions {
		if s := q.seals[r.ID]; s.known && !s.intact {
			q.place.failed("Revision "+fmt.Sprint(r.Number), errors.New(s.why))
			return
		}
	}
}

func errorText(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// history is when the quote came into each state.
func (q *quotePage) history() fyne.CanvasObject {
	if len(q.head.History) < 2 {
		return nil
	}
	rows := parts.Column(3)
	for _, c := range q.head.History {
		words := changed(q.place, c.At)
		if c.Note != "" {
			words += " · " + c.Note
		}
		rows.Add(parts.Row(10, []parts.Track{parts.Fixed(80), parts.Share(1)},
			parts.NewText(c.State, parts.Style{Weight: parts.Medium, Color: StateColor(c.State)}), parts.NewText(words, parts.MutedStyle.Shortened())))
	}
	return parts.NewSection("History", "", rows)
}
