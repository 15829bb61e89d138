package book

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// buyingPage is what is to be bought for all accepted quotes, a section a supplier: ordered, here, or delivered short.
type buyingPage struct {
	place  *Place
	object fyne.CanvasObject
	body   *fyne.Container
	all    *parts.Check
	turn   int
	first  fyne.Focusable
	wanted bool   // the focus goes to the first button once there is one
	open   string // the goods whose delivery is being counted in, by supplier and name
}

func newBuying(p *Place) page {
	b := &buyingPage{place: p, body: parts.Column(look.SectionApart)}
	b.all = parts.NewCheck("what is done with too", func(bool) { b.shown() })
	line := parts.Row(12, []parts.Track{parts.Share(1), parts.Fit()},
		parts.NewText("Over all accepted quotes, with their spares. What is needed first is given first.", parts.MutedStyle.Shortened()), b.all)
	b.object = container.New(pageEdges{}, parts.NewPageScroll(parts.Column(12, line, b.body)))
	return b
}

func (b *buyingPage) content() fyne.CanvasObject { return b.object }

func (b *buyingPage) focus() {
	b.wanted = b.first == nil
	if b.first != nil {
		parts.Focus(b.first)
		return
	}
	parts.Focus(b.all)
}

func (b *buyingPage) shown() {
	b.turn++
	turn, all := b.turn, b.all.Checked()
	parts.Background(func() func() {
		rows, err := b.place.Buying.PurchaseList(context.Background(), all)
		return func() {
			if turn != b.turn {
				return
			}
			if err != nil {
				b.place.failed("The purchase list could not be read", err)
			}
			b.show(bySupplier(rows))
		}
	})
}

func (b *buyingPage) show(suppliers []buySupplier) {
	b.body.Objects, b.first = nil, nil
	for _, s := range suppliers {
		b.body.Add(b.section(s))
	}
	if len(suppliers) == 0 {
		b.body.Add(parts.NewSection("Nothing is to be bought", "", parts.NewParagraph("When a quote is accepted its blanks and transfers come here, together with those of the others.", parts.MutedStyle)))
	}
	b.body.Refresh()
	b.object.Refresh()
	if b.wanted && b.first != nil {
		b.focus()
	}
}

func (b *buyingPage) section(s buySupplier) fyne.CanvasObject {
	rows := parts.Column(0)
	var open, coming []int64
	for i, g := range s.goods {
		if i > 0 {
			rows.Add(parts.NewRule())
		}
		rows.Add(parts.Inset(0, 8, b.goods(s, g)))
		open = append(open, g.parts(partToOrder)...)
		coming = append(coming, g.parts(partAwaited)...)
	}
	sec := parts.NewSection(s.name, countOf(len(s.goods), "line"), rows)
	if b.place.Papers != nil {
		sec.Right.Add(parts.NewSmallButton(parts.Quiet, "List as PDF", func() {
			b.place.writing("Purchase list", "", func(ctx context.Context) (string, error) { return b.place.Papers.BuyingList(ctx, s.key) })
		}))
	}
	if len(coming) > 0 {
		sec.Right.Add(parts.NewSmallDeed(parts.Quiet, "All is here", func() { b.mark(coming, "received", s.name+": everything on the way is here.") }))
	}
	if len(open) > 0 {
		kind := parts.Quiet
		if b.first == nil {
			kind = parts.Filled
		}
		all := parts.NewSmallDeed(kind, "All ordered", func() { b.mark(open, "ordered", s.name+": everything is ordered.") })
		if b.first == nil {
			b.first = all
		}
		sec.Right.Add(all)
	}
	return sec
}

// goods is one line: what it is, how many of each size, for which quotes, how far it is, and what can be done.
func (b *buyingPage) goods(s buySupplier, g buyGoods) fyne.CanvasObject {
	numbers, first := g.quotes()
	who := "for " + strings.Join(numbers, ", ")
	if first != "" {
		who += " · needed by " + b.place.near(first)
	}
	style := parts.Style{Color: look.Accent}
	switch {
	case g.sum(short) > 0:
		style.Color = look.Fault
	case g.sum(toOrder) > 0:
		style.Color = look.Warn
	case g.sum(awaited) == 0:
		style.Color = look.Muted
	}
	words := parts.Column(2,
		parts.NewText(g.name, parts.StrongStyle.Shortened()),
		parts.NewText(g.sizes(needed), parts.Style{Cut: true}), parts.NewText(who, parts.MutedStyle.Shortened()))
	key := s.key + "\n" + g.name
	line := parts.TopRow(14, []parts.Track{parts.Share(1), parts.Fixed(250)}, words, parts.Column(6, parts.NewText(g.stand(), style.Right()), b.deeds(key, g)))
	if b.open == key && g.sum(awaited) > 0 {
		return parts.Column(8, line, b.delivery(key, g))
	}
	return line
}

