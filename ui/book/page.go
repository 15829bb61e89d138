package book

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// quotePage is one quote: what is to be done next at the top left, below it what it offers and what was sent; at the
// right its money, papers, dates and customer.
type quotePage struct {
	place *Place
	id    int64
	head  catalog.QuoteHead
	named bool // it has names and numbers
	turn  int

	offers  []catalog.ShelfOffer // what the shelf has for it
	designs []catalog.Design     // what is on file for its customer

	object fyne.CanvasObject
	state  *parts.Badge
	number *parts.Text
	name   *parts.Text
	title  *parts.Text
	pieces *parts.Field
	left   *fyne.Container
	right  *fyne.Container
	first  fyne.Focusable    // where one begins: the button of the next step
	seals  map[int64]sealing // what was found of each revision's seal
	sealed *parts.Table
}

// sealing is whether a revision is as it was frozen.
type sealing struct {
	known  bool
	intact bool
	why    string
}

// openQuote shows the page of a quote.
func (p *Place) openQuote(id int64) {
	if id == 0 {
		return
	}
	if p.Ledger == nil {
		p.toCounter(id)
		return
	}
	p.push(newQuotePage(p, id))
}

// toCounter shows a quote on the Counter.
func (p *Place) toCounter(id int64) {
	p.fetch(id, func(d catalog.Draft) { p.OnOpen(d) })
}

// again makes a new quote of one on the Counter: the same for so many pieces, 0 for as many as before.
func (p *Place) again(id int64, pieces int) {
	if p.Ledger == nil {
		p.fetch(id, func(d catalog.Draft) { p.OnCopy(d) })
		return
	}
	parts.Background(func() func() {
		d, err := p.Ledger.Duplicate(context.Background(), id, pieces)
		return func() {
			p.failed("The quote could not be repeated", err)
			if err == nil {
				p.OnCopy(d)
			}
		}
	})
}

func newQuotePage(p *Place, id int64) *quotePage {
	q := &quotePage{
		place: p, id: id, state: parts.NewBadge("", look.Muted), number: parts.NewText("", parts.MutedStyle.Shortened()),
		name: parts.NewText("", parts.KeyStyle.Shortened()), title: parts.NewText("", parts.MutedStyle.Shortened()),
		left: parts.Column(look.SectionApart), right: parts.Column(look.SectionApart), seals: map[int64]sealing{},
	}
	q.pieces = parts.NewCell()
	q.pieces.Unit = "pcs"
	again := parts.NewSmallDeed(parts.Quiet, "Same again", q.repeat)
	q.pieces.OnSubmitted = func(string) { q.repeat() }
	back := parts.NewSmallButton(parts.Quiet, "Back", p.pop)
	counter := parts.NewSmallButton(parts.Quiet, "Open on the counter", func() { p.toCounter(id) })
	line := parts.Row(10, []parts.Track{parts.Fit(), parts.Fit(), parts.Share(1), parts.Fixed(84), parts.Fit(), parts.Fit()},
		back, q.state, q.number, q.pieces, again, counter)
	names := parts.Column(2, q.name, q.title)
	body := parts.NewPageScroll(parts.Column(14, line, names, container.New(mainAndSide{}, q.left, q.right)))
	q.object = container.New(pageEdges{}, body)
	return q
}

// repeat makes a new quote of this one for as many pieces as were typed.
func (q *quotePage) repeat() {
	text := strings.TrimSpace(q.pieces.Text())
	n, err := strconv.Atoi(text)
	q.pieces.SetWrong(text != "" && (err != nil || n < 1))
	if q.pieces.Wrong() {
		return
	}
	if n == q.head.Pieces {
		n = 0
	}
	q.place.again(q.id, n)
}

func (q *quotePage) content() fyne.CanvasObject { return q.object }
func (q *quotePage) leaving() bool              { return true }

func (q *quotePage) focus() {
	if q.first != nil {
		parts.Focus(q.first)
	}
}

func (q *quotePage) shown() {
	q.turn++
	turn := q.turn
	parts.Background(func() func() {
		head, err := q.place.Ledger.Quote(context.Background(), q.id)
		var draft catalog.Draft
		if err == nil {
			draft, err = q.place.quotes.Draft(context.Background(), q.id)
		}
		var offers []catalog.ShelfOffer
		if err == nil {
			offers, err = q.readOffers(draft)
		}
		var designs []catalog.Design
		if err == nil {
			designs, err = q.readDesigns(head.CustomerID)
		}
		return func() {
			if turn != q.turn {
				return
			}
			if err != nil {
				q.place.failed("The quote could not be read", err)
				return
			}
			q.head, q.named, q.offers, q.designs = head, len(draft.Roster) > 0, offers, designs
			q.show()
			q.checkSeals(turn)
		}
	})
}

