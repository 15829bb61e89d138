package ui

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/blanks"
	"pressworth/ui/book/booktest"
	"pressworth/ui/cards"
	"pressworth/ui/look"
	"pressworth/ui/parts"
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
	deps := Deps{
		Presenter: presenter, Book: booktest.New().Place(), Blanks: garments,
		Cards: cards.New(lists{d.shop}, func() time.Time { return presenttest.Day }), Shop: shop.New(file{d.shop.Demo}, sample, "shop.db"),
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
func (d *desk) texts() []string {
	var out []string
	walk(d.win.Content(), func(o fyne.CanvasObject) {
		if line, ok := o.(*canvas.Text); ok && line.Text != "" {
			out = append(out, line.Text)
		}
	})
	return out
}

func walk(o fyne.CanvasObject, visit func(fyne.CanvasObject)) {
	if o == nil || !o.Visible() {
		return
	}
	visit(o)
	switch o := o.(type) {
	case *fyne.Container:
		for _, child := range o.Objects {
			walk(child, visit)
		}
	case fyne.Widget:
		for _, child := range test.WidgetRenderer(o).Objects() {
			walk(child, visit)
		}
	}
}

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

func TestWindow_placesAreReachedByTheirKeys(t *testing.T) {
	d := open(t, 0, nil)
	for n, want := range []string{"Garments", "Harbour Rowing Club", "Search by style, name, colour, mill or category", "What it takes", "Sample job"} {
		if !d.menuShortcut(ctrl(fyne.KeyName("12345"[n : n+1]))) {
			t.Fatalf("Ctrl+%d is not in the menu", n+1)
		}
		if d.At() != n+1 || !d.shows(want) {
			t.Errorf("Ctrl+%d: at place %d, want %q to be shown", n+1, d.At(), want)
		}
		if d.win.Canvas().Focused() == nil {
			t.Errorf("Ctrl+%d: nothing has the focus", n+1)
		}
	}
}

func TestWindow_railGoesToThePlaceThatIsTapped(t *testing.T) {
	d := open(t, 0, nil)
	test.Tap(d.rail.items[blanksPlace])
	if d.At() != 3 || !d.rail.items[blanksPlace].Active() || d.rail.items[counterPlace].Active() {
		t.Errorf("at place %d, Blanks marked %v, Counter marked %v", d.At(), d.rail.items[blanksPlace].Active(), d.rail.items[counterPlace].Active())
	}
}

func TestWindow_everyShortcutIsInTheMenuOnce(t *testing.T) {
	d := open(t, 0, nil)
	seen := map[string]string{}
	for _, m := range d.win.MainMenu().Items {
		for _, i := range m.Items {
			if i.Shortcut == nil {
				continue
			}
			if other := seen[i.Shortcut.ShortcutName()]; other != "" {
				t.Errorf("%s and %s share %s", other, i.Label, i.Shortcut.ShortcutName())
			}
			seen[i.Shortcut.ShortcutName()] = i.Label
		}
	}
	if len(seen) < 15 {
		t.Errorf("got %d shortcuts: %v", len(seen), seen)
	}
}

func TestWindow_customersSideClosesEverythingOfTheShop(t *testing.T) {
	d := open(t, 0, nil)
	margin := d.deps.Presenter.View().Panel.Margin
	d.say(parts.Note, "a word of the shop's")
	if !d.menuShortcut(ctrl(fyne.KeyT)) || !d.Customer() {
		t.Fatal("Ctrl+T did not turn the window")
	}
	for _, hidden := range []string{margin, "Rate cards", "Cost", "a word of the shop's", d.deps.Presenter.View().Status.Number} {
		if hidden != "" && d.shows(hidden) {
			t.Errorf("%q can be seen", hidden)
		}
	}
	if d.win.MainMenu() != nil {
		t.Error("the menu is open")
	}
	if d.win.Title() != "Harbour & Pine Print Room" {
		t.Errorf("title: got %q", d.win.Title())
	}
	d.Go(4)
	d.Write(CostPaper)
	if d.At() != 1 || !d.Customer() || len(d.papers.written) > 0 {
		t.Errorf("a place or a paper of the shop's could be reached: place %d, papers %v", d.At(), d.papers.written)
	}
	d.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyF2})
	if d.Customer() || !d.shows("Rate cards") || d.win.MainMenu() == nil {
		t.Error("F2 did not turn the window back")
	}
}

func TestWindow_wayBackAsksForThePIN(t *testing.T) {
	d := open(t, 0, func(deps *Deps) { deps.PIN = func(typed string) bool { return typed == "4711" } })
	d.Turn()
	d.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyF2})
	if !d.Customer() || d.pin == nil {
		t.Fatal("no PIN was asked for")
	}
	enter := &fyne.KeyEvent{Name: fyne.KeyReturn}
	test.Type(d.pin.entry, "0000")
	d.pin.entry.TypedKey(enter)
	if !d.Customer() || d.pin.field.Problem() == "" {
		t.Error("a wrong PIN was taken, or nothing was said")
	}
	if d.shows("4711") || d.shows("0000") {
		t.Error("the PIN can be read")
	}
	test.Type(d.pin.entry, "4711")
	d.pin.entry.TypedKey(enter)
	if d.Customer() {
		t.Error("the right PIN was not taken")
	}
}

