//go:build cgo

package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/app"

	"pressworth/assets"
	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/ui"
	"pressworth/ui/book"
	"pressworth/ui/cards"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
	shoprates "pressworth/ui/shop"
)

// appID names the program to the system, as in FyneApp.toml; settings of the window are kept under it.
const appID = "org.pressworth.Pressworth"

// desktop is the window with what it is made of.
type desktop struct {
	app    fyne.App
	win    fyne.Window
	shop   *store.Store
	window *ui.Window
	trace  func(line string)
}

func newApp() fyne.App {
	a := app.NewWithID(appID)
	a.SetIcon(fyne.NewStaticResource("pressworth.png", assets.Icon))
	return a
}

func newDesktop(ctx context.Context, shop *store.Store, s shell) (*desktop, error) {
	records, err := shop.Shop(ctx)
	if err != nil {
		return nil, err
	}
	sample, err := sampler(quote.NewMemory().First)
	if err != nil {
		return nil, err
	}
	a := newApp()
	d := &desktop{app: a, win: a.NewWindow(ui.Name), shop: shop, trace: tracer(s)}
	settings := keptSettings(a.Preferences())
	a.Settings().SetTheme(look.NewTheme(settings.Mode, settings.Percent))
	presenter := present.NewCounter(desk{shop, parts.Background}, present.NewEngine())
	list, rates, pin := maintained(shop, quote.Price), shoprates.New(shop, sample, shop.Path()), pins{a.Preferences()}
	rates.PIN, rates.Settings, rates.Picture = pin, shop, readLogo
	d.window = ui.New(d.win, ui.Deps{
		Presenter: presenter,
		Book:      book.New(bookDesk{shop}),
		Blanks:    list,
		Cards:     cards.New(shop, time.Now),
		Shop:      rates,
		Papers:    papers{filepath.Join(filepath.Dir(shop.Path()), "documents"), shop.Logo},
		Settings:  settings,
		Keep:      func(x ui.Settings) { keepSettings(a.Preferences(), x) },
		Theme:     a.Settings().SetTheme,
		PIN:       pin.Fits,
		Trace:     d.trace,
		After:     time.After,
		ShopName:  records.Letterhead.Name,
		About: ui.About{
			Version: version, Toolkit: toolkit(), Schema: strconv.Itoa(store.Version()), ShopPath: shop.Path(),
			Demo: records.Demo, StartOwn: d.startOwn(records.Demo),
		},
	})
	list.Choose, rates.Choose = d.window.ChooseFile, d.window.ChooseFile
	d.guide(shop, records)
	presenter.Open(d.firstQuote(ctx, shop, records))
	return d, nil
}

// firstQuote is what lies on the counter at the start: in the demo shop the quote that it was made with first, else a
// new one.
func (d *desktop) firstQuote(ctx context.Context, shop *store.Store, records catalog.Shop) catalog.Draft {
	if records.Demo {
		if rows, err := shop.Quotes(ctx, store.QuoteFilter{}); err == nil && len(rows) > 0 {
			first := rows[0].ID
			for _, r := range rows {
				first = min(first, r.ID)
			}
			if draft, err := shop.Draft(ctx, first); err == nil {
				return draft
			}
		}
	}
	return catalog.NewDraft(records)
}

// startOwn is offered in the demo shop only. The new window is a program of its own; this one closes.
func (d *desktop) startOwn(demo bool) func() {
	if !demo {
		return nil
	}
	return func() {
		if err := startOwn(); err != nil {
			d.trace("own shop: " + err.Error())
			return
		}
		d.window.Close()
	}
}

// show opens the window and stays until it is closed.
func (d *desktop) show() {
	d.win.Show()
	d.window.Focus()
	// what comes back from the background runs between two frames: the second time, one has been drawn
	parts.Background(func() func() {
		return func() {
			parts.Background(func() func() {
				return func() {
					d.trace("first frame")
					d.backupDaily()
				}
			})
		}
	})
	d.app.Run()
}

// tracer writes marker lines for tests and benchmarks, where PRESSWORTH_TRACE asks for them.
func tracer(s shell) func(string) {
	if os.Getenv("PRESSWORTH_TRACE") == "" {
		return func(string) {}
	}
	return func(line string) { fmt.Fprintln(s.err, "pressworth:", line) }
}
