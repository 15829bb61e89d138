package cards

import (
	"fmt"
	"strings"
	"time"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// editor is one card, typed into. Its sections are made anew for a card of another make, and only filled for one alike.
type editor struct {
	place  *Place
	object fyne.CanvasObject
	body   *fyne.Container
	form   *form.Form
	text   cardText
	grids  []*parts.Grid
	try    *tryBox
	save   *parts.Button
	back   *parts.Button
	tell   *parts.Band // odd prices
	press  *parts.Band
	old    *parts.Band // prices that are old
	heat   *heat
	rush   *parts.Grid

	changed bool
}

func newEditor(p *Place) *editor {
	e := &editor{place: p, body: parts.Column(look.SectionApart), tell: parts.NewBand(parts.Warning, ""), press: parts.NewBand(parts.Note, ""), old: parts.NewBand(parts.Warning, "")}
	e.heat = newHeat(e)
	e.save = parts.NewDeed(parts.Filled, "Save card", "", e.keep)
	e.back = parts.NewButton(parts.Quiet, "Take back", "", e.takeBack)
	e.try = newTryBox(e)
	e.object = parts.NewPageScroll(e.body)
	return e
}

func (e *editor) name() string { return e.text.texts[at("name")] }

func (e *editor) focus() {
	if e.form != nil {
		parts.Focus(e.form.Field(at("name")))
	}
}

// show fills the editor with a card.
func (e *editor) show(c catalog.RateCard) {
	e.text = textOf(c)
	e.text.unit = e.place.units.Temperature
	e.changed = false
	e.build()
	e.judge()
}

func (e *editor) build() {
	e.form = form.New()
	e.form.OnChanged = e.touched
	e.grids = nil
	e.body.Objects = []fyne.CanvasObject{e.head(), e.limits(), e.prices(), e.termsSection(), e.pressing(), e.try.section}
	for path, text := range e.text.texts {
		e.form.Set(path, text)
	}
	e.body.Refresh()
}

// touched takes over what was typed; from then on the card is to be saved.
func (e *editor) touched(string) {
	for path := range e.text.texts {
		if e.form.Has(path) {
			e.text.texts[path] = e.form.Get(path)
		}
	}
	e.changed = true
	e.judge()
}

// judge reads the card, puts problems beside their fields, and tries it.
func (e *editor) judge() {
	card, problems, wrong := e.text.card()
	if len(problems) == 0 {
		problems = checked(card.Card)
	}
	e.form.Show(problems)
	for _, g := range e.grids {
		g.ClearWrong()
	}
	for _, w := range wrong {
		e.grids[w[0]].SetProblem(w[1], w[2], true)
	}
	e.tell.SetText("")
	if len(problems) == 0 {
		e.tell.SetText(strings.Join(warnings(card.Card), " · "))
	}
	enable(e.save, e.changed && len(problems) == 0)
	enable(e.back, e.changed)
	e.heat.show(e.text.texts[at("temperature")], e.text.unit)
	e.try.answer(card.Card, len(problems) == 0)
}

func enable(b *parts.Button, on bool) {
	if on {
		b.Enable()
	} else {
		b.Disable()
	}
}

func (e *editor) keep() {
	if card, problems, _ := e.text.card(); len(problems) == 0 {
		e.place.save(card)
	}
}

func (e *editor) takeBack() {
	if e.text.was.ID == 0 {
		e.changed = false
		e.place.table.Select(max(e.place.table.Selected(), 0))
		return
	}
	e.show(e.text.was)
	e.place.fault.SetText("")
}

// again makes another card of this one: a list of new prices under the same key, or a card of its own.
func (e *editor) again(sameKey bool) {
	c, problems, _ := e.text.card()
	if len(problems) > 0 {
		return
	}
	c.ID = 0
	c.ValidFrom = e.place.now().Format(time.DateOnly)
	if !sameKey {
		c.Card.ID, c.Card.Name = e.place.newKey(), c.Card.Name+" copy"
	}
	e.show(c)
	e.touched("")
}

func (e *editor) head() fyne.CanvasObject {
	f := e.form
	var suppliers []parts.Option
	suppliers = append(suppliers, parts.Option{Name: "made in the shop"})
	for _, s := range e.place.suppliers {
		suppliers = append(suppliers, parts.Option{Key: s.Key, Name: s.Name})
	}
	line := parts.Fields(104,
		f.Text(at("name"), "Name", ""), f.Choice(at("supplier"), "Supplier", suppliers),
		f.Text("valid_from", "Valid from", ""), f.Text("valid_to", "Valid to", "open"))
	section := parts.NewSection("Card", kindWords[e.text.was.Card.Kind], line,
		parts.Flow(6, parts.NewSmallButton(parts.Quiet, "New prices from today", func() { e.again(true) }),
			parts.NewSmallButton(parts.Quiet, "Copy", func() { e.again(false) }),
			parts.NewSmallDeed(parts.Quiet, e.retireWord(), e.retire)),
		e.old, f.Rest())
	e.old.SetText("")
	if days := e.place.stale(e.text.was); days > 0 {
		e.old.SetText(fmt.Sprintf("These prices are %d days old (limit %d): ask for a new list, or take them as new prices from today.", days, e.place.rules.StaleDays))
	}
	section.Right.Add(e.back)
	section.Right.Add(e.save)
	return section
}

func (e *editor) retireWord() string {
	if e.text.was.Active {
		return "Retire"
	}
	return "Use again"
}

func (e *editor) retire() {
	if c := e.text.was; c.ID != 0 && !e.changed {
		c.Active = !c.Active
		e.place.save(c)
	}
}

var kindWords = map[string]string{
	quote.AreaCard: "priced by area", quote.SheetCard: "priced by the sheet", quote.RollCard: "priced by the length of a roll",
	quote.PieceCard: "priced by the piece",
}

func (e *editor) limits() fyne.CanvasObject {
	f := e.form
	shades := parts.Flow(16, parts.Inset(0, 3, parts.NewText("goes on", parts.MutedStyle)))
	for _, s := range shadeNames {
		shades.Add(f.Check(shadePath(s), s))
	}
	shades.Add(f.Check(at("full_color"), "prints full colour"))
	rows := []fyne.CanvasObject{
		parts.Fields(100, f.Number(at("max_inks"), "Inks at most", ""), f.Number(at("setup_per_design"), "Set-up a design", ""),
			f.Number(at("setup_per_ink"), "Set-up an ink", ""), f.Number(at("minimum_each"), "At least each", ""), f.Number(at("minimum"), "At least pieces", "")),
		parts.Fields(160, f.Number(at("max_width"), "Width at most", "in"), f.Number(at("max_height"), "Height at most", "in"),
			f.Text(at("not_on"), "Must not go on", "tags divided by commas, like nylon, waterproof")),
		shades,
	}
	return parts.NewSection("What it takes", "empty: no limit", rows...)
}

func (e *editor) pressing() fyne.CanvasObject {
	f := e.form
	objects := make([]fyne.CanvasObject, 0, len(pressFields))
	for _, p := range pressFields {
		objects = append(objects, f.Number(p.path, p.caption, p.unit))
	}
	e.press.SetText("")
	if c := e.text.was; c.Card.Press != nil && !c.Confirmed {
		e.press.SetText("Common practice, not confirmed: press one garment, look at it, then confirm.")
		e.press.OfferDeed("Confirm", e.confirm)
	}
	return parts.NewSection("Press", "the maker's instructions and the care label win over these",
		f.Check(at("press"), "pressed in the shop"),
		parts.Fields(92, objects...),
		parts.Fields(120, f.Text(at("temperature"), "Temperature", "like 320 °F or 160 °C"), f.Text(at("pressure"), "Pressure", "like medium"), f.Text(at("peel"), "Peel", "like warm")),
		e.heat.object, e.press)
}

func (e *editor) confirm() {
	c, problems, _ := e.text.card()
	if len(problems) == 0 {
		c.Confirmed = true
		e.place.save(c)
	}
}

// prices are the tables, with their sheets' and roll's own measures over them.
func (e *editor) prices() fyne.CanvasObject {
	section := parts.NewSection("Prices", "typed, or pasted from a spreadsheet; empty cells have no price")
	f := e.form
	switch e.text.was.Card.Kind {
	case quote.RollCard:
		section.Body.Add(measures(f.Number(at("width"), "Width", "in"), f.Number(at("edge"), "Edge", "in"), f.Number(at("gap"), "Gap", "in")))
	case quote.PieceCard:
		section.Body.Add(measures(f.Choice(at("by"), "Priced by", []parts.Option{
			{Name: "inks"},
			{Key: "stitches", Name: "thousand stitches"},
			{Key: "area", Name: "square inches"},
			{Key: "character", Name: "characters"},
		})))
	}
	for i := range e.text.blocks {
		if e.text.was.Card.Kind == quote.SheetCard {
			p := fmt.Sprintf("%s[%d].", at("sizes"), i)
			section.Body.Add(measures(f.Text(p+"name", "Sheet", ""), f.Number(p+"width", "Width", "in"), f.Number(p+"height", "Height", "in"),
				f.Number(p+"edge", "Edge", "in"), f.Number(p+"gap", "Gap", "in"), f.Number(p+"minimum", "Sheets at least", "")))
		}
		section.Body.Add(e.grid(i))
	}
	if e.text.was.Card.Kind == quote.SheetCard {
		section.Right.Add(parts.NewSmallButton(parts.Quiet, "Another sheet size", e.addSheet))
		if len(e.text.blocks) > 1 {
			section.Right.Add(parts.NewSmallButton(parts.Quiet, "Drop the last size", e.dropSheet))
		}
	}
	section.Body.Add(e.tell)
	return section
}

// measures sets the fields over a price table.
func measures(objects ...fyne.CanvasObject) fyne.CanvasObject { return parts.Fields(110, objects...) }