func TestWindow_papersAreWrittenAndTheirPathSaid(t *testing.T) {
	d := open(t, 0, nil)
	d.menuShortcut(ctrl(fyne.KeyP))
	total := d.deps.Presenter.View().Panel.Total
	if len(d.papers.written) != 1 || d.papers.written[0] != QuotePaper || len(d.papers.opened) != 1 {
		t.Fatalf("written %v, opened %v", d.papers.written, d.papers.opened)
	}
	if !strings.Contains(d.Notice(), d.papers.opened[0]) {
		t.Errorf("notice %q does not say %s", d.Notice(), d.papers.opened[0])
	}
	want := []string{"priced " + total, "wrote " + d.papers.opened[0]}
	if strings.Join(d.trace, "|") != strings.Join(want, "|") {
		t.Errorf("trace: got %q, want %q", d.trace, want)
	}
}

func TestWindow_paperThatCannotBeWrittenIsSaid(t *testing.T) {
	d := open(t, 0, nil)
	d.papers.err = errors.New("disk full")
	d.Write(CostPaper)
	if !strings.Contains(d.Notice(), "disk full") || len(d.papers.opened) > 0 {
		t.Errorf("notice %q, opened %v", d.Notice(), d.papers.opened)
	}
}

func TestWindow_jobThatCannotBePricedHasNoPapers(t *testing.T) {
	d := open(t, -1, nil)
	d.Write(QuotePaper)
	if len(d.papers.written) > 0 || d.Notice() == "" {
		t.Errorf("written %v, notice %q", d.papers.written, d.Notice())
	}
	if !d.status.papers[2].Disabled() {
		t.Error("the button of the quote can be pressed")
	}
}

func TestWindow_closingSavesAndStaysOnceWhereThatFails(t *testing.T) {
	d := open(t, 0, nil)
	d.deps.Presenter.SetTitle("Regatta shirts")
	d.shop.SaveErr = errors.New("disk full")
	d.Close()
	if !strings.Contains(d.Notice(), "disk full") {
		t.Errorf("notice: got %q, want the reason", d.Notice())
	}
	d.shop.SaveErr = nil
	d.Close()
	if n := len(d.shop.Saved); n == 0 || d.shop.Saved[n-1].Title != "Regatta shirts" {
		t.Errorf("saved: %d drafts", n)
	}
}

func TestWindow_draftSavesItselfAMomentAfterTheLastKey(t *testing.T) {
	moment := make(chan time.Time, 9)
	d := open(t, 0, func(deps *Deps) { deps.After = func(time.Duration) <-chan time.Time { return moment } })
	moment <- presenttest.Day // Background is inline: the moment has come already
	d.deps.Presenter.SetTitle("Regatta")
	if n := len(d.shop.Saved); n != 1 || d.shop.Saved[0].Title != "Regatta" {
		t.Errorf("saved %d drafts", n)
	}
}

func TestWindow_undoAndRedoReachTheCounter(t *testing.T) {
	d := open(t, 0, nil)
	before := d.deps.Presenter.Draft().Title
	d.deps.Presenter.SetTitle("Other")
	d.menuShortcut(&fyne.ShortcutUndo{})
	if got := d.deps.Presenter.Draft().Title; got != before {
		t.Errorf("undo: got %q, want %q", got, before)
	}
	d.menuShortcut(&fyne.ShortcutRedo{})
	if got := d.deps.Presenter.Draft().Title; got != "Other" {
		t.Errorf("redo: got %q, want Other", got)
	}
}

func TestWindow_settingsChangeTheThemeAndAreKept(t *testing.T) {
	var kept Settings
	d := open(t, 0, func(deps *Deps) { deps.Keep = func(s Settings) { kept = s } })
	d.SetMode(look.Dark)
	d.menuShortcut(ctrl(fyne.KeyEqual))
	if kept.Mode != look.Dark || kept.Percent != 110 {
		t.Errorf("kept %+v", kept)
	}
	th, ok := fyne.CurrentApp().Settings().Theme().(*look.Theme)
	if !ok || th.Mode() != look.Dark || th.Percent() != 110 {
		t.Errorf("theme: got %v", th)
	}
}

func TestWindow_pagesOpenOverThePlaceAndEscClosesThem(t *testing.T) {
	d := open(t, 0, nil)
	for name, page := range map[string]func(){"Help": d.Help, "Keys": d.Keys, "Cautions": d.Cautions, "About": d.AboutPage} {
		page()
		if d.Page() == nil {
			t.Fatalf("%s: nothing opened", name)
		}
		focused := d.win.Canvas().Focused()
		if focused == nil {
			t.Fatalf("%s: nothing has the focus", name)
		}
		focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if d.Page() != nil {
			t.Errorf("%s: Esc did not close it", name)
		}
	}
}

func TestWindow_choiceOfFilesOpensAndEscClosesIt(t *testing.T) {
	d := open(t, 0, nil)
	d.ChooseFile(func(string) { t.Error("a file was chosen by nobody") })
	if d.chooser == nil || d.win.Canvas().Overlays().Top() == nil {
		t.Fatal("nothing opened")
	}
	d.win.Canvas().OnTypedKey()(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if d.chooser != nil || d.win.Canvas().Overlays().Top() != nil {
		t.Error("Esc did not close it")
	}
}