func (b *buyingPage) deeds(key string, g buyGoods) fyne.CanvasObject {
	deeds := parts.Row(6, []parts.Track{parts.Share(1)}, parts.Gap(0, 0))
	if ids := g.parts(partToOrder); len(ids) > 0 {
		deeds.Add(parts.NewSmallDeed(parts.Quiet, "Ordered", func() { b.mark(ids, "ordered", g.name+" is ordered.") }))
	}
	if ids := g.parts(partAwaited); len(ids) > 0 {
		deeds.Add(parts.NewSmallDeed(parts.Quiet, "All here", func() { b.mark(ids, "received", g.name+" is here.") }))
		deeds.Add(parts.NewSmallButton(parts.Quiet, "Count in", func() { b.countIn(key) }))
	}
	if ids := g.parts(partTouched); len(ids) > 0 && len(deeds.Objects) < 4 {
		deeds.Add(parts.NewSmallDeed(parts.Link, "Back to open", func() { b.mark(ids, "open", g.name+" is to be ordered again.") }))
	}
	return deeds
}

// countIn opens the fields for what came of a line, or closes them.
func (b *buyingPage) countIn(key string) {
	if b.open == key {
		key = ""
	}
	b.open = key
	b.shown()
}

// mark puts shares of quotes to another state, and offers the way back.
func (b *buyingPage) mark(ids []int64, to, done string) {
	before := map[string]string{"ordered": "open", "received": "ordered", "open": "ordered"}[to]
	b.place.act("The purchase list could not be changed", done, func(ctx context.Context) error {
		return b.place.Buying.MarkPurchase(ctx, ids, to, "")
	}, &step{done: "The purchase list is as it was.", back: func(ctx context.Context) error {
		return b.place.Buying.MarkPurchase(ctx, ids, before, "")
	}})
}

// delivery asks what came, a field a size with what is awaited standing in it.
func (b *buyingPage) delivery(key string, g buyGoods) fyne.CanvasObject {
	var cells []fyne.CanvasObject
	fields := map[int]*parts.Field{}
	for i, r := range g.rows {
		if r.Awaited() == 0 {
			continue
		}
		f := parts.NewNumber("")
		f.SetText(strconv.Itoa(r.Awaited()))
		fields[i] = f
		cells = append(cells, parts.NewCaptioned(fmt.Sprintf("%s of %d", rowName(r), r.Awaited()), f))
	}
	note, later := parts.NewField("what was said about it"), parts.NewCheck("the rest comes later", nil)
	take := func() { b.take(key, g, fields, note.Text(), later.Checked()) }
	note.OnSubmitted = func(string) { take() }
	button := parts.NewDeed(parts.Quiet, "Take in", "", take)
	return parts.Column(8, parts.Fields(84, cells...),
		parts.Row(10, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()}, note, later, button))
}

// take counts a delivery in: what came goes to the quotes in the order of their days, what is missing is short.
func (b *buyingPage) take(key string, g buyGoods, fields map[int]*parts.Field, note string, later bool) {
	var all []taken
	came, wrong := 0, false
	for i, f := range fields {
		n, err := strconv.Atoi(strings.TrimSpace(f.Text()))
		f.SetWrong(err != nil || n < 0)
		wrong = wrong || f.Wrong()
		if !f.Wrong() {
			came += n
			all = append(all, shareOut(g.rows[i], n, later)...)
		}
	}
	if wrong {
		b.place.failed("The delivery was not taken in", fmt.Errorf("enter whole numbers of 0 or more"))
		return
	}
	b.open = ""
	b.place.act("The delivery could not be taken in", fmt.Sprintf("%s: %d taken in.", g.name, came), func(ctx context.Context) error {
		return b.put(ctx, all, note, false)
	}, &step{done: g.name + " is on the way again.", back: func(ctx context.Context) error { return b.put(ctx, all, "", true) }})
}

// put writes shares of a delivery, or as they were before it.
func (b *buyingPage) put(ctx context.Context, all []taken, note string, before bool) error {
	for _, t := range all {
		received, short := t.received, t.short
		if before {
			received, short, note = t.part.Received, t.part.Short, t.part.Note
		}
		if err := b.place.Buying.ReceivePart(ctx, t.part.ID, received, short, note); err != nil {
			return err
		}
	}
	return nil
}

// toBuy leaves the pages that are open for the purchase list.
func (p *Place) toBuy() {
	for len(p.over) > 0 {
		p.pop()
	}
	p.tabs.Choose(1)
}
