//go:build cgo

package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/export"
	"pressworth/quote"
	"pressworth/ui"
	"pressworth/ui/blanks"
	"pressworth/ui/book"
	"pressworth/ui/cards"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
	shopplace "pressworth/ui/shop"
)

// appID names the program to the system; settings of the window are kept under it.
const appID = "io.pressworth.desk"

// openWindow opens the window on a shop file and stays until it is closed.
func openWindow(s shell) (err error) {
	flags := flag.NewFlagSet("pressworth", flag.ContinueOnError)
	named := flags.String("shop", "", "shop file")
	demo := flags.Bool("demo", false, "the demo shop")
	if _, err := s.parse(flags); err != nil {
		return err
	}
	path, asDemo, err := chooseShop(*named, *demo)
	if err != nil {
		return err
	}
	ctx := context.Background()
	shop, err := openShop(ctx, path, asDemo)
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, shop.Close()) }()
	d, err := newDesktop(ctx, shop, s)
	if err != nil {
		return err
	}
	d.show()
	return nil
}

// desktop is the window with what it is made of.
type desktop struct {
	app    fyne.App
	window *ui.Window
	win    fyne.Window
	shell  shell
}

func newDesktop(ctx context.Context, shop *store.Store, s shell) (*desktop, error) {
	records, err := shop.Shop(ctx)
	if err != nil {
		return nil, err
	}
	d := &desktop{app: app.NewWithID(appID), shell: s}
	settings := d.settings()
	d.app.Settings().SetTheme(look.NewTheme(settings.Mode, settings.Percent))
	d.win = d.app.NewWindow(ui.Name)
	presenter := present.NewCounter(desk{shop: shop, background: parts.Background}, present.NewEngine())
	quotes := book.New(bookDesk{shop})
	d.window = ui.New(d.win, ui.Deps{
		Presenter: presenter, Book: quotes, Blanks: blanks.New(shop),
		Cards: cards.New(shop, time.Now), Shop: shopplace.New(shop, d.sample(ctx, shop), shop.Path()),
		Papers:   writer{folder: filepath.Join(filepath.Dir(shop.Path()), "documents"), app: d.app},
		Settings: settings, Keep: d.keep, Theme: d.app.Settings().SetTheme, Trace: d.trace(), After: time.After,
		ShopName: records.Letterhead.Name,
		About:    ui.About{Version: version, ShopPath: shop.Path(), Demo: records.Demo},
	})
	if first, err := firstQuote(ctx, shop); err == nil && first.ID != 0 {
		presenter.Open(first)
	}
	return d, nil
}

// settings are how the person at this machine likes the window.
func (d *desktop) settings() ui.Settings {
	p := d.app.Preferences()
	return ui.Settings{Mode: look.Mode(p.IntWithFallback("mode", int(look.Light))), Percent: p.IntWithFallback("percent", 100)}
}

func (d *desktop) keep(s ui.Settings) {
	d.app.Preferences().SetInt("mode", int(s.Mode))
	d.app.Preferences().SetInt("percent", s.Percent)
}

// sample prices the quote that was changed last with other rates of the shop.
func (d *desktop) sample(ctx context.Context, shop *store.Store) func(catalog.Shop) (quote.Result, error) {
	return func(rates catalog.Shop) (quote.Result, error) {
		draft, err := firstQuote(ctx, shop)
		if err != nil {
			return quote.Result{}, err
		}
		b, err := shop.Book(ctx, draft, draft.QuotedOn)
		if err != nil {
			return quote.Result{}, err
		}
		b.Shop = rates
		job, problems := catalog.Freeze(draft, b, draft.QuotedOn)
		if len(problems) > 0 {
			return quote.Result{}, quote.Problems(problems)
		}
		return quote.Price(job)
	}
}

// writer writes the window's documents and opens them.
type writer struct {
	folder string
	app    fyne.App
}

// Write writes a document and returns its path.
func (w writer) Write(p ui.Paper, job quote.Job, result quote.Result) (string, error) {
	date, _ := dateOf("")
	return writePaper(w.folder, string(p), job, result, date)
}

// Open opens a file in the system's viewer.
func (w writer) Open(path string) error {
	return w.app.OpenURL(&url.URL{Scheme: "file", Path: filepath.ToSlash(path)})
}

// Text is the quote in plain words.
func (w writer) Text(job quote.Job, result quote.Result) string {
	date, _ := dateOf("")
	return export.Text(job, result, date)
}

// firstQuote is the quote that lies on the counter when the demo shop is opened.
func firstQuote(ctx context.Context, shop *store.Store) (catalog.Draft, error) {
	rows, err := shop.Quotes(ctx, store.QuoteFilter{})
	if err != nil || len(rows) == 0 {
		return catalog.Draft{}, err
	}
	return shop.Draft(ctx, rows[0].ID)
}

// trace writes marker lines for tests and benchmarks, where they are asked for.
func (d *desktop) trace() func(string) {
	if os.Getenv("PRESSWORTH_TRACE") == "" {
		return nil
	}
	return func(line string) { fmt.Fprintln(d.shell.err, "pressworth:", line) }
}

func (d *desktop) show() {
	d.win.Show()
	d.window.Focus()
	if t := d.trace(); t != nil {
		parts.Background(func() func() { return func() { t("first frame") } })
	}
	d.app.Run()
}

// bookDesk is the quote book of a shop file.
type bookDesk struct{ *store.Store }

// Quotes finds quotes by words and state.
func (b bookDesk) Quotes(ctx context.Context, words, state string, limit int) ([]catalog.QuoteRow, error) {
	return b.Store.Quotes(ctx, store.QuoteFilter{Words: words, State: state, Limit: limit})
}
