package ui

import (
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present/presenttest"
)

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

// asked stands in for the questions of the guided start.
type asked struct{ field *parts.Field }

func (a asked) Content() fyne.CanvasObject { return a.field }

func (a asked) Focus() { parts.Focus(a.field) }

func TestWindow_guidedStartHasTheFocusUntilItIsDone(t *testing.T) {
	d := open(t, -1, nil)
	a, done := asked{parts.NewField("")}, func() {}
	d.Begin(func(end func()) Guide { done = end; return a })
	d.Focus()
	if got := d.win.Canvas().Focused(); got != a.field {
		t.Errorf("got the focus on %v, want it in the first question", got)
	}
	done()
	if got := d.win.Canvas().Focused(); got == nil || got == a.field {
		t.Errorf("got the focus on %v, want it on the counter", got)
	}
}
