package book

import (
	"context"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// peoplePage is the customers: found as one types at the left, edited at the right.
type peoplePage struct {
	place   *Place
	object  fyne.CanvasObject
	search  *parts.Field
	count   *parts.Text
	table   *parts.Table
	doubles *parts.Band
	form    *personForm

	rows   []catalog.Customer
	turn   int
	marked int64
}

const mostPeople = 300

func newPeople(p *Place) page {
	l := &peoplePage{
		place: p, search: parts.NewField("Search by name, contact, e-mail or telephone"), count: parts.NewText("", parts.MutedStyle),
		doubles: parts.NewBand(parts.Note, ""),
	}
	l.form = newPersonForm(l)
	l.search.OnChanged = func(string) { l.find() }
	l.search.OnSubmitted = func(string) { l.form.focus() }
	l.table = parts.NewTable([]parts.TableColumn{
		{Title: "name", Share: 3},
		{Title: "contact", Share: 2, Least: 420},
		{Title: "e-mail or telephone", Share: 3, Least: 560},
		{Title: "level", Width: 76, Least: 640},
		{Title: "pays", Share: 2, Least: 720},
		{Title: "tax", Width: 54, Least: 500},
	})
	l.table.Len = func() int { return len(l.rows) }
	l.table.Row = l.row
	l.table.OnSelect = l.selected
	l.table.OnOpen = func(int) { l.form.focus() }
	parts.SearchWith(l.search, l.table, nil)
	l.table.Empty = "Nobody found."
	fresh := parts.NewSmallButton(parts.Quiet, "New customer", l.fresh)
	head := parts.Row(12, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, l.search, l.count, fresh)
	list := container.NewStack(parts.NewSheetGround(), parts.Framed(
		parts.Inset(look.SectionPadX, look.SectionPadY, parts.Column(10, head, l.doubles)), nil, parts.Below(6, parts.Inset(6, 0, l.table))))
	l.object = parts.Inset(look.PageMargin, look.PageMargin-8, parts.Beside(list, l.form.object, 440))
	return l
}

func (l *peoplePage) content() fyne.CanvasObject { return l.object }
func (l *peoplePage) focus()                     { parts.Focus(l.search) }

func (l *peoplePage) shown() {
	l.find()
	l.lookForDoubles()
}

func (l *peoplePage) find() {
	l.turn++
	turn, words := l.turn, l.search.Text()
	parts.Background(func() func() {
		rows, err := l.place.People.Customers(context.Background(), words, mostPeople)
		return func() {
			if turn != l.turn {
				return
			}
			if err != nil {
				l.place.failed("The customers could not be read", err)
			}
			l.take(rows)
		}
	})
}

func (l *peoplePage) take(rows []catalog.Customer) {
	l.rows = rows
	l.count.SetText(countOf(len(rows), "customer"))
	if len(rows) == mostPeople {
		l.count.SetText(fmt.Sprintf("first %d", mostPeople))
	}
	at := max(0, slices.IndexFunc(rows, func(c catalog.Customer) bool { return c.ID == l.marked }))
	l.table.Reset()
	l.table.Select(at)
	if len(rows) == 0 {
		l.form.clear()
	}
}

func (l *peoplePage) row(i int) []parts.TableCell {
	c := l.rows[i]
	tax := parts.TableCell{}
	if c.TaxExempt {
		tax = parts.TableCell{Text: "exempt", Color: look.Accent}
		if !c.ExemptOn(l.place.today()) {
			tax = parts.TableCell{Text: "expired", Color: look.Fault, Strong: true}
		}
	}
	return []parts.TableCell{
		{Text: c.Name, Strong: true},
		{Text: c.Contact},
		{Text: or(c.Email, c.Phone), Color: look.Muted},
		{Text: c.Level, Color: look.Muted},
		{Text: c.TermsInWords(), Color: look.Muted},
		tax,
	}
}

func (l *peoplePage) selected(i int) {
	if i < len(l.rows) {
		l.marked = l.rows[i].ID
		l.form.show(l.rows[i])
	}
}

// fresh starts a new customer in the form.
func (l *peoplePage) fresh() {
	l.marked = 0
	l.form.show(catalog.Customer{Name: l.search.Text()})
	l.form.focus()
}

// lookForDoubles says how many customers look like one that is kept already.
func (l *peoplePage) lookForDoubles() {
	parts.Background(func() func() {
		found, err := l.place.People.DoubleCustomers(context.Background())
		return func() {
			if err != nil || len(found) == 0 {
				l.doubles.SetText("")
				return
			}
			l.doubles.SetText(fmt.Sprintf("%s may be kept twice.", or(countOf(len(found), "customer"), "")))
			l.doubles.Offer("Look", func() { l.place.push(newMergePage(l.place, found)) })
		}
	})
}
