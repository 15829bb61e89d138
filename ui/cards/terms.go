package cards

import (
	"fmt"
	"strconv"
	"strings"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/parts"
)

// mostDays is longer than any supplier takes.
const mostDays = 120

// termsSection holds how long the supplier takes and what it costs to have it sooner.
func (e *editor) termsSection() fyne.CanvasObject {
	f := e.form
	e.rush = parts.NewGrid(136, 120)
	e.rush.OnChanged = func(row, col int, text string) {
		e.putRush(row, col, text)
		e.fillRush()
		e.touched("")
	}
	e.rush.OnPaste = func(row, col int, cells [][]string) {
		for r, line := range cells {
			for c, text := range line {
				if row+r < mostRows && col+c < 2 {
					e.putRush(row+r, col+c, tidy(text))
				}
			}
		}
		e.fillRush()
		e.touched("")
	}
	e.fillRush()
	return parts.NewSection("Time", "until the supplier sends it", parts.Row(8, []parts.Track{parts.Fixed(220)}, f.Number("production_days", "Production", "working days")),
		f.Around("rush", "Sooner, for more", e.rush), parts.NewText(e.supplierWords(), parts.MutedStyle.Shortened()))
}

// supplierWords are what the supplier's own terms add to the card's.
func (e *editor) supplierWords() string {
	for _, s := range e.place.suppliers {
		if s.Key != e.text.was.Card.Supplier {
			continue
		}
		words := []string{s.Name + ": " + strconv.Itoa(s.TransitDays) + " working days on the way"}
		if s.CutOff != "" {
			words = append(words, "orders until "+s.CutOff)
		}
		if s.MinimumOrder.Sign() > 0 {
			words = append(words, "at least "+s.MinimumOrder.String()+" an order")
		}
		return strings.Join(words, ", ") + "; changed under Blanks, Suppliers"
	}
	return ""
}

func (e *editor) putRush(row, col int, text string) {
	for len(e.text.rush) <= row {
		e.text.rush = append(e.text.rush, make([]string, 2))
	}
	e.text.rush[row][col] = text
}

func (e *editor) fillRush() {
	rows := append([][]string{}, e.text.rush...)
	if n := len(rows); n == 0 || !blank(rows[n-1]) {
		rows = append(rows, make([]string, 2))
	}
	e.rush.Set([]string{"working days", "percent more"}, rows)
}

// terms reads production days and rush tiers: fewer days cost more.
func (t cardText) terms(r *form.Reader, c *catalog.RateCard) {
	c.Terms = catalog.Terms{ProductionDays: r.Count("production_days")}
	if c.Terms.ProductionDays > mostDays {
		r.Say("production_days", "enter 0 to 120 days")
	}
	for i, row := range t.rush {
		if blank(row) {
			continue
		}
		at := fmt.Sprintf("rush[%d]", i)
		one := form.Reader{Get: func(path string) string { return row[map[string]int{"days": 0, "percent": 1}[path]] }}
		x := catalog.Rush{Days: one.Count("days"), Percent: one.Number("percent")}
		for _, p := range one.Problems {
			r.Say(at, p.Problem)
		}
		switch n := len(c.Terms.Rush); {
		case strings.TrimSpace(row[0]) == "":
			r.Say(at, "enter in how many days")
		case c.Terms.ProductionDays > 0 && x.Days >= c.Terms.ProductionDays:
			r.Say(at, "that is not sooner than usual")
		case n > 0 && (x.Days >= c.Terms.Rush[n-1].Days || x.Percent.Cmp(c.Terms.Rush[n-1].Percent) < 0):
			r.Say(at, "go on with fewer days, for no less")
		}
		c.Terms.Rush = append(c.Terms.Rush, x)
	}
}

// addSheet adds another size of sheet, with the steps of the last one.
func (e *editor) addSheet() {
	c, problems, _ := e.text.card()
	if len(problems) > 0 {
		return
	}
	last := c.Card.Sizes[len(c.Card.Sizes)-1]
	fresh := quote.SheetSize{Name: "sheet " + strconv.Itoa(len(c.Card.Sizes)+1), Width: last.Width, Height: last.Height, Edge: last.Edge, Gap: last.Gap}
	for _, row := range last.Prices {
		fresh.Prices = append(fresh.Prices, quote.InkRow{Inks: row.Inks})
	}
	c.Card.Sizes = append(append([]quote.SheetSize{}, c.Card.Sizes...), fresh)
	e.remake(c)
}

// dropSheet takes the last size of sheet away.
func (e *editor) dropSheet() {
	c, _, _ := e.text.card()
	if n := len(c.Card.Sizes); n > 1 {
		c.Card.Sizes = c.Card.Sizes[:n-1]
		e.remake(c)
	}
}

// remake shows a card that was changed in more than its texts, as typed and not saved.
func (e *editor) remake(c catalog.RateCard) {
	was := e.text.was
	e.text = textOf(c)
	e.text.unit, e.text.was = e.place.units.Temperature, was
	e.changed = true
	e.build()
	e.judge()
}
