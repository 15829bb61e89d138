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
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
	shoprates "pressworth/ui/shop"
)

// appID names the program to the system, as in FyneApp.toml; settings of the window are kept under it.
const appID = "org.pressworth.Pressworth"

// desktop is the window with what it is made of.
type desktop struct {
	app      fyne.App
	win      fyne.Window
	settings ui.Settings
	shop     *store.Store
	window   *ui.Window
	trace    func(line string)
	log      *journal
	lookOnly bool // another window works on the shop file
}

func newApp() fyne.App {
	a := app.NewWithID(appID)
	a.SetIcon(fyne.NewStaticResource("pressworth.png", assets.Icon))
	return a
}

// newDesktop makes the window with nothing in it but its grounds, which can be drawn at once.
func newDesktop(s shell) *desktop {
	a := newApp()
	settings := keptSettings(a.Preferences())
	a.Settings().SetTheme(look.NewTheme(settings.Mode, settings.Percent))
	d := &desktop{app: a, win: a.NewWindow(ui.Name), settings: settings, trace: tracer(s), log: openJournal()}
	d.win.SetPadded(false)
	d.win.SetContent(ui.Bare())
	d.win.Resize(ui.Size)
	return d
}

// fill puts an open shop into the window.
func (d *desktop) fill(o opened) {
	d.shop = o.shop
	presenter := present.NewCounter(desk{o.shop, parts.Background}, present.NewEngine())
	list, rates, pin := maintained(o.shop, quote.Price), shoprates.New(o.shop, o.sample, o.shop.Path()), newPins(d.app.Preferences())
	rates.PIN, rates.Settings, rates.Picture = pin, o.shop, readLogo
	files := papers{filepath.Join(filepath.Dir(o.shop.Path()), "documents"), o.shop.Logo, o.shop.Letter, o.shop.Approval}
	quotes := quoteBook(o.shop, files)
	d.window = ui.New(d.win, ui.Deps{
		Presenter: presenter,
		Book:      quotes,
		Blanks:    list,
		Cards:     rateCards(o.shop),
		Shop:      rates,
		Papers:    told{files, d.log},
		Settings:  d.settings,
		Keep:      func(x ui.Settings) { keepSettings(d.app.Preferences(), x) },
		Theme:     d.app.Settings().SetTheme,
		PIN:       pin.Fits,
		Trace:     d.trace,
		After:     time.After,
		ShopName:  o.records.Letterhead.Name,
		LookOnly:  d.lookOnly,
		Backups:   copies{o.shop, d.log},
		Details:   d.log.details,
		About: ui.About{
			Version: version, Toolkit: toolkit(), Schema: strconv.Itoa(store.Version()), ShopPath: o.shop.Path(),
			Demo: o.records.Demo, StartOwn: d.startOwn(o.records.Demo),
		},
	})
	list.Choose, rates.Choose = d.window.ChooseFile, d.window.ChooseFile
	rates.Backups = d.window.BackupsPage
	quotes.OnOpen, quotes.OnCopy, quotes.OnState = d.window.OpenQuote, d.window.OpenQuote, presenter.Became
	d.guide(o.shop, o.records)
	presenter.Open(o.first)
	d.window.Focus()
}

// firstQuote is what lies on the counter at the start: in the demo shop the quote that it was made with first, else a
// new one.
func firstQuote(ctx context.Context, shop *store.Store, records catalog.Shop) catalog.Draft {
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

// show opens the window, fills it once its ground is on the screen, and stays until it is closed.
func (d *desktop) show(o opened) {
	tellLoad(d.trace)
	d.win.Show()
	d.afterFrame(func() {
		d.fill(o)
		d.afterFrame(func() {
			d.trace("first frame")
			d.backupDaily()
			d.rest()
		})
	})
	d.app.Run()
}

// afterFrame does something when the window has been drawn: what comes back from the background runs between two
// frames, so the second time one lies behind it.
func (d *desktop) afterFrame(do func()) {
	again := func() func() { return do }
	parts.Background(func() func() {
		return func() { parts.Background(again) }
	})
}

// tracer writes marker lines for tests and benchmarks, where PRESSWORTH_TRACE asks for them.
func tracer(s shell) func(string) {
	if os.Getenv("PRESSWORTH_TRACE") == "" {
		return func(string) {}
	}
	return func(line string) { fmt.Fprintln(s.err, "pressworth:", line) }
}
