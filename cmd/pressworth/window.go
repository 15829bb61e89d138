//go:build cgo

package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/ui"
	"pressworth/ui/blanks"
	"pressworth/ui/book"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
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
	d.app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	d.win = d.app.NewWindow(ui.Name)
	presenter := present.NewCounter(desk{shop: shop, background: parts.Background}, present.NewEngine())
	quotes := book.New(bookDesk{shop})
	d.window = ui.New(d.win, ui.Deps{
		Presenter: presenter, Book: quotes, Blanks: blanks.New(shop),
		Cards: quotes, Shop: quotes,
		Settings: ui.Settings{Mode: look.Light, Percent: 100},
		Keep:     func(ui.Settings) {}, Theme: d.app.Settings().SetTheme, Trace: d.trace(), After: time.After,
		ShopName: records.Letterhead.Name,
		About:    ui.About{Version: version, ShopPath: shop.Path(), Demo: records.Demo},
	})
	if first, err := firstQuote(ctx, shop); err == nil && first.ID != 0 {
		presenter.Open(first)
	}
	return d, nil
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
