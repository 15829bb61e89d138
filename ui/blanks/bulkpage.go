package blanks

import (
	"context"
	"fmt"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote/money"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// Bulk changes many prices alike. Nothing is changed before Planned.Apply, which gives the way back.
type Bulk func(ctx context.Context, styles []int64, change catalog.BulkChange) (Planned, error)

// Planned is what a change of many prices would do.
type Planned struct {
	Changes []catalog.PriceChange
	Refused []string // numbers of styles that cannot be changed so
	Apply   func(ctx context.Context) (undo func(ctx context.Context) error, err error)

	styles []int64 // what it was planned for
	change catalog.BulkChange
}

// mostStyles is how many styles are changed at once at most.
const mostStyles = 2000

// bulkPage changes the prices of everything the list shows, by percent and amount, previewed.
type bulkPage struct {
	place   *Place
	object  fyne.CanvasObject
	form    *form.Form
	fault   *parts.Band
	words   *parts.Paragraph
	table   *parts.Table
	look    *parts.Button
	take    *parts.Button
	planned Planned
	turn    int
}

func newBulkPage(p *Place) *bulkPage {
	b := &bulkPage{place: p, form: form.New(), fault: parts.NewBand(parts.Fault, ""), words: parts.NewParagraph("", parts.Style{})}
	b.look = parts.NewButton(parts.Filled, "Preview", "", b.preview)
	b.take = parts.NewDeed(parts.Filled, "Change them", "", b.apply)
	b.form.OnChanged = func(string) { b.stale() }
	b.table = parts.NewTable([]parts.TableColumn{
		{Title: "style", Width: 90},
		{Title: "colour", Share: 2},
		{Title: "size", Width: 60},
		{Title: "before", Share: 3, Right: true},
		{Title: "after", Share: 3, Right: true},
	})
	b.table.Len = func() int { return len(b.planned.Changes) }
	b.table.Row = func(i int) []parts.TableCell {
		c := b.planned.Changes[i]
		return []parts.TableCell{{Text: c.Style, Strong: true}, {Text: c.Color}, {Text: c.Size}, {Text: inWords(c.Before), Color: look.Muted}, {Text: inWords(c.After)}}
	}
	section := parts.NewSection("Change prices", "of every style in the list, from today on; older prices stay",
		parts.Fields(150, b.form.Number("percent", "By percent, like 4 or -2.5", "%"), b.form.Number("amount", "And by an amount each, like 0.10", "")),
		parts.Row(8, nil, b.look, b.take), b.fault, b.words, container.New(tall{420}, b.table))
	section.Right.Add(parts.NewButton(parts.Quiet, "Back to the blanks", "Esc", b.close))
	b.object = parts.PageInset(parts.NewPageScroll(section))
	return b
}

func (b *bulkPage) open() {
	b.place.list.Hide()
	b.object.Show()
	b.stale()
	parts.Focus(b.form.Field("percent"))
}

func (b *bulkPage) close() {
	b.turn++
	b.object.Hide()
	b.place.list.Show()
	b.place.Shown()
	b.place.Focus()
}

// stale drops a preview that no longer belongs to what is typed.
func (b *bulkPage) stale() {
	b.turn++
	b.planned = Planned{}
	b.fault.SetText("")
	b.words.SetText("")
	b.table.Empty = "Preview shows every price before and after."
	b.table.Reset()
	b.take.Disable()
	b.take.SetKind(parts.Quiet)
	b.look.SetKind(parts.Filled)
}

// change reads the two fields, which may be below zero.
func (b *bulkPage) change() (c catalog.BulkChange, ok bool) {
	r := form.Reader{Get: b.form.Get}
	for path, set := range map[string]func(string) error{
		"percent": func(t string) error { return c.Percent.UnmarshalText([]byte(t)) },
		"amount":  func(t string) error { return c.Amount.UnmarshalText([]byte(t)) },
	} {
		text := strings.TrimPrefix(strings.ReplaceAll(strings.TrimSuffix(r.Text(path), "%"), "−", "-"), "+")
		if text = strings.TrimSpace(text); text != "" && set(text) != nil {
			r.Say(path, "enter a number, below zero to lower prices, like -2.5")
		}
	}
	if len(r.Problems) == 0 && c.Percent.Cmp(money.Number{}) == 0 && c.Amount.Cmp(money.Amount{}) == 0 {
		r.Say("percent", "say by how much")
	}
	b.form.Show(r.Problems)
	return c, len(r.Problems) == 0
}

func (b *bulkPage) preview() {
	change, ok := b.change()
	if !ok {
		return
	}
	b.stale()
	turn, rows := b.turn, b.place.sight
	b.words.SetText("Looking at the prices …")
	parts.Background(func() func() {
		ids, err := stylesIn(context.Background(), rows, mostStyles)
		var planned Planned
		if err == nil {
			planned, err = b.place.Bulk(context.Background(), ids, change)
			planned.styles, planned.change = ids, change
		}
		return func() {
			if turn == b.turn {
				b.show(planned, len(ids), err)
			}
		}
	})
}

func (b *bulkPage) show(planned Planned, styles int, err error) {
	b.words.SetText("")
	if err != nil {
		b.fault.SetText("That cannot be previewed: " + err.Error())
		return
	}
	b.planned = planned
	b.words.SetText(fmt.Sprintf("%s of %s.", many(len(planned.Changes), "price"), many(styles, "style")))
	if len(planned.Refused) > 0 {
		b.fault.SetText("Nothing would be left of the price of " + strings.Join(planned.Refused, ", ") + ": these stay as they are.")
	}
	b.table.Empty = "Nothing would change."
	b.table.Reset()
	if len(planned.Changes) > 0 {
		b.take.Enable()
		b.take.SetKind(parts.Filled)
		b.look.SetKind(parts.Quiet)
		parts.Focus(b.take)
	}
}

func (b *bulkPage) apply() {
	planned := b.planned
	b.take.Disable()
	parts.Background(func() func() {
		back, err := b.applied(planned)(context.Background())
		return func() {
			if err != nil {
				b.fault.SetText("The prices could not be changed: " + err.Error())
				return
			}
			b.place.did(step{"The prices are as they were.", back})
			b.close()
			b.place.say(many(len(planned.Changes), "price") + " changed; Ctrl+Z brings them back.")
		}
	})
}

// applied changes prices as planned. The way back can be gone and undone in turn: then the change is planned anew.
func (b *bulkPage) applied(planned Planned) act {
	return func(ctx context.Context) (act, error) {
		undo, err := planned.Apply(ctx)
		if err != nil {
			return nil, err
		}
		return func(ctx context.Context) (act, error) {
			return func(ctx context.Context) (act, error) {
				again, err := b.place.Bulk(ctx, planned.styles, planned.change)
				if err != nil {
					return nil, err
				}
				again.styles, again.change = planned.styles, planned.change
				return b.applied(again)(ctx)
			}, undo(ctx)
		}, nil
	}
}

// stylesIn are the ids of all styles in the rows, an error where there are more than most.
func stylesIn(ctx context.Context, s *sight, most int) ([]int64, error) {
	var ids []int64
	seen := map[int64]bool{}
	take := func(rows []catalog.StyleRow) {
		for _, r := range rows {
			if !seen[r.StyleID] {
				seen[r.StyleID] = true
				ids = append(ids, r.StyleID)
			}
		}
	}
	if s.Many() == nil {
		take(s.Found)
		return ids, nil
	}
	for from := 0; from < s.Len(); from += parts.SightPage {
		rows, err := s.Many().Rows(ctx, from, parts.SightPage)
		if err != nil {
			return nil, err
		}
		take(rows)
		if len(ids) > most {
			return nil, fmt.Errorf("the list holds more than %d styles: narrow it by supplier, category or words", most)
		}
	}
	return ids, nil
}
