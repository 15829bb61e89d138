package cards

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
)

// cardText is a rate card as it is typed: texts by path, and price tables.
type cardText struct {
	texts  map[string]string
	blocks []block
	rush   [][]string       // working days and percent more
	was    catalog.RateCard // what it was made from: id, key, and what has no field
	unit   string           // of a temperature typed without one: F or C
}

var shadeNames = []string{"light", "dark", "heather", "neon"}

func shadePath(shade string) string { return at("shades.") + shade }

// pressFields are the press settings in the order of the work, with their words.
var pressFields = []struct{ path, caption, unit string }{
	{at("press.prep_s"), "Pre-press", "s"},
	{at("press.place_s"), "Placing", "s"},
	{at("press.dwell_s"), "Dwell", "s"},
	{at("press.peel_s"), "Peeling", "s"},
	{at("press.second_s"), "Second press", "s"},
	{at("press.prep_min"), "Once a design", "min"},
}

func textOf(c catalog.RateCard) cardText {
	r := c.Card
	t := map[string]string{
		at("name"): r.Name, at("supplier"): r.Supplier, at("kind"): r.Kind, "valid_from": c.ValidFrom, "valid_to": c.ValidTo,
		at("max_inks"): whole(r.MaxInks), at("minimum"): whole(r.Minimum), at("minimum_each"): amount(r.MinimumEach),
		at("max_width"): number(r.MaxWidth), at("max_height"): number(r.MaxHeight), at("not_on"): strings.Join(r.NotOn, ", "),
		at("setup_per_design"): amount(r.SetupPerDesign), at("setup_per_ink"): amount(r.SetupPerInk), at("by"): r.By,
		at("width"): number(r.Width), at("edge"): number(r.Edge), at("gap"): number(r.Gap),
		at("temperature"): r.Info.Temperature, at("pressure"): r.Info.Pressure, at("peel"): r.Info.Peel,
		at("full_color"): yes(r.FullColor), at("press"): yes(r.Press != nil), "active": yes(c.Active),
	}
	for _, s := range shadeNames {
		t[shadePath(s)] = yes(len(r.Shades) == 0 || slices.Contains(r.Shades, s))
	}
	if p := r.Press; p != nil {
		for i, n := range []money.Number{p.Prep, p.Place, p.Dwell, p.Peel, p.Second, p.PrepMin} {
			t[pressFields[i].path] = number(n)
		}
	}
	for i, s := range r.Sizes {
		p := fmt.Sprintf("%s[%d].", at("sizes"), i)
		t[p+"name"], t[p+"minimum"] = s.Name, whole(s.Minimum)
		t[p+"width"], t[p+"height"], t[p+"edge"], t[p+"gap"] = number(s.Width), number(s.Height), number(s.Edge), number(s.Gap)
	}
	t["production_days"] = whole(c.Terms.ProductionDays)
	text := cardText{texts: t, blocks: blocksOf(r), was: c}
	for _, x := range c.Terms.Rush {
		text.rush = append(text.rush, []string{strconv.Itoa(x.Days), x.Percent.String()})
	}
	return text
}

// Numbers that are nothing stay empty in the form.

func whole(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

func number(n money.Number) string {
	if n.Sign() == 0 {
		return ""
	}
	return n.String()
}

func amount(a money.Amount) string {
	if a.Sign() == 0 {
		return ""
	}
	return a.String()
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return ""
}

// card reads the texts back. What is wrong is said by path; cells that are wrong come as block, row and column.
func (t cardText) card() (catalog.RateCard, []quote.Problem, [][3]int) {
	get := func(path string) string { return t.texts[path] }
	r := form.Reader{Get: get}
	c := t.was
	c.ValidFrom, c.ValidTo = r.Date("valid_from"), r.Date("valid_to")
	if c.ValidFrom == "" {
		r.Say("valid_from", "say from which day these prices hold, like 2026-05-31")
	}
	if c.ValidTo != "" && c.ValidTo < c.ValidFrom {
		r.Say("valid_to", "the last day is before the first")
	}
	card := &c.Card
	card.Name, card.Supplier, card.Kind = r.Need(at("name"), "the card a name"), r.Text(at("supplier")), r.Text(at("kind"))
	card.FullColor, card.MaxInks = r.Text(at("full_color")) != "", r.Count(at("max_inks"))
	card.Minimum, card.MinimumEach = r.Count(at("minimum")), r.Amount(at("minimum_each"))
	card.MaxWidth, card.MaxHeight = r.Number(at("max_width")), r.Number(at("max_height"))
	card.SetupPerDesign, card.SetupPerInk = r.Amount(at("setup_per_design")), r.Amount(at("setup_per_ink"))
	card.NotOn = r.Words(at("not_on"))
	t.shades(card)
	t.press(&r, card)
	t.terms(&r, &c)
	wrong := t.prices(&r, card)
	return c, r.Problems, wrong
}

func (t cardText) shades(card *quote.RateCard) {
	card.Shades = nil
	for _, s := range shadeNames {
		if t.texts[shadePath(s)] != "" {
			card.Shades = append(card.Shades, s)
		}
	}
	if len(card.Shades) == len(shadeNames) {
		card.Shades = nil // any
	}
}

func (t cardText) press(r *form.Reader, card *quote.RateCard) {
	card.Info.Temperature, card.Info.Pressure = heatText(r, t.unit), r.Text(at("pressure"))
	card.Info.Peel = r.Text(at("peel"))
	card.Press = nil
	if t.texts[at("press")] == "" {
		return
	}
	p := &quote.Press{}
	for i, n := range []*money.Number{&p.Prep, &p.Place, &p.Dwell, &p.Peel, &p.Second, &p.PrepMin} {
		*n = r.Number(pressFields[i].path)
	}
	card.Press = p
}

// prices reads the tables into the fields of the card's kind, and empties those of the others.
func (t cardText) prices(r *form.Reader, card *quote.RateCard) (wrong [][3]int) {
	card.Rates, card.Sizes, card.Lengths, card.Prices, card.FullColorEach, card.By = nil, nil, nil, nil, nil, ""
	card.Width, card.Edge, card.Gap = money.Number{}, money.Number{}, money.Number{}
	for i, b := range t.blocks {
		cells := &cellReader{block: i, cells: b.cells}
		switch card.Kind {
		case quote.AreaCard:
			card.Rates = cells.breaks(1, 0)
		case quote.RollCard:
			card.Width, card.Edge, card.Gap = r.Length(at("width")), r.Number(at("edge")), r.Number(at("gap"))
			card.Lengths = cells.lengths()
		case quote.PieceCard:
			card.By = r.Text(at("by"))
			card.Prices, card.FullColorEach = cells.pieceRows()
		case quote.SheetCard:
			card.Sizes = append(card.Sizes, t.size(r, i, cells))
		}
		r.Problems = append(r.Problems, cells.Problems...)
		wrong = append(wrong, cells.wrong...)
	}
	return wrong
}

func (t cardText) size(r *form.Reader, i int, cells *cellReader) quote.SheetSize {
	p := fmt.Sprintf("%s[%d].", at("sizes"), i)
	return quote.SheetSize{
		Name: r.Need(p+"name", "each sheet size its own name"), Width: r.Length(p + "width"), Height: r.Length(p + "height"),
		Edge: r.Number(p + "edge"), Gap: r.Number(p + "gap"), Minimum: r.Count(p + "minimum"), Prices: cells.inkRows(),
	}
}
