package book

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"pressworth/catalog"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// mergePage shows customers that look like one side by side, with what each has, and makes one of them.
type mergePage struct {
	*sheetPage
	groups [][]catalog.Customer
}

func newMergePage(p *Place, groups [][]catalog.Customer) *mergePage {
	return &mergePage{sheetPage: newSheetPage(p, "Kept twice", "the one that stays gets the quotes, designs and leftovers of the others"), groups: groups}
}

// having is a customer with how many quotes and designs they have.
type having struct {
	catalog.Customer
	quotes, designs int
}

func (m *mergePage) shown() {
	parts.Background(func() func() {
		found, err := m.place.People.DoubleCustomers(context.Background())
		var all [][]having
		for _, g := range found {
			all = append(all, m.count(g))
		}
		return func() {
			if err != nil {
				m.place.failed("The customers could not be read", err)
				return
			}
			m.show(all)
		}
	})
}

func (m *mergePage) count(g []catalog.Customer) []having {
	ctx, out := context.Background(), make([]having, len(g))
	for i, c := range g {
		out[i].Customer = c
		if quotes, err := m.place.People.Of(ctx, c.ID); err == nil {
			out[i].quotes = len(quotes)
		}
		if designs, err := m.place.People.Designs(ctx, c.ID); err == nil {
			out[i].designs = len(designs)
		}
	}
	return out
}

func (m *mergePage) show(groups [][]having) {
	var sections []fyne.CanvasObject
	for _, g := range groups {
		cards := container.New(&equal{})
		for i := range g {
			cards.Add(m.card(g, i))
		}
		sections = append(sections, parts.NewSection(g[0].Name, alike(g), cards))
	}
	if len(sections) == 0 {
		sections = append(sections, parts.NewSection("Nobody is kept twice", "", parts.NewText("", parts.MutedStyle)))
	}
	m.fill(sections...)
}

// alike says by what customers look like one.
func alike(g []having) string {
	switch a, b := g[0], g[len(g)-1]; {
	case a.Email != "" && a.Email == b.Email:
		return "same e-mail"
	case a.Phone != "" && a.Phone == b.Phone:
		return "same telephone"
	}
	return "alike by name, e-mail or telephone"
}

// card is one of the customers, and what keeping this one would do.
func (m *mergePage) card(g []having, i int) fyne.CanvasObject {
	c := g[i]
	quotes, designs := 0, 0
	for k, other := range g {
		if k != i {
			quotes, designs = quotes+other.quotes, designs+other.designs
		}
	}
	moved := "nothing else moves"
	if quotes+designs > 0 {
		moved = fmt.Sprintf("%s and %s come over", or(countOf(quotes, "quote"), "no quotes"), or(countOf(designs, "design"), "no designs"))
	}
	keep := parts.NewSmallDeed(parts.Quiet, "Keep this one", func() { m.merge(g, i) })
	body := parts.Column(4, parts.NewText(c.Name, parts.StrongStyle.Shortened()))
	for _, f := range facts(76, [][2]string{
		{"Contact", c.Contact},
		{"E-mail", c.Email},
		{"Telephone", c.Phone},
		{"Level", c.Level},
		{"Pays", c.TermsInWords()},
		{"Quotes", fmt.Sprint(c.quotes)},
		{"Designs", fmt.Sprint(c.designs)},
	}) {
		body.Add(f)
	}
	body.Add(parts.Inset(0, 4, parts.Row(8, []parts.Track{parts.Fit(), parts.Share(1)}, keep, parts.NewText(moved, parts.MutedStyle.Shortened()))))
	return container.NewStack(parts.NewGround(look.Fill), parts.Inset(12, 10, body))
}

func (m *mergePage) merge(g []having, keep int) {
	people := m.place.People
	m.place.undoable("The customers could not be made one", g[keep].Name+" is one customer now.", "They are customers of their own again.", func(ctx context.Context) (Back, error) {
		var backs []Back
		undo := func(ctx context.Context) error {
			for _, back := range slices.Backward(backs) {
				if err := back(ctx); err != nil {
					return err
				}
			}
			return nil
		}
		for i, c := range g {
			if i == keep {
				continue
			}
			back, err := people.MergeCustomers(ctx, g[keep].ID, c.ID)
			if err != nil {
				return nil, errors.Join(err, undo(ctx))
			}
			backs = append(backs, back)
		}
		return undo, nil
	})
}
