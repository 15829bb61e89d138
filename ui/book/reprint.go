package book

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// reprintPage chooses the pieces that have to be pressed again: by garment and size, and by person where each has a
// piece of their own.
type reprintPage struct {
	*sheetPage
	head   catalog.QuoteHead
	form   *form.Form
	cells  []Spoiled // of each field, with the most there can be
	people []Spoiled
	ticked []*parts.Check
}

func newReprintPage(p *Place, h catalog.QuoteHead) *reprintPage {
	return &reprintPage{sheetPage: newSheetPage(p, "Press again, "+h.Number, "pieces that were spoiled"), head: h, form: form.New()}
}

func (g *reprintPage) shown() {
	parts.Background(func() func() {
		job, result, err := g.place.Ledger.Opened(context.Background(), g.head.AcceptedID)
		return func() {
			if err != nil {
				g.place.failed("What was accepted could not be read", err)
				return
			}
			g.build(job, result)
		}
	})
}

func (g *reprintPage) build(job quote.Job, result quote.Result) {
	g.cells, g.people, g.ticked = nil, nil, nil
	sections := []fyne.CanvasObject{g.form.Rest()}
	own := rosterOf(job)
	if len(own) > 0 {
		sections = append(sections, g.peopleSection(job, own))
	}
	for _, l := range result.Garments {
		if l.Pieces > 0 {
			sections = append(sections, g.garmentSection(job, l))
		}
	}
	write := parts.NewButton(parts.Filled, "Write the reprint ticket", "", g.write)
	g.fill(parts.Narrow(820, parts.Column(look.SectionApart, append(sections, parts.Row(8, nil, write))...)))
	g.focus()
}

// garmentSection has a field for each size of a garment line.
func (g *reprintPage) garmentSection(job quote.Job, l quote.GarmentLine) fyne.CanvasObject {
	var fields []fyne.CanvasObject
	for _, s := range l.Sizes {
		if s.Qty == 0 {
			continue
		}
		path := fmt.Sprintf("again[%d]", len(g.cells))
		fields = append(fields, g.form.Number(path, s.Size, fmt.Sprintf("of %d", s.Qty+s.Spares)))
		f := g.form.Field(path)
		f.OnSubmitted = func(string) { g.write() }
		if g.first == nil {
			g.first = f
		}
		g.cells = append(g.cells, Spoiled{Garment: l.ID, Size: s.Size, Qty: s.Qty + s.Spares})
	}
	hint := "how many of each size"
	if len(rosterOf(job)) > 0 {
		hint = "pieces that are nobody's own"
	}
	return parts.NewSection(garmentName(job, l.ID), hint, parts.Fields(92, fields...))
}

// owned is a piece that is somebody's own.
type owned struct {
	Spoiled
	words string
}

// rosterOf are the pieces of a job that are somebody's own, in the order of the roster.
func rosterOf(job quote.Job) (all []owned) {
	if job.Paper == nil {
		return nil
	}
	for i, w := range job.Paper.Roster {
		var words []string
		for _, p := range job.Placements {
			for _, t := range p.Texts {
				if t.Row == i+1 {
					words = append(words, t.Text)
				}
			}
		}
		name := strings.Join(words, ", ")
		if w.Person != "" {
			name = strings.TrimSuffix(w.Person+": "+name, ": ")
		}
		all = append(all, owned{Spoiled{Garment: w.Garment, Size: w.Size, Qty: 1, Row: i + 1}, name})
	}
	return all
}

func (g *reprintPage) peopleSection(job quote.Job, own []owned) fyne.CanvasObject {
	rows := parts.Flow(14)
	for _, o := range own {
		c := parts.NewCheck(fmt.Sprintf("%s · %s, %s", o.words, garmentName(job, o.Garment), o.Size), nil)
		g.people, g.ticked = append(g.people, o.Spoiled), append(g.ticked, c)
		rows.Add(c)
	}
	return parts.NewSection("Names and numbers", "tick whose piece was spoiled", rows)
}

var errNonSpoiled = errors.New("enter how many of a size, or tick whose piece it is")

// write has the ticket written for what was chosen.
func (g *reprintPage) write() {
	r := form.Reader{Get: g.form.Get}
	var all []Spoiled
	for i, c := range g.cells {
		path := fmt.Sprintf("again[%d]", i)
		n := r.Count(path)
		if n > c.Qty {
			r.Say(path, fmt.Sprintf("there are %d", c.Qty))
		}
		if c.Qty = n; n > 0 {
			all = append(all, c)
		}
	}
	for i, c := range g.ticked {
		if c.Checked() {
			all = append(all, g.people[i])
		}
	}
	if g.form.Show(r.Problems); len(r.Problems) > 0 {
		return
	}
	if len(all) == 0 {
		g.place.failed("No ticket was written", errNonSpoiled)
		return
	}
	g.place.failed("", nil)
	g.place.writing(string(ReprintPaper), "", func(ctx context.Context) (string, error) {
		return g.place.Papers.Write(ctx, g.head.ID, ReprintPaper, all)
	})
}
