// Package book is the Quote book: every quote from the first price to the last press. A list with what needs doing
// today, a page for each quote, what is to be bought over all accepted quotes, customers, and the shelf.
//
// Not in this package: the shop file and documents, which are handed in as interfaces; prices, which are the engine's.
package book

import (
	"context"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// Place is the Quote book. What is nil of its exported fields is not offered.
type Place struct {
	quotes Quotes

	Ledger  Ledger
	Options Options
	Buying  Buying
	People  People
	Shelf   Shelf
	Papers  Papers
	Compare Comparing
	Figures Figures
	Now     func() time.Time
	// Explain says why a job priced at another time comes to another total.
	Explain func(then, now quote.Job) ([]Cause, error)

	OnOpen func(catalog.Draft) // shows a quote on the Counter
	OnCopy func(catalog.Draft) // shows it as a new quote

	OnState func(id int64, state string) // tells in which state a quote is that is shown; nil: nobody asks

	list   *list
	tabs   *parts.Tabs
	pages  []page // one for each tab
	over   []over // pages opened over the tabs, the topmost last
	stack  *fyne.Container
	frame  *fyne.Container // tabs and bands over the stack
	notice *parts.Band
	fault  *parts.Band
	undo   []step // ways back, the latest last
}

// page is a page of the place with a name in the line of tabs.
type page interface {
	content() fyne.CanvasObject // made once
	shown()                     // what it lists may have changed
	focus()
}

// over is a page opened over the others; Esc closes it.
type over interface {
	page
	// leaving is asked before it closes; false keeps it open.
	leaving() bool
}

// New makes the place.
func New(q Quotes) *Place {
	p := &Place{quotes: q, Now: time.Now, notice: parts.NewBand(parts.Note, ""), fault: parts.NewBand(parts.Fault, "")}
	p.list = newList(p)
	return p
}

// Content is part of the window's Place.
func (p *Place) Content() fyne.CanvasObject {
	names := []string{"Quotes"}
	p.pages = []page{p.list}
	add := func(name string, there bool, made func() page) {
		if there {
			names, p.pages = append(names, name), append(p.pages, made())
		}
	}
	add("To buy", p.Buying != nil, func() page { return newBuying(p) })
	add("Customers", p.People != nil, func() page { return newPeople(p) })
	add("Shelf", p.Shelf != nil, func() page { return newShelf(p) })
	add("Week", p.Figures != nil, func() page { return newWeek(p) })
	add("Learned", p.Figures != nil, func() page { return newLearn(p) })
	add("Reports", p.Figures != nil, func() page { return newReports(p) })
	p.tabs = parts.NewTabs(names...)
	p.tabs.OnChosen = func(i int) { p.turn(i); p.pages[i].focus() }
	if len(names) == 1 {
		p.tabs.Hide()
	}
	p.stack = container.NewStack(p.list.content())
	head := parts.Inset(look.PageMargin-6, 0, parts.Column(8, p.tabs, parts.Inset(6, 0, parts.Column(8, p.fault, p.notice))))
	p.frame = parts.Framed(container.New(aboveList{}, head), nil, p.stack)
	return p.frame
}

// relay sets what lies below the bands anew: they are as high as their words need.
func (p *Place) relay() {
	if p.frame != nil {
		p.frame.Refresh()
	}
}

// hush takes away what was said.
func (p *Place) hush() {
	p.notice.SetText("")
	p.fault.SetText("")
	p.relay()
}

// aboveList sets the line of tabs a little below the window's edge.
type aboveList struct{}

func (aboveList) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().AddWidthHeight(0, look.Px(10))
}

func (aboveList) Layout(o []fyne.CanvasObject, s fyne.Size) {
	o[0].Move(fyne.NewPos(0, look.Px(10)))
	o[0].Resize(fyne.NewSize(s.Width, max(s.Height-look.Px(10), 0)))
}

// turn shows a page of the line of tabs.
func (p *Place) turn(i int) {
	p.hush()
	p.tabs.SetShown(i)
	p.put(p.pages[i].content())
	p.pages[i].shown()
}

// put shows one object of the stack.
func (p *Place) put(o fyne.CanvasObject) {
	there := false
	for _, x := range p.stack.Objects {
		if x == o {
			x.Show()
			there = true
			continue
		}
		x.Hide()
	}
	if !there {
		p.stack.Add(o)
	}
	p.stack.Refresh()
}

