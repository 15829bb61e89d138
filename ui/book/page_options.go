package book

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// options are the jobs that the quote offers side by side, two to four, or the way to offer a second one.
func (q *quotePage) options() fyne.CanvasObject {
	h := q.head
	if q.place.Options == nil || h.State == catalog.Declined {
		return nil
	}
	open := h.State == catalog.Drafted || h.State == catalog.Sent
	if len(h.Options) == 0 && !open {
		return nil
	}
	s := parts.NewSection("Options", "one of them is accepted")
	if open && len(h.Options) < catalog.MostOptions {
		name := parts.NewSmallField("name of another, like with back print")
		add := func() { q.addOption(name.Text()) }
		name.OnSubmitted = func(string) { add() }
		s.Right.Add(container.New(wideField{230}, name))
		s.Right.Add(parts.NewSmallDeed(parts.Quiet, "Offer another", add))
	}
	if len(h.Options) == 0 {
		s.Body.Add(parts.NewText("One job so far. Another starts as a copy of it and opens on the Counter.", parts.MutedStyle.Shortened()))
		return s
	}
	cards := container.New(&equal{})
	for _, o := range h.Options {
		cards.Add(q.optionCard(o, open))
	}
	s.Body.Add(cards)
	return s
}

// optionCard is one option: its name, what it comes to, and what can be done with it.
func (q *quotePage) optionCard(o catalog.Option, open bool) fyne.CanvasObject {
	var name fyne.CanvasObject = parts.NewText(or(o.Name, fmt.Sprintf("Option %d", o.Position)), parts.StrongStyle.Shortened())
	if open {
		name = q.optionName(o)
	}
	total := parts.NewText(or(present.Grouped(o.Total), "–"), parts.KeyStyle)
	words := countOf(o.Pieces, "piece")
	if o.Margin != "" {
		words += " · margin " + percent(o.Margin)
	}
	body := parts.Column(3, name, total, parts.NewText(words, parts.MutedStyle.Shortened()),
		parts.NewText(garmentsOf(o), parts.MutedStyle.Shortened()), parts.NewText(printsOf(o), parts.MutedStyle.Shortened()))
	deeds := parts.Flow(6)
	if o.Accepted {
		deeds.Add(parts.NewBadge("accepted", look.Accent))
	}
	if r, ok := q.sentOption(o.Position); ok && q.head.State == catalog.Sent {
		b := parts.NewSmallDeed(parts.Filled, "Accept", func() { q.accept(r, "") })
		if q.first == nil {
			q.first = b
		} else {
			b.SetKind(parts.Quiet)
		}
		deeds.Add(b)
	}
	if open {
		deeds.Add(parts.NewSmallButton(parts.Quiet, "Edit", func() { q.editOption(o.Position) }))
		deeds.Add(parts.NewSmallDeed(parts.Link, "Remove", func() { q.removeOption(o) }))
	}
	body.Add(parts.Inset(0, 4, deeds))
	return container.NewStack(parts.NewGround(look.Fill), parts.Inset(12, 10, body))
}

// optionName is the name of an option to be typed over.
func (q *quotePage) optionName(o catalog.Option) fyne.CanvasObject {
	f := parts.NewSmallField("name, like with back print")
	f.SetText(o.Name)
	keep := func() {
		name := strings.TrimSpace(f.Text())
		if f.SetWrong(name == ""); name == "" || name == o.Name {
			return
		}
		was := o.Name
		o.Name = name
		q.place.act("The option could not be renamed", "“"+was+"” is “"+name+"” now.", func(ctx context.Context) error {
			return q.place.Options.RenameOption(ctx, q.id, o.Position, name)
		}, &step{done: "“" + was + "” is called so again.", back: func(ctx context.Context) error {
			return q.place.Options.RenameOption(ctx, q.id, o.Position, was)
		}})
	}
	f.OnSubmitted = func(string) { keep() }
	f.OnFocus = func(gained bool) {
		if !gained {
			keep()
		}
	}
	return f
}

// garmentsOf names the garments of an option by their names, where they have one of their own, and colours.
func garmentsOf(o catalog.Option) string {
	var names []string
	for _, g := range o.Draft.Garments {
		if word := or(g.Name, g.Color); !slices.Contains(names, word) {
			names = append(names, word)
		}
	}
	return strings.Join(names, ", ")
}

// printsOf names where an option is printed.
func printsOf(o catalog.Option) string {
	var names []string
	for _, p := range o.Draft.Placements {
		if !slices.Contains(names, p.Name) {
			names = append(names, p.Name)
		}
	}
	return strings.Join(names, ", ")
}

// sentOption is the revision of an option that was sent last.
func (q *quotePage) sentOption(position int) (catalog.RevisionRow, bool) {
	for _, r := range latest(q.head) {
		if r.Option == position {
			return r, true
		}
	}
	return catalog.RevisionRow{}, false
}

// addOption offers a copy of the last job under a name and opens it on the Counter.
func (q *quotePage) addOption(name string) {
	from := 0
	if n := len(q.head.Options); n > 0 {
		from = q.head.Options[n-1].Position
	}
	id := q.id
	parts.Background(func() func() {
		o, err := q.place.Options.CopyOption(context.Background(), id, from, name)
		return func() {
			q.place.failed("The option could not be added", err)
			if err == nil {
				q.shown()
				q.editOption(o.Position)
			}
		}
	})
}

func (q *quotePage) editOption(position int) {
	parts.Background(func() func() {
		d, err := q.place.Options.OptionDraft(context.Background(), q.id, position)
		return func() {
			q.place.failed("The option could not be read", err)
			if err == nil {
				q.place.OnOpen(d)
			}
		}
	})
}

func (q *quotePage) removeOption(o catalog.Option) {
	id, name := q.id, "“"+or(o.Name, fmt.Sprint(o.Position))+"”"
	q.place.undoable("The option could not be removed", name+" is no longer offered.", name+" is offered again.",
		func(ctx context.Context) (Back, error) { return q.place.Options.RemoveOption(ctx, id, o.Position) })
}

// equal sets objects side by side, all equally wide and high.
type equal struct{}

const equalLeast = 150

func (equal) MinSize(o []fyne.CanvasObject) fyne.Size {
	h := float32(0)
	for _, x := range o {
		h = max(h, x.MinSize().Height)
	}
	return fyne.NewSize(look.Px(equalLeast), h)
}

func (equal) Layout(o []fyne.CanvasObject, s fyne.Size) {
	gap := look.Px(10)
	wide := (s.Width - gap*float32(len(o)-1)) / float32(max(len(o), 1))
	for i, x := range o {
		x.Move(fyne.NewPos(float32(i)*(wide+gap), 0))
		x.Resize(fyne.NewSize(wide, s.Height))
	}
}

// wideField gives a field a width of its own where the layout would make it as narrow as it can be.
type wideField struct{ wide float32 }

func (w wideField) MinSize(o []fyne.CanvasObject) fyne.Size {
	return fyne.NewSize(look.Px(w.wide), o[0].MinSize().Height)
}

func (w wideField) Layout(o []fyne.CanvasObject, s fyne.Size) { o[0].Resize(s) }
