package present

import (
	"fmt"
	"strings"
)

func (c *Counter) build() View {
	v := View{
		Generation: c.generation,
		Problems:   c.shownProblems(),
		CanUndo:    len(c.history.past) > 0,
		CanRedo:    len(c.history.future) > 0,
		Status:     c.status(),
	}
	v.Form = c.form(&v)
	v.Panel = c.panel(&v)
	return v
}

func (c *Counter) shownProblems() []Problem {
	out := make([]Problem, 0, len(c.problems)+1)
	if c.bookErr != nil {
		out = append(out, Problem{Text: "the price lists could not be read: " + c.bookErr.Error()})
	}
	for _, p := range c.problems {
		text := p.Problem
		if p.Path == "needed_by" {
			text = "write a day like 18 dec, 12/18, fri or +10"
		}
		out = append(out, Problem{Path: p.Path, Text: text})
	}
	return out
}

func (c *Counter) status() Status {
	s := Status{Number: c.draft.Number, State: c.draft.State, Demo: c.book.Shop.Demo}
	if c.draft.Option > 0 {
		s.State += fmt.Sprintf(", option %d", c.draft.Option)
	}
	switch {
	case c.saveErr != nil:
		s.Saved, s.Failed = "not saved: "+c.saveErr.Error(), true
	case c.savedAt.IsZero():
		s.Saved = "not saved yet"
		if c.draft.ID != 0 {
			s.Saved = "opened"
		}
	default:
		s.Saved = "saved " + c.savedAt.Format("15:04")
	}
	return s
}

// Line is the status as one line.
func (s Status) Line() string {
	parts := make([]string, 0, 3)
	for _, p := range []string{s.Number, s.State, s.Saved} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return strings.Join(parts, " · ")
}

func (c *Counter) panel(v *View) Panel {
	if !c.priced {
		return Panel{Empty: true, Hint: c.hint(v)}
	}
	r := &c.result
	p := Panel{
		Stale:     !c.current,
		Total:     Amount(r.Price.Total),
		TotalNote: c.totalNote(),
		Margin:    "–", PerHour: "–",
		Pieces: r.Pieces,
		Prices: c.prices(v),
		Next:   c.nextBreak(),
		Cost:   c.costs(),
		Ladder: c.ladder(),
		Bands:  c.bandsView(),
		Levers: c.leversView(),
		Sheets: c.sheets(),
		Drawn:  c.panelDrawings(),
		Notes:  c.notes(v.Form.Roster.Differs),
	}
	c.addDates(&p)
	if !c.current {
		p.Hint = c.hint(v)
	}
	if r.MarginPercent != nil {
		p.Margin = strings.ReplaceAll(*r.MarginPercent, "-", "−") + " %"
	}
	if r.LeftPerHour != nil {
		p.PerHour = whole(*r.LeftPerHour)
	}
	for _, w := range r.Warnings {
		p.BelowFloor = p.BelowFloor || w.Code == "below_floor"
	}
	return p
}

// hint says what is missing before the form can be priced: the first problem, and how many more there are.
func (c *Counter) hint(v *View) string {
	if len(c.draft.Garments) == 0 {
		return "Add a garment to see a price."
	}
	if len(v.Problems) == 0 {
		return ""
	}
	first := v.Problems[0]
	text := c.where(first.Path) + first.Text
	if where, ok := fieldNames[first.Path]; ok {
		text = where + ": " + first.Text
	}
	if n := len(v.Problems) - 1; n > 0 {
		return fmt.Sprintf("%s (and %s more)", text, number(n))
	}
	return text
}

// fieldNames are the fields that belong to no line, as the form calls them.
var fieldNames = map[string]string{
	"needed_by": "Needed by", "art.minutes": "Art time", "art.charge": "Art charge", "pricing.rush_percent": "Rush",
	"pricing.discount_percent": "Off", "pricing.discount": "Off", "pricing.delivery_cost": "Delivery",
	"pricing.delivery_charge": "Delivery, charged", "ladder": "Ladder",
}

func (c *Counter) totalNote() string {
	if c.result.Price.Tax.Sign() > 0 {
		return "order total with tax"
	}
	return "order total, no tax"
}