// push opens a page over what is shown.
func (p *Place) push(o over) {
	p.hush()
	p.over = append(p.over, o)
	p.tabs.Hide()
	p.put(o.content())
	o.shown()
	o.focus()
}

// pop closes the topmost page and shows what lies below it anew.
func (p *Place) pop() {
	n := len(p.over)
	if n == 0 || !p.over[n-1].leaving() {
		return
	}
	p.over[n-1].content().Hide()
	p.stack.Remove(p.over[n-1].content())
	p.over = p.over[:n-1]
	below := p.top()
	if len(p.over) == 0 && len(p.pages) > 1 {
		p.tabs.Show()
	}
	p.put(below.content())
	below.shown()
	below.focus()
}

// top is the page that is shown.
func (p *Place) top() page {
	if n := len(p.over); n > 0 {
		return p.over[n-1]
	}
	return p.pages[p.tabs.Shown()]
}

// Focus is part of the window's Place.
func (p *Place) Focus() { p.top().focus() }

// Shown reads what is shown anew.
func (p *Place) Shown() { p.top().shown() }

// Escape closes the page over the others; false where none is open.
func (p *Place) Escape() bool {
	if len(p.over) == 0 {
		return false
	}
	p.pop()
	return true
}

func (p *Place) today() string { return p.Now().Format(time.DateOnly) }

// day writes a day the way the form does.
func (p *Place) day(iso string) string { return present.ShowDate(iso, p.Now()) }

func (p *Place) failed(what string, err error) {
	if err != nil {
		p.notice.SetText("")
		p.fault.SetText(what + ": " + err.Error())
		p.relay()
		return
	}
	if p.fault.Text() != "" {
		p.fault.SetText("")
		p.relay()
	}
}

// said tells what was done, with the way back where there is one.
func (p *Place) said(text string) {
	p.notice.SetText(text)
	p.notice.Offer("Dismiss", p.hush)
	defer p.relay()
	if len(p.undo) > 0 && p.undo[len(p.undo)-1].fresh {
		p.notice.Offer("Undo", p.Undo)
	}
}

// step is a way back.
type step struct {
	done  string // what is said afterwards
	back  func(ctx context.Context) error
	fresh bool // nothing else was done since
}

// deed is something done to the shop file.
type deed struct {
	doing string // what could not be done, where it fails
	done  string // what is said where it worked
	work  func(ctx context.Context) error
	back  *step  // takes it back; nil: it cannot be
	then  func() // what follows once it worked
}

// act does something off the window's goroutine, tells it and shows the page anew.
func (p *Place) act(doing, done string, work func(ctx context.Context) error, back *step) {
	p.do(deed{doing: doing, done: done, work: work, back: back})
}

// undoable is act for work that gives its own way back; undone is what is said once it was taken.
func (p *Place) undoable(doing, done, undone string, work func(ctx context.Context) (Back, error)) {
	var back Back
	p.act(doing, done, func(ctx context.Context) (err error) {
		back, err = work(ctx)
		return err
	}, &step{done: undone, back: func(ctx context.Context) error { return back(ctx) }})
}

func (p *Place) do(d deed) {
	parts.Background(func() func() {
		err := d.work(context.Background())
		return func() {
			p.failed(d.doing, err)
			if err != nil {
				return
			}
			for i := range p.undo {
				p.undo[i].fresh = false
			}
			if d.back != nil {
				d.back.fresh = true
				p.undo = append(p.undo, *d.back)
			}
			p.said(d.done)
			p.Shown()
			if d.then != nil {
				d.then()
			}
		}
	})
}

// Undo takes back the last thing done here. Where that does not work the way back stays.
func (p *Place) Undo() {
	n := len(p.undo)
	if n == 0 {
		return
	}
	last := p.undo[n-1]
	parts.Background(func() func() {
		err := last.back(context.Background())
		return func() {
			p.failed("That could not be taken back", err)
			if err == nil {
				p.undo = p.undo[:n-1]
				p.said(last.done)
				p.Shown()
			}
		}
	})
}

// Redo is part of the window's Undoer; what was taken back is done anew.
func (p *Place) Redo() {}