func (q *quotePage) show() {
	h := q.head
	if q.place.OnState != nil {
		q.place.OnState(h.ID, h.State)
	}
	q.state.Set(h.State, StateColor(h.State))
	q.number.SetText(numbered(h.QuoteRow))
	q.name.SetText(or(h.Customer, "no name yet"))
	words := []string{}
	for _, w := range []string{h.Title, countOf(h.Pieces, "piece"), neededWords(q.place, h.NeededBy), orderWords(h.PONumber)} {
		if w != "" {
			words = append(words, w)
		}
	}
	q.title.SetText(strings.Join(words, " · "))
	q.pieces.SetHint(fmt.Sprint(h.Pieces))
	q.first = nil
	q.left.Objects = saying(q.next(), q.fromShelf(), q.options(), q.revisions(), q.onFile(), q.history())
	q.right.Objects = saying(q.money(), q.papers(), q.dates())
	q.left.Refresh()
	q.right.Refresh()
	q.object.Refresh()
	if q.first != nil {
		parts.Focus(q.first)
	}
}

// saying leaves out the sections that have nothing to say.
func saying(all ...fyne.CanvasObject) []fyne.CanvasObject {
	out := []fyne.CanvasObject{}
	for _, o := range all {
		if o != nil {
			out = append(out, o)
		}
	}
	return out
}

func neededWords(p *Place, day string) string {
	if day == "" {
		return ""
	}
	return "needed by " + p.until(day)
}

// orderWords names the customer's own order number, where there is one.
func orderWords(number string) string {
	if number == "" {
		return ""
	}
	return "their order " + number
}

// countOf writes a number with its noun; nothing for 0.
func countOf(n int, noun string) string {
	switch n {
	case 0:
		return ""
	case 1:
		return "1 " + noun
	}
	return present.Grouped(fmt.Sprint(n)) + " " + noun + "s"
}

// mainAndSide sets the right column beside the left one, or below it where it is narrow.
type mainAndSide struct{}

const (
	sideWide = 372
	sideFrom = 800 // narrower than this the side goes below
)

func (mainAndSide) wide(width float32) (left, side float32) {
	if width < look.Px(sideFrom) {
		return width, 0
	}
	side = min(look.Px(sideWide), width*0.4)
	return width - side - look.Px(look.SectionApart), side
}

func (m mainAndSide) MinSize(o []fyne.CanvasObject) fyne.Size {
	a, b := o[0].MinSize(), o[1].MinSize()
	if o[1].Position().X > 0 {
		return fyne.NewSize(look.Px(300), max(a.Height, b.Height))
	}
	return fyne.NewSize(look.Px(300), a.Height+look.Px(look.SectionApart)+b.Height)
}

func (m mainAndSide) Layout(o []fyne.CanvasObject, s fyne.Size) {
	left, side := m.wide(s.Width)
	tall(o[0], left)
	if side == 0 {
		o[0].Move(fyne.NewPos(0, 0))
		tall(o[1], left)
		o[1].Move(fyne.NewPos(0, o[0].Size().Height+look.Px(look.SectionApart)))
		return
	}
	tall(o[1], side)
	o[0].Move(fyne.NewPos(0, 0))
	o[1].Move(fyne.NewPos(left+look.Px(look.SectionApart), 0))
}

// tall gives an object a width and the height it needs there: a paragraph knows its height once it knows its width.
func tall(o fyne.CanvasObject, width float32) {
	for range 2 {
		o.Resize(fyne.NewSize(width, o.MinSize().Height))
	}
}

// pageEdges keeps a page from the window's edges; what scrolls runs to the bottom.
type pageEdges struct{}

func (pageEdges) MinSize(o []fyne.CanvasObject) fyne.Size {
	return o[0].MinSize().AddWidthHeight(2*look.Px(look.PageMargin), look.Px(14))
}

func (pageEdges) Layout(o []fyne.CanvasObject, s fyne.Size) {
	x, top := look.Px(look.PageMargin), look.Px(8)
	o[0].Move(fyne.NewPos(x, top))
	o[0].Resize(fyne.NewSize(max(s.Width-2*x+10, 0), max(s.Height-top, 0)))
}
