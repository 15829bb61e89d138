package ui

import (
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/counter"
	"pressworth/ui/customer"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Name is the program's name, as the window's title says it.
const Name = "Pressworth"

// Size is how large the window is at first.
var Size = fyne.NewSize(1400, 900)

// Window is the whole window.
type Window struct {
	deps   Deps
	win    fyne.Window
	rail   *rail
	status *status
	notice *parts.Band

	stage  *fyne.Container // the places gone to so far, one of them visible
	places [placeCount]Place
	made   [placeCount]fyne.CanvasObject
	at     placeID
	page   fyne.CanvasObject // a help page over the places, or nil
	guide  Guide             // the page, where it is one of questions

	shop     *fyne.Container // everything of the shop's side
	side     *customer.Side
	front    fyne.CanvasObject
	root     *fyne.Container
	customer bool
	later    string // what Warn had to say on the customer's side
	pin      *pinPrompt
	chooser  interface{ Hide() } // the choice of files while it is open

	warned bool   // it was said that closing would lose something
	saving bool   // a save is waiting for its moment
	priced string // the total that was traced last
}

type placeID int

// The places in the order of the rail.
const (
	counterPlace placeID = iota
	bookPlace
	blanksPlace
	cardsPlace
	shopPlace
	placeCount
)

// New fills a window of the toolkit. It shows the Counter.
func New(win fyne.Window, deps Deps) *Window {
	w := &Window{deps: deps, win: win, stage: container.NewStack(), notice: parts.NewBand(parts.Note, "")}
	w.side = customer.New(deps.Presenter.Front)
	w.places = [placeCount]Place{counter.New(deps.Presenter), deps.Book, deps.Blanks, deps.Cards, deps.Shop}
	w.rail = newRail(w.Go)
	w.status = newStatus(w)
	w.shop = container.New(&shellLayout{}, w.stage, w.rail.object, w.status.object, w.notice)
	w.root = container.NewStack(w.shop)
	win.SetPadded(false)
	win.SetContent(parts.NewLayered(w.root))
	win.SetMainMenu(w.menu())
	win.Canvas().SetOnTypedKey(w.key)
	w.addShortcuts()
	win.SetCloseIntercept(w.Close)
	win.Resize(Size)
	w.show(counterPlace)
	deps.Presenter.Watch(w.watch)
	return w
}

// Bare is what the window shows until it is filled: its ground, and where the rail will stand.
func Bare() fyne.CanvasObject {
	rail := container.NewHBox(parts.Gap(look.RailWidth, 0), parts.NewUpright())
	return container.NewBorder(nil, nil, rail, nil)
}

// watch follows the Counter: bar, title, markers, and the save that comes a moment after the last edit.
func (w *Window) watch(v present.View) {
	w.status.show(v.Status)
	w.title(v)
	if total := v.Panel.Total; v.Panel.Hint == "" && total != "" && total != w.priced {
		w.priced = total
		w.trace("priced " + total)
	}
	if w.deps.Presenter.Unsaved() {
		w.saveSoon()
	}
}

func (w *Window) trace(line string) {
	if w.deps.Trace != nil {
		w.deps.Trace(line)
	}
}

func (w *Window) title(v present.View) {
	title := w.deps.ShopName
	if !w.customer {
		title = Name
		if v.Status.Number != "" {
			title += " – " + v.Status.Number
		}
	}
	if w.win.Title() != title {
		w.win.SetTitle(title)
	}
}

// saveDelay is how long after an edit the draft is kept.
const saveDelay = 900 * time.Millisecond

func (w *Window) saveSoon() {
	if w.saving || w.deps.After == nil || w.deps.LookOnly {
		return
	}
	w.saving = true
	moment := w.deps.After(saveDelay)
	parts.Background(func() func() {
		<-moment
		return func() {
			w.saving = false
			w.save()
		}
	})
}

// save keeps what was typed; what cannot be kept is said, and stays typed. Where one only looks, there is nothing to keep.
func (w *Window) save() bool {
	if w.deps.LookOnly {
		return true
	}
	if err := w.deps.Presenter.Save(); err != nil {
		w.say(parts.Fault, "The quote could not be saved: "+err.Error())
		return false
	}
	for _, p := range w.places {
		if s, ok := p.(Saver); ok {
			if err := s.Save(); err != nil {
				w.say(parts.Fault, err.Error())
				return false
			}
		}
	}
	return true
}

// Close saves and closes. Where saving does not work the window stays once, with the reason said, so that what was
// typed can be copied; a second try closes it.
func (w *Window) Close() {
	if !w.save() && !w.warned {
		w.warned = true
		w.say(parts.Fault, w.Notice()+". Close once more to leave without saving.")
		return
	}
	w.win.SetCloseIntercept(nil)
	w.win.Close()
}

// Focus puts the focus where the place that is shown begins.
func (w *Window) Focus() {
	if w.guide != nil {
		w.guide.Focus()
		return
	}
	w.places[w.at].Focus()
}

// shellLayout sets the rail at the left, the bar at the bottom, a notice over it, and the place in the rest. Its
// objects are: stage, rail, status, notice.
type shellLayout struct{}

func (*shellLayout) MinSize(o []fyne.CanvasObject) fyne.Size {
	rail, bar, stage := o[1].MinSize(), o[2].MinSize(), o[0].MinSize()
	return fyne.NewSize(max(rail.Width+stage.Width, bar.Width), max(rail.Height, stage.Height)+bar.Height)
}

func (*shellLayout) Layout(o []fyne.CanvasObject, s fyne.Size) {
	rail, bar := o[1].MinSize().Width, o[2].MinSize().Height
	o[0].Move(fyne.NewPos(rail, 0))
	o[0].Resize(fyne.NewSize(max(s.Width-rail, 0), max(s.Height-bar, 0)))
	o[1].Resize(fyne.NewSize(rail, max(s.Height-bar, 0)))
	o[2].Move(fyne.NewPos(0, s.Height-bar))
	o[2].Resize(fyne.NewSize(s.Width, bar))
	x, wide := rail+look.Px(20), s.Width-rail-2*look.Px(20)
	o[3].Resize(fyne.NewSize(wide, o[3].MinSize().Height))
	h := o[3].MinSize().Height
	o[3].Resize(fyne.NewSize(wide, h))
	o[3].Move(fyne.NewPos(x, s.Height-bar-h-look.Px(10)))
}
