package present

import (
	"errors"
	"time"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/present/artwork"
)

// Counter is the presenter of the Counter: one draft with its history, and its price.
type Counter struct {
	shop   Shop
	engine Engine

	draft   catalog.Draft
	history history
	book    catalog.Book
	bookErr error

	job         quote.Job
	result      quote.Result
	priced      bool // result holds figures
	current     bool // of the draft as it stands
	provisional bool // result is the first stage of two
	problems    []quote.Problem

	later       later
	changed     bool // since the last save
	generation  int
	jobNo       int               // of the job on the counter, among those of this sitting
	rowProblems map[string]string // what could not be read of a size run, by garment key
	savedAt     time.Time
	saveErr     error

	pictures map[string]artwork.Picture // by path, of this sitting

	last   []catalog.DraftPerson // the roster that this one is held against
	lastOf string                // what it is of; empty: none

	watchers []func(View)
	view     View
}

// NewCounter makes a presenter with an empty draft.
func NewCounter(shop Shop, engine Engine) *Counter {
	c := &Counter{shop: shop, engine: engine}
	c.Clear()
	return c
}

// Watch calls f with the view after every change, and once now.
func (c *Counter) Watch(f func(View)) {
	c.watchers = append(c.watchers, f)
	f(c.view)
}

// View is what the window shows at present.
func (c *Counter) View() View { return c.view }

// Draft is the draft as it stands. It must not be written to.
func (c *Counter) Draft() catalog.Draft { return c.draft }

// Job is the job of the last figures, and its whole result; false while nothing has been priced.
func (c *Counter) Job() (quote.Job, quote.Result, bool) {
	c.Settle()
	return c.job, c.result, c.priced
}

// Ready says whether the figures are those of the draft as it stands, so that papers can be made of them.
func (c *Counter) Ready() bool { return c.current }

// Settle makes the figures whole at once, where the rest of them is still being worked out: papers wait for it.
func (c *Counter) Settle() {
	if !c.current || !c.provisional {
		return
	}
	if r, err := c.engine.Settled(c.job); err == nil {
		c.result, c.provisional = r, false
		c.show()
	}
}

// Problems are all the things that keep the draft from being priced.
func (c *Counter) Problems() []quote.Problem { return c.problems }

// Clear starts a new draft with the extras the shop always takes. What was there is kept one undo away.
func (c *Counter) Clear() {
	before, had := c.state(), c.draft.QuotedOn != ""
	c.Open(catalog.Draft{State: "draft", QuotedOn: c.today()})
	if had {
		c.history.keep(before, "")
	}
	for _, e := range c.book.Shop.Extras {
		if e.Usual {
			c.draft.Extras = append(c.draft.Extras, catalog.TakeExtra(e))
		}
	}
	c.reprice()
}

// Open shows a draft, kept or new. Its history starts anew.
func (c *Counter) Open(d catalog.Draft) {
	if d.QuotedOn == "" {
		d.QuotedOn = c.today()
	}
	c.draft, c.history = d, history{}
	c.jobNo++
	c.generation++
	c.priced, c.current, c.changed = false, false, false
	c.last, c.lastOf = nil, ""
	c.savedAt, c.saveErr = time.Time{}, nil
	c.later = later{seq: c.later.seq + 1, running: c.later.running}
	c.Reload()
}

// Reload takes the prices in force anew, after the shop's lists have changed, and prices with them.
func (c *Counter) Reload() {
	c.book, c.bookErr = c.shop.Book(styleIDs(c.draft), c.draft.QuotedOn)
	c.draft = c.withAllSizes(c.draft)
	c.reprice()
}

// Today sets the day whose prices are used to today.
func (c *Counter) Today() {
	c.edit("quoted_on", func(d *catalog.Draft) { d.QuotedOn = c.today() })
	c.Reload()
}

// Undo takes the last edit back.
func (c *Counter) Undo() {
	if d, ok := c.history.undo(c.state()); ok {
		c.restore(d)
	}
}

// Redo does again what Undo took back.
func (c *Counter) Redo() {
	if d, ok := c.history.redo(c.state()); ok {
		c.restore(d)
	}
}

// Leave tells that a field was left: the next edit of it is undone by itself.
func (c *Counter) Leave() { c.history.close() }

func (c *Counter) state() state { return state{c.draft, c.jobNo} }

// restore shows an earlier draft; number and id, once given to its job, stay.
func (c *Counter) restore(s state) {
	d := s.draft
	if d.ID == 0 && s.job == c.jobNo {
		d.ID, d.Number = c.draft.ID, c.draft.Number
	}
	c.jobNo = s.job
	c.draft, c.changed = d, true
	c.generation++
	if c.missing() {
		c.Reload()
		return
	}
	c.reprice()
}

// edit changes the draft and prices it. Edits of one path in a row are one step of the history.
func (c *Counter) edit(path string, change func(d *catalog.Draft)) {
	before := c.state()
	after := clone(before.draft)
	change(&after)
	c.dressTexts(&after)
	c.history.keep(before, path)
	c.draft, c.changed = after, true
	if c.missing() {
		c.Reload()
		return
	}
	c.reprice()
}

func (c *Counter) reprice() {
	c.problems, c.current = nil, false
	job, problems := c.engine.Freeze(c.draft, c.book, c.draft.QuotedOn)
	c.problems = problems
	if len(problems) == 0 {
		c.price(job)
	}
	c.follow()
	c.show()
}

func (c *Counter) price(job quote.Job) {
	result, err := c.engine.Price(job)
	if err != nil {
		c.problems = problemsOf(err)
		return
	}
	c.job, c.result, c.priced, c.current = job, result, true, true
	c.provisional = c.engine.Whole != nil
}

func problemsOf(err error) []quote.Problem {
	var p quote.Problems
	if errors.As(err, &p) {
		return p
	}
	return []quote.Problem{{Problem: err.Error()}}
}

func (c *Counter) show() {
	c.view = c.build()
	for _, f := range c.watchers {
		f(c.view)
	}
}

func (c *Counter) today() string { return c.shop.Now().Format(iso) }

// missing says whether the draft names a style that the book does not hold.
func (c *Counter) missing() bool {
	for _, id := range styleIDs(c.draft) {
		if _, ok := c.book.Styles[id]; !ok {
			return c.bookErr == nil
		}
	}
	return false
}
