package ui

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/blanks"
	"pressworth/ui/book/booktest"
	"pressworth/ui/cards"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/parts/partstest"
	"pressworth/ui/present/presenttest"
	"pressworth/ui/shop"
)

// lists is a shop file in memory for the four places beside the Counter.
type lists struct{ *presenttest.Shop }

func (l lists) FindFiltered(_ context.Context, f catalog.StyleFilter, limit int) ([]catalog.StyleRow, error) {
	return l.FindStyles(f.Words, limit), nil
}

func (l lists) List(context.Context, catalog.StyleFilter) (blanks.Listing, error) {
	return listing(l.FindStyles("", 1000)), nil
}

func (l lists) SaveStyle(_ context.Context, s catalog.Style, _ string) (catalog.Style, error) {
	return s, nil
}

func (l lists) StyleAsListed(ctx context.Context, id int64) (catalog.Style, []catalog.Price, error) {
	s, err := l.Style(ctx, id)
	return s, nil, err
}

func (l lists) SaveListed(_ context.Context, s catalog.Style, _ []catalog.Price, _ string) (catalog.Style, error) {
	return s, nil
}

func (l lists) SaveSupplier(_ context.Context, s catalog.Supplier) (catalog.Supplier, error) {
	return s, nil
}

// imports stands in for price files, which no test of the window opens.
type imports struct{ blanks.Imports }

type listing []catalog.StyleRow

func (l listing) Len() int { return len(l) }

func (l listing) Rows(_ context.Context, from, n int) ([]catalog.StyleRow, error) {
	return l[from:min(from+n, len(l))], nil
}

func (l lists) Style(_ context.Context, id int64) (catalog.Style, error) {
	for _, s := range l.Demo.Styles {
		if s.ID == id {
			return s, nil
		}
	}
	return catalog.Style{}, errors.New("no such style")
}

func (l lists) Prices(context.Context, int64) ([]catalog.Price, error) { return nil, nil }

func (l lists) RateCards(context.Context, string) ([]catalog.RateCard, error) {
	return l.Demo.Cards, nil
}

func (l lists) SaveRateCard(_ context.Context, c catalog.RateCard) (catalog.RateCard, error) {
	return c, nil
}

func (l lists) Suppliers(context.Context) ([]catalog.Supplier, error) { return l.Demo.Suppliers, nil }

type file struct{ demo catalog.Demo }

func (f file) Shop(context.Context) (catalog.Shop, error) { return f.demo.Shop, nil }

func (f file) Settings(context.Context) (catalog.Settings, error) {
	return catalog.DefaultSettings(), nil
}

func (f file) SaveRules(context.Context, catalog.Shop, catalog.Settings) error { return nil }

func (f file) SaveShop(context.Context, catalog.Shop) error { return nil }

// papers remembers what was asked of it.
type papers struct {
	written []Paper
	opened  []string
	err     error
}

func (p *papers) Write(what Paper, _ quote.Job, r quote.Result) (string, error) {
	p.written = append(p.written, what)
	return "/papers/" + r.Price.Total.String() + ".pdf", p.err
}

func (p *papers) Open(path string) error {
	p.opened = append(p.opened, path)
	return nil
}

func (p *papers) Text(_ quote.Job, r quote.Result) string { return "total " + r.Price.Total.String() }

// desk is a window over the demo shop, with one of its quotes on the counter; -1: an empty form.
type desk struct {
	*Window
	win    fyne.Window
	shop   *presenttest.Shop
	papers *papers
	trace  []string
}

func open(t testing.TB, draft int, change func(*Deps)) *desk {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	d := &desk{shop: presenttest.New(), papers: &papers{}}
	presenter := d.shop.Counter(draft)
	garments := blanks.New(lists{d.shop}, func() time.Time { return presenttest.Day })
	garments.Imports, garments.Keeper = imports{}, lists{d.shop}
	garments.Bulk = func(context.Context, []int64, catalog.BulkChange) (blanks.Planned, error) {
		return blanks.Planned{}, nil
	}
	sample := func(catalog.Shop) (quote.Result, error) { return quote.Result{}, errors.New("no sample job") }
	rates := shop.New(file{d.shop.Demo}, sample, "shop.db")
	rates.Settings = file{d.shop.Demo}
	deps := Deps{
		Presenter: presenter, Book: booktest.New().Place(), Blanks: garments,
		Cards: cards.New(lists{d.shop}, func() time.Time { return presenttest.Day }), Shop: rates,
		Papers: d.papers, Settings: Settings{Percent: 100}, Theme: app.Settings().SetTheme,
		Trace: func(line string) { d.trace = append(d.trace, line) }, ShopName: "Harbour & Pine Print Room",
	}
	if change != nil {
		change(&deps)
	}
	d.win = test.NewWindow(nil)
	d.Window = New(d.win, deps)
	d.win.Resize(Size)
	return d
}

// texts are all the texts that are drawn in the window.
func (d *desk) texts() []string { return partstest.Texts(d.win.Content()) }

func (d *desk) shows(text string) bool { return strings.Contains(strings.Join(d.texts(), "\n"), text) }

// menuShortcut presses a shortcut as the toolkit does: through the menu first.
func (d *desk) menuShortcut(s fyne.Shortcut) bool {
	if d.win.MainMenu() == nil {
		return false
	}
	for _, m := range d.win.MainMenu().Items {
		for _, i := range m.Items {
			if i.Shortcut != nil && i.Shortcut.ShortcutName() == s.ShortcutName() {
				i.Action()
				return true
			}
		}
	}
	return false
}
