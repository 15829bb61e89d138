package book

import (
	"context"
	"fmt"
	"regexp"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// todo is what needs doing today, above the list of quotes. It hides while there is nothing.
type todo struct {
	list   *list
	object *fyne.Container
	title  *parts.Text
	table  *parts.Table
	more   *parts.Button
	things []catalog.ToDo
	turn   int
	whole  bool // all things are shown, not only the first
}

// mostToDo is how many things stand there at first.
const mostToDo = 4

func newTodo(l *list) *todo {
	t := &todo{list: l, title: parts.NewText("", parts.TitleStyle)}
	t.more = parts.NewSmallButton(parts.Link, "", t.unfold)
	t.table = parts.NewTable([]parts.TableColumn{
		{Width: 92}, {Width: 82, Least: 640}, {Share: 4}, {Share: 5, Least: 480}, {Width: 82, Right: true},
	})
	t.table.Plain, t.table.Whole = true, true
	t.table.Len = t.shownCount
	t.table.Row = t.row
	t.table.OnSelect = func(i int) {
		if i < len(t.things) {
			l.detail.show(t.things[i].QuoteRow)
		}
	}
	t.table.OnOpen = func(i int) { l.place.openQuote(t.things[i].ID) }
	head := parts.Row(10, []parts.Track{parts.Share(1), parts.Fit()}, t.title, t.more)
	t.object = parts.Below(look.SectionApart, container.NewStack(parts.NewSheetGround(),
		parts.Column(2, parts.Inset(look.SectionPadX, 8, head), parts.Below(6, parts.Inset(6, 0, t.table)))))
	t.object.Hide()
	return t
}

func (t *todo) shownCount() int {
	if t.whole {
		return len(t.things)
	}
	return min(len(t.things), mostToDo)
}

// unfold shows all things, or only the first again.
func (t *todo) unfold() {
	t.whole = !t.whole
	t.show()
}

func (t *todo) read() {
	if t.list.place.Ledger == nil {
		return
	}
	t.turn++
	turn, day := t.turn, t.list.place.today()
	parts.Background(func() func() {
		things, err := t.list.place.Ledger.ToDo(context.Background(), day)
		return func() {
			if turn != t.turn {
				return
			}
			if err != nil {
				t.list.place.failed("What needs doing today could not be read", err)
			}
			t.things = things
			t.show()
		}
	})
}

func (t *todo) show() {
	n := len(t.things)
	t.title.SetText(fmt.Sprintf("To do today  %d", n))
	t.more.SetText(map[bool]string{false: fmt.Sprintf("%d more", n-mostToDo), true: "fewer"}[t.whole])
	visible(t.more, n > mostToDo)
	t.table.Reload()
	visible(t.object, n > 0)
	if t.list.object != nil {
		t.list.object.Refresh()
	}
}

func (t *todo) row(i int) []parts.TableCell {
	d := t.things[i]
	color := urgency(d.Kind)
	customer := parts.TableCell{Text: d.Customer, Strong: true}
	if d.Customer == "" {
		customer = parts.TableCell{Text: d.Title, Color: look.Muted}
	}
	due := parts.TableCell{Text: t.list.place.near(d.Due)}
	if d.Due != "" && d.Due < t.list.place.today() {
		due.Color = look.Fault
	}
	return []parts.TableCell{
		{Text: d.Kind, Color: color, Chip: true},
		{Text: d.Number},
		customer,
		{Text: isoDay.ReplaceAllStringFunc(d.Text, t.list.place.near), Color: look.Muted},
		due,
	}
}

// isoDay is a day as the shop file writes it, inside a sentence.
var isoDay = regexp.MustCompile(`\b\d{4}-\d{2}-\d{2}\b`)

// urgency is the colour of a kind of thing to do; the word says the same.
func urgency(kind string) fyne.ThemeColorName {
	switch kind {
	case catalog.Overdue:
		return look.Fault
	case catalog.Expiring, catalog.ToFollowUp, catalog.ToCollect:
		return look.Warn
	}
	return look.Accent
}

// visible shows or hides an object, where it is not so already.
func visible(o fyne.CanvasObject, yes bool) {
	if o.Visible() == yes {
		return
	}
	if yes {
		o.Show()
	} else {
		o.Hide()
	}
}
