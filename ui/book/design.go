package book

import (
	"context"
	"errors"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// designPage is one design on file: what it is, on which card it was made, and what worked at the press.
type designPage struct {
	*sheetPage
	form *form.Form
	was  catalog.Design
}

func newDesignPage(p *Place, d catalog.Design) *designPage {
	return &designPage{sheetPage: newSheetPage(p, d.Name, "artwork on file"), form: form.New(), was: d}
}

func (g *designPage) shown() {
	parts.Background(func() func() {
		cards, err := g.place.People.Cards(context.Background())
		return func() {
			if err != nil {
				g.place.failed("The rate cards could not be read", err)
			}
			g.build(cards)
		}
	})
}

func (g *designPage) build(cards []Card) {
	options, there := []parts.Option{{Name: "none"}}, g.was.Card == ""
	for _, c := range cards {
		options, there = append(options, parts.Option{Key: c.Key, Name: c.Name}), there || c.Key == g.was.Card
	}
	if !there { // it is sold no more
		options = append(options, parts.Option{Key: g.was.Card, Name: g.was.Card})
	}
	x := g.form
	what := parts.NewSection("Artwork", "", x.Rest(),
		parts.Fields(220, x.Text("name", "Name", "as the placement is called"), x.Text("inks", "Inks, divided by commas", "white, gold"), x.Text("sizes", "Sizes, in", "11 × 8.5, 9 × 7")),
		x.Check("full_color", "full colour"), x.Text("file", "Picture", "path of its file"))
	made := parts.NewSection("How it was made", ranWords(g.place, g.was),
		parts.Fields(220, x.Choice("card", "Card that its set-up is paid on", options), x.Text("stitches", "Thousand stitches", "embroidery"), x.Text("settings", "What worked at the press", "310 °F, medium, cold peel")),
		x.Text("notes", "Notes, never printed", ""), x.Check("charge_again", "set-up and art are charged again on a repeat"))
	for path, text := range map[string]string{
		"name": g.was.Name, "inks": g.was.Inks, "sizes": sizesWords(g.was.Sizes), "file": g.was.File, "card": g.was.Card, "stitches": g.was.Stitches,
		"settings": g.was.Settings, "notes": g.was.Notes, "full_color": yes(g.was.FullColor), "charge_again": yes(g.was.ChargeAgain),
	} {
		x.Set(path, text)
	}
	save := parts.NewDeed(parts.Filled, "Save the design", "", g.save)
	gone := parts.NewDeed(parts.Quiet, "Take it off the file", "", g.remove)
	g.first = x.Field("name")
	g.fill(parts.Narrow(820, parts.Column(14, what, made, parts.Row(8, nil, save, gone))))
	g.focus()
}

// ranWords says when a design was pressed last, and how often.
func ranWords(p *Place, d catalog.Design) string {
	words := countOf(d.Runs, "job")
	if d.LastRun != "" {
		words += ", last " + p.near(d.LastRun)
	}
	if d.LastQuote != "" {
		words += " for " + d.LastQuote
	}
	return words
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

func sizesWords(all []catalog.DesignSize) string {
	var words []string
	for _, s := range all {
		words = append(words, s.Width+" × "+s.Height)
	}
	return strings.Join(words, ", ")
}

// readSizes reads sizes like 11 × 8.5, 9x7.
func readSizes(text string) (all []catalog.DesignSize) {
	for part := range strings.SplitSeq(text, ",") {
		if part = strings.TrimSpace(part); part == "" {
			continue
		}
		w, h, _ := strings.Cut(strings.NewReplacer("×", "x", "X", "x", "by", "x").Replace(part), "x")
		all = append(all, catalog.DesignSize{Width: strings.TrimSpace(w), Height: strings.TrimSpace(h)})
	}
	return all
}

func (g *designPage) save() {
	r, d := form.Reader{Get: g.form.Get}, g.was
	d.Name, d.Inks, d.File, d.Stitches = r.Text("name"), r.Text("inks"), r.Text("file"), r.Text("stitches")
	d.Card, d.Settings, d.Notes = g.form.Get("card"), r.Text("settings"), r.Text("notes")
	d.FullColor, d.ChargeAgain = g.form.Get("full_color") != "", g.form.Get("charge_again") != ""
	d.Sizes = readSizes(r.Text("sizes"))
	problems := d.Check()
	for i, p := range problems {
		problems[i].Path, _, _ = strings.Cut(p.Path, ".")
	}
	if g.form.Show(problems); len(problems) > 0 {
		return
	}
	was, people := g.was, g.place.People
	parts.Background(func() func() {
		_, err := people.SaveDesign(context.Background(), d)
		return func() {
			var found quote.Problems
			switch {
			case errors.As(err, &found):
				g.form.Show(found)
			case err != nil:
				g.place.failed("The design could not be kept", err)
			default:
				g.place.pop()
				g.place.act("The design", d.Name+" is kept as typed.", func(context.Context) error { return nil }, &step{done: was.Name + " is as before.", back: func(ctx context.Context) error {
					_, err := people.SaveDesign(ctx, was)
					return err
				}})
			}
		}
	})
}

func (g *designPage) remove() {
	was, people := g.was, g.place.People
	g.place.do(deed{
		doing: "The design could not be taken off the file", done: was.Name + " is off the file.",
		work: func(ctx context.Context) error { return people.RemoveDesign(ctx, was.ID) },
		back: &step{done: was.Name + " is on file again.", back: func(ctx context.Context) error {
			again := was
			again.ID = 0
			_, err := people.SaveDesign(ctx, again)
			return err
		}},
		then: func() {
			g.place.pop()
			g.place.said(was.Name + " is off the file.")
		},
	})
}
