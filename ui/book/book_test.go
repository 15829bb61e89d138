package book

import (
	"context"
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// shelf is quotes in memory.
type shelf struct{ fails error }

var rows = []catalog.QuoteRow{
	{ID: 3, Number: "2026-0003", State: "draft", Customer: "Ivo Castellane", Title: "One hoodie", Pieces: 1, Total: "128.82", Margin: "41.8", NeededBy: "2026-12-20"},
	{ID: 2, Number: "2026-0002", State: "sent", Customer: "Café Amaryllis", Title: "Totes", Pieces: 75, Total: "1400.76", Margin: "42.5"},
	{ID: 1, Number: "2026-0001", State: "accepted", Customer: "Harbour Rowing Club", Title: "Regatta", Pieces: 46, Total: "1261.38", Margin: "9.5", NeededBy: "2026-12-11", NextStep: "order goods"},
}

func (s shelf) Quotes(_ context.Context, words, state string, _ int) ([]catalog.QuoteRow, error) {
	var out []catalog.QuoteRow
	for _, r := range rows {
		if (state == "" || r.State == state) && strings.Contains(strings.ToLower(r.Number+r.Customer+r.Title), strings.ToLower(words)) {
			out = append(out, r)
		}
	}
	return out, s.fails
}

func (s shelf) Draft(_ context.Context, id int64) (catalog.Draft, error) {
	return catalog.Draft{ID: id, Title: "draft"}, s.fails
}

func open(t *testing.T, s shelf) *Place {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	p := New(s)
	w := test.NewWindow(parts.NewLayered(p.Content()))
	w.Resize(fyne.NewSize(1280, 820))
	p.Shown()
	return p
}

func texts(o fyne.CanvasObject) string {
	if !o.Visible() {
		return ""
	}
	var children []fyne.CanvasObject
	out := ""
	switch o := o.(type) {
	case *canvas.Text:
		out = o.Text + "\n"
	case *fyne.Container:
		children = o.Objects
	case fyne.Widget:
		children = test.WidgetRenderer(o).Objects()
	}
	for _, child := range children {
		out += texts(child)
	}
	return out
}

func numbers(p *Place) string {
	var out []string
	for _, r := range p.rows {
		out = append(out, r.Number[8:])
	}
	return strings.Join(out, " ")
}

func TestBook_searchAndStateNarrowTheList(t *testing.T) {
	p := open(t, shelf{})
	if got := numbers(p); got != "3 2 1" || p.count.Text() != "3 quotes" {
		t.Errorf("at first: %s, said %q", got, p.count.Text())
	}
	parts.Focus(p.search)
	test.Type(p.search, "harb")
	if got := numbers(p); got != "1" || !strings.Contains(texts(p.detail.object), "1,261.38") {
		t.Errorf("harb: %s, detail %q", got, texts(p.detail.object))
	}
	test.Tap(p.states[2])
	if len(p.rows) != 0 || strings.Contains(texts(p.detail.object), "Harbour") || !strings.Contains(texts(p.table), "No quote found") {
		t.Errorf("sent and harb: %d rows, detail %q", len(p.rows), texts(p.detail.object))
	}
	p.search.SetText("")
	p.find()
	if got := numbers(p); got != "2" {
		t.Errorf("sent: %s", got)
	}
}

func TestBook_enterOpensTheMarkedQuoteAndSameAgainCopiesIt(t *testing.T) {
	p := open(t, shelf{})
	var opened, copied int64
	p.OnOpen = func(d catalog.Draft) { opened = d.ID }
	p.OnCopy = func(d catalog.Draft) { copied = d.ID }
	parts.Focus(p.search)
	p.search.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	p.search.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if opened != 2 {
		t.Errorf("opened %d, want 2", opened)
	}
	p.fetch(p.table.Selected(), func(d catalog.Draft) { p.OnCopy(d) })
	if copied != 2 {
		t.Errorf("copied %d, want 2", copied)
	}
}

func TestBook_titlesOfColumnsSortAndTurnRound(t *testing.T) {
	p := open(t, shelf{})
	for _, c := range []struct {
		column int
		want   []string
	}{
		{5, []string{"3 1 2", "2 1 3", "3 2 1"}}, // total as an amount, then as last changed
		{6, []string{"1 3 2", "2 3 1"}},          // margin: 9.5 before 41.8
		{0, []string{"3 2 1", "1 2 3"}},          // state in the life of a quote
		{7, []string{"1 3 2"}},                   // no day comes last
	} {
		for _, want := range c.want {
			p.table.OnHead(c.column)
			if got := numbers(p); got != want {
				t.Errorf("column %d: got %s, want %s", c.column, got, want)
			}
		}
	}
}

func TestBook_whatCannotBeReadIsSaid(t *testing.T) {
	p := open(t, shelf{fails: errors.New("the file is locked")})
	if !strings.Contains(p.fault.Text(), "the file is locked") {
		t.Errorf("got %q", p.fault.Text())
	}
}
