package book

import (
	"context"
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// list is the table of quotes with what needs doing today above it and the marked quote beside it.
type list struct {
	place  *Place
	object fyne.CanvasObject
	search *parts.Field
	states []*parts.Chip
	count  *parts.Text
	table  *parts.Table
	todo   *todo
	detail *detail
	shared *sharing

	rows   *parts.Sight[catalog.QuoteRow]
	state  string
	turn   int
	column int // sorted by; -1: the last changed first
	down   bool
	marked int64 // stays marked when the list is read anew
}

var stateWords = append([]string{"all"}, catalog.States...)

// StateColor is the colour in which a state is written; the word says the same.
func StateColor(state string) fyne.ThemeColorName {
	switch state {
	case catalog.Sent:
		return look.Warn
	case catalog.Accepted:
		return look.Accent
	case catalog.Declined:
		return look.Fault
	}
	return look.Muted
}

// columns are those of the table, and the order each sorts by.
var columns = []struct {
	parts.TableColumn
	sort string
}{
	{parts.TableColumn{Title: "state", Width: 74}, "state"},
	{parts.TableColumn{Title: "number", Width: 82, Least: 400}, "number"},
	{parts.TableColumn{Title: "customer", Share: 4}, "customer"},
	{parts.TableColumn{Title: "title", Share: 4, Least: 640}, "title"},
	{parts.TableColumn{Title: "pieces", Width: 46, Right: true, Least: 720}, "pieces"},
	{parts.TableColumn{Title: "total", Width: 74, Right: true}, "total"},
	{parts.TableColumn{Title: "margin", Width: 56, Right: true, Least: 680}, "margin"},
	{parts.TableColumn{Title: "needed by", Width: 82, Right: true, Least: 480}, "needed_by"},
	{parts.TableColumn{Title: "next step", Share: 2, Least: 780}, ""},
}

func newList(p *Place) *list {
	l := &list{place: p, search: parts.NewField("Search by any word, number, date or amount"), count: parts.NewText("", parts.MutedStyle), column: -1}
	l.detail = newDetail(l)
	l.todo = newTodo(l)
	l.shared = newSharing(func() { l.showSharing(false) })
	l.search.OnChanged = func(string) { l.find() }
	l.search.OnSubmitted = func(string) { l.opened(l.table.Selected()) }
	for _, word := range stateWords {
		l.states = append(l.states, parts.NewWordChip(word, func() { l.setState(word) }))
	}
	l.states[0].SetChosen(true)
	l.table = parts.NewTable(tableColumns())
	l.rows = &parts.Sight[catalog.QuoteRow]{}
	l.table.Len = func() int { return l.rows.Len() }
	l.table.Row = l.row
	l.table.OnSelect = l.selected
	l.table.OnOpen = l.opened
	l.table.OnHead = l.sortBy
	parts.SearchWith(l.search, l.table, l.find)
	l.table.Empty = "No quote found."
	return l
}

func tableColumns() []parts.TableColumn {
	out := make([]parts.TableColumn, len(columns))
	for i, c := range columns {
		out[i] = c.TableColumn
	}
	return out
}

func (l *list) content() fyne.CanvasObject {
	if l.object != nil {
		return l.object
	}
	chips := parts.Flow(6)
	for _, c := range l.states {
		chips.Add(c)
	}
	share := parts.NewButton(parts.Quiet, "Share sheets", "", func() { l.showSharing(true) })
	books := parts.NewButton(parts.Quiet, "Bookkeeping", "", func() { l.place.push(newBookkeepingPage(l.place)) })
	visible(books, l.place.Papers != nil)
	search := parts.Row(8, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, l.search, books, share)
	filters := parts.TopRow(14, []parts.Track{parts.Share(1), parts.Fit()}, chips, l.count)
	sheet := container.NewStack(parts.NewSheetGround(), parts.Framed(
		parts.Inset(look.SectionPadX, look.SectionPadY, parts.Column(10, search, filters)), nil, parts.Below(6, parts.Inset(6, 0, l.table))))
	left := parts.Framed(parts.Column(0, l.todo.object), nil, sheet)
	l.object = parts.Inset(look.PageMargin, look.PageMargin-8, parts.Beside(left, container.NewStack(l.detail.object, l.shared.object), 340))
	return l.object
}

// showSharing turns the right side to the sheets that open quotes could share, or back to the marked quote.
func (l *list) showSharing(on bool) {
	if on {
		l.detail.object.Hide()
		l.shared.object.Show()
		l.shared.look(l.place.quotes)
		return
	}
	l.shared.object.Hide()
	l.detail.object.Show()
}

func (l *list) focus() { parts.Focus(l.search) }

func (l *list) shown() {
	l.todo.read()
	l.find()
}

func (l *list) setState(word string) {
	for i, c := range l.states {
		c.SetChosen(stateWords[i] == word)
	}
	l.state = word
	if word == "all" {
		l.state = ""
	}
	l.find()
}

func (l *list) query() Query {
	q := Query{Words: l.search.Text(), State: l.state, Down: l.down}
	if l.column >= 0 {
		q.Sort = columns[l.column].sort
	}
	return q
}

func (l *list) find() {
	l.turn++
	turn, q, marked := l.turn, l.query(), l.marked
	parts.Background(func() func() {
		rows, at, err := l.read(q, marked)
		return func() {
			if turn != l.turn {
				return
			}
			l.place.failed("The quote book could not be read", err)
			l.take(rows, at)
		}
	})
}

// read lists quotes, with the page there already on which the marked one stands, else the first.
func (l *list) read(q Query, marked int64) (rows *parts.Sight[catalog.QuoteRow], at int, err error) {
	found, err := l.place.quotes.List(context.Background(), q)
	if err != nil {
		return &parts.Sight[catalog.QuoteRow]{}, 0, err
	}
	rows, at = parts.NewSight[catalog.QuoteRow](found), max(found.Place(marked), 0)
	return rows, at, rows.Read(context.Background(), at)
}

// take shows rows, and marks the quote again that was marked.
func (l *list) take(rows *parts.Sight[catalog.QuoteRow], at int) {
	l.rows = rows
	l.count.SetText(or(countOf(rows.Len(), "quote"), "no quotes"))
	l.table.Reset()
	l.table.Select(at)
	if rows.Len() == 0 {
		l.detail.clear()
	}
}

// row is a row of the table; one that is not there yet is fetched.
func (l *list) row(i int) []parts.TableCell {
	r, there := l.rows.At(i)
	if !there {
		l.fetch(i)
		if r, there = l.rows.At(i); !there {
			return []parts.TableCell{{}, {Text: "…", Color: look.Muted}}
		}
	}
	return quoteCells(l.place, r)
}

// fetch reads the rows around one, and shows it once they are there.
func (l *list) fetch(i int) {
	rows := l.rows
	rows.Fetch(i, func(from, to int, err error) {
		if rows != l.rows {
			return
		}
		l.place.failed("The quote book could not be read", err)
		if err != nil {
			return
		}
		l.table.Reload()
		if i := l.table.Selected(); i >= from && i < to {
			l.selected(i)
		}
	})
}

// quoteCells is a quote as a row of a table.
func quoteCells(p *Place, r catalog.QuoteRow) []parts.TableCell {
	pieces := ""
	if r.Pieces > 0 {
		pieces = fmt.Sprint(r.Pieces)
	}
	customer := parts.TableCell{Text: r.Customer, Strong: true}
	if r.Customer == "" {
		customer = parts.TableCell{Text: "no name yet", Color: look.Muted}
	}
	needed := parts.TableCell{Text: present.NearDate(r.NeededBy, p.Now())}
	if r.NeededBy != "" && r.NeededBy < p.today() && (r.State == catalog.Accepted || r.State == catalog.Sent) {
		needed.Color, needed.Strong = look.Fault, true
	}
	return []parts.TableCell{
		{Text: r.State, Color: StateColor(r.State), Chip: true},
		{Text: r.Number},
		customer,
		{Text: r.Title, Color: look.Muted},
		{Text: pieces},
		{Text: present.Grouped(r.Total)},
		{Text: percent(r.Margin), Color: look.Muted},
		needed,
		{Text: r.NextStep, Color: look.Muted},
	}
}

// percent writes a percentage, or nothing where there is none.
func percent(figure string) string {
	if figure == "" {
		return ""
	}
	return figure + " %"
}

func (l *list) selected(i int) {
	r, there := l.rows.At(i)
	if !there {
		l.fetch(i)
		return
	}
	l.showSharing(false)
	l.marked = r.ID
	l.detail.show(r)
}

// opened shows the page of a quote; where there is no ledger, the quote goes to the Counter.
func (l *list) opened(i int) {
	if r, there := l.rows.At(i); there {
		l.place.openQuote(r.ID)
	}
}

// fetch reads a draft and hands it on.
func (p *Place) fetch(id int64, then func(catalog.Draft)) {
	parts.Background(func() func() {
		d, err := p.quotes.Draft(context.Background(), id)
		return func() {
			p.failed("The quote could not be read", err)
			if err == nil {
				then(d)
			}
		}
	})
}

// sortBy sorts by a column; the same column again turns the order round, a third time it goes back to the last changed.
func (l *list) sortBy(column int) {
	switch {
	case columns[column].sort == "":
		return
	case l.column != column:
		l.column, l.down = column, false
	case !l.down:
		l.down = true
	default:
		l.column, l.down = -1, false
	}
	l.table.SetSorted(l.column, l.down)
	l.find()
}
