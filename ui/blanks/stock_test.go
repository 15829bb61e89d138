package blanks

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// stock is a catalog of so many styles, in memory.
type stock int

func (m stock) row(i int) catalog.StyleRow {
	return catalog.StyleRow{
		StyleID: int64(i + 1), Supplier: "Northgate Blanks", Number: fmt.Sprintf("TS-%d", i), Name: "Everyday tee",
		Colors: 3, Sizes: "S–3XL", From: money.FromMinor(310, 2), PricedOn: "2026-11-04",
	}
}

func (m stock) FindFiltered(_ context.Context, f catalog.StyleFilter, limit int) ([]catalog.StyleRow, error) {
	words := f.Words
	if words == "broken" {
		return nil, errors.New("the file is locked")
	}
	var out []catalog.StyleRow
	for i := 0; i < int(m) && len(out) < limit; i++ {
		if r := m.row(i); strings.HasPrefix(strings.ToLower(r.Number), strings.ToLower(words)) && (f.AtMost == nil || r.From.Cmp(*f.AtMost) <= 0) {
			out = append(out, r)
		}
	}
	return out, nil
}

func (m stock) List(_ context.Context, f catalog.StyleFilter) (Listing, error) {
	if f.Category == "cap" {
		return stock(0), nil
	}
	return m, nil
}

func (m stock) Len() int { return int(m) }

func (m stock) Rows(_ context.Context, from, n int) ([]catalog.StyleRow, error) {
	var out []catalog.StyleRow
	for i := from; i < int(m) && len(out) < n; i++ {
		out = append(out, m.row(i))
	}
	return out, nil
}

func (m stock) Suppliers(context.Context) ([]catalog.Supplier, error) {
	return []catalog.Supplier{{ID: 7, Key: "northgate", Name: "Northgate Blanks"}}, nil
}

func (m stock) Style(_ context.Context, id int64) (catalog.Style, error) {
	each := []quote.Break{{From: 1, Each: money.FromMinor(310, 2)}, {From: 72, Each: money.FromMinor(285, 2)}}
	return catalog.Style{
		ID: id, Number: m.row(int(id - 1)).Number, Name: "Everyday tee", Fabric: "100 % cotton",
		Colors: []catalog.Color{{Name: "Navy", Hex: "#1f3055", Shade: "dark"}}, Caution: "dye may migrate",
		Sizes: []catalog.StyleSize{{Size: "S", Each: each}, {Size: "M", Each: each}, {Size: "2XL", Each: each[:1]}},
	}, nil
}

func (m stock) Prices(context.Context, int64) ([]catalog.Price, error) { return nil, nil }

var day = time.Date(2026, time.December, 2, 12, 4, 0, 0, time.UTC)

func onScreen(t testing.TB, p *Place) fyne.Window {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	w := test.NewWindow(parts.NewLayered(p.Content()))
	w.Resize(fyne.NewSize(1280, 820))
	p.Shown()
	return w
}

func texts(o fyne.CanvasObject) string {
	if !o.Visible() {
		return ""
	}
	var b strings.Builder
	var children []fyne.CanvasObject
	switch o := o.(type) {
	case *canvas.Text:
		b.WriteString(o.Text + "\n")
	case *fyne.Container:
		children = o.Objects
	case fyne.Widget:
		children = test.WidgetRenderer(o).Objects()
	}
	for _, child := range children {
		b.WriteString(texts(child))
	}
	return b.String()
}

func key(o fyne.Focusable, name fyne.KeyName) { o.TypedKey(&fyne.KeyEvent{Name: name}) }
