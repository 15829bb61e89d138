package cards

import (
	"context"
	"encoding/json"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present/presenttest"
)

// drawer is rate cards in memory.
type drawer struct {
	cards     []catalog.RateCard
	suppliers []catalog.Supplier
	saved     []catalog.RateCard
}

func (d *drawer) RateCards(context.Context, string) ([]catalog.RateCard, error) {
	return append([]catalog.RateCard{}, d.cards...), nil
}

func (d *drawer) SaveRateCard(_ context.Context, c catalog.RateCard) (catalog.RateCard, error) {
	d.saved = append(d.saved, c)
	for i := range d.cards {
		if d.cards[i].ID == c.ID && c.ID != 0 {
			d.cards[i] = c
			return c, nil
		}
	}
	c.ID = int64(100 + len(d.cards))
	d.cards = append(d.cards, c)
	return c, nil
}

func (d *drawer) Suppliers(context.Context) ([]catalog.Supplier, error) { return d.suppliers, nil }

// open is the place on screen, over the demo's cards.
func open(t *testing.T) (*Place, *drawer) {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	demo := presenttest.New().Demo
	d := &drawer{cards: demo.Cards, suppliers: demo.Suppliers}
	for i := range d.cards {
		d.cards[i].ID, d.cards[i].Active = int64(i+1), true
	}
	p := New(d, func() time.Time { return presenttest.Day })
	w := test.NewWindow(parts.NewLayered(p.Content()))
	w.Resize(fyne.NewSize(1280, 820))
	p.Shown()
	return p, d
}

func (p *Place) choose(t *testing.T, kind string) {
	t.Helper()
	for i, c := range p.all {
		if c.Card.Kind == kind {
			p.table.Select(i)
			return
		}
	}
	t.Fatalf("the demo has no %s card", kind)
}

func TestCardText_everyCardComesBackAsItWas(t *testing.T) {
	for _, c := range presenttest.New().Demo.Cards {
		back, problems, _ := textOf(c).card()
		if len(problems) > 0 {
			t.Errorf("%s: %v", c.Card.Name, problems)
		}
		want, got := plain(t, c), plain(t, back)
		if want != got {
			t.Errorf("%s came back changed:\n got %s\nwant %s", c.Card.Name, got, want)
		}
	}
}

// plain writes a card without the marks of where its prices came from, which the shop file sets when it reads it.
func plain(t *testing.T, c catalog.RateCard) string {
	t.Helper()
	c.Card.Info.EntryID, c.Card.Info.PricedOn = "", ""
	text, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	var any map[string]any
	if err := json.Unmarshal(text, &any); err != nil {
		t.Fatal(err)
	}
	unmark(any)
	text, _ = json.Marshal(any)
	return string(text)
}

func unmark(v any) {
	switch v := v.(type) {
	case map[string]any:
		if each, ok := v["Each"]; ok && each != nil {
			delete(v, "Info")
		}
		for _, child := range v {
			unmark(child)
		}
	case []any:
		for _, child := range v {
			unmark(child)
		}
	}
}

func TestCards_priceTypedIntoTheGridIsSavedOnRequest(t *testing.T) {
	p, d := open(t)
	p.choose(t, quote.AreaCard)
	e := p.editor
	cell := e.grids[0].Cell(0, 1)
	parts.Focus(cell)
	test.Type(cell, "0.061")
	if len(d.saved) > 0 || e.save.Disabled() {
		t.Fatalf("saved %d, button off %v; want the button on and nothing saved yet", len(d.saved), e.save.Disabled())
	}
	test.Tap(e.save)
	if len(d.saved) != 1 || d.saved[0].Card.Rates[0].Each.String() != "0.061" {
		t.Fatalf("saved %+v", d.saved)
	}
	if e.changed || !e.save.Disabled() {
		t.Error("the card still counts as changed")
	}
	p.Undo()
	if n := len(d.saved); n != 2 || d.saved[1].Card.Rates[0].Each.String() != "0.052" {
		t.Errorf("undo saved %d times, at last %+v", n, d.saved[n-1].Card.Rates)
	}
}

func TestCards_badPriceIsMarkedAndCannotBeSaved(t *testing.T) {
	p, _ := open(t)
	p.choose(t, quote.AreaCard)
	e := p.editor
	cell := e.grids[0].Cell(0, 1)
	parts.Focus(cell)
	test.Type(cell, "0.0S2")
	if !cell.Wrong() || !e.save.Disabled() {
		t.Errorf("marked %v, button off %v", cell.Wrong(), e.save.Disabled())
	}
	p.choose(t, quote.SheetCard)
	if e.text.was.Card.Kind != quote.AreaCard || !strings.Contains(p.fault.Text(), "Save") {
		t.Errorf("another card took the place of one that was changed: %q", p.fault.Text())
	}
	test.Tap(e.back)
	if e.grids[0].Cell(0, 1).Text() != "0.052" || e.changed {
		t.Errorf("taken back: %q", e.grids[0].Cell(0, 1).Text())
	}
}

func TestCards_whatTheEngineFindsStandsBesideTheField(t *testing.T) {
	p, _ := open(t)
	p.choose(t, quote.RollCard)
	e := p.editor
	edge := e.form.Field(at("edge"))
	parts.Focus(edge)
	test.Type(edge, "30")
	if got := e.form.ProblemAt(at("edge")); got == "" || !e.save.Disabled() {
		t.Errorf("edges wider than the roll: said %q, button off %v", got, e.save.Disabled())
	}
}

func TestCards_pastedRangeBecomesThePriceTable(t *testing.T) {
	p, _ := open(t)
	p.choose(t, quote.SheetCard)
	e := p.editor
	e.grids[0].Cell(0, 1).Paste("1\t2\t4\r\n9.00\t11.00\t13.00\r\n8.00\t10.00\t12.00\r\n")
	card, problems, _ := e.text.card()
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	rows := card.Card.Sizes[0].Prices
	if len(rows) < 3 || rows[2].Inks != 4 || rows[2].Each[0].Each.String() != "13.00" || rows[1].Each[1].Each.String() != "10.00" {
		t.Errorf("got %+v", rows)
	}
}

func TestCards_triedOnTheSpotGivesTheEnginesPrice(t *testing.T) {
	p, _ := open(t)
	p.choose(t, quote.AreaCard)
	box := p.editor.try
	for path, text := range map[string]string{"width": "10", "height": "10", "inks": "0", "pieces": "10"} {
		box.form.Set(path, text)
	}
	box.say()
	// 10 × 10 in at 0.052 a square inch is 5.20 each, ten of them 52.00
	if got := box.words.Text(); !strings.Contains(got, "52.00") {
		t.Errorf("got %q, want 52.00 in it", got)
	}
	box.form.Set("pieces", "0")
	box.say()
	if box.form.ProblemAt("pieces") == "" {
		t.Error("no piece at all is not said")
	}
}

func TestCards_newPricesFromTodayAreAnotherListOfTheSameCard(t *testing.T) {
	p, d := open(t)
	p.choose(t, quote.AreaCard)
	key := p.editor.text.was.Card.ID
	p.editor.again(true)
	test.Tap(p.editor.save)
	got := d.saved[len(d.saved)-1]
	if got.ID != 0 || got.Card.ID != key || got.ValidFrom != "2026-12-02" {
		t.Errorf("got id %d, key %s, from %s", got.ID, got.Card.ID, got.ValidFrom)
	}
	p.editor.again(false)
	if p.editor.text.was.Card.ID == key {
		t.Error("a copy has the same key")
	}
}

func TestWarnings_namePricesThatRiseGapsAndCheaperInks(t *testing.T) {
	each := func(pairs ...int) (out []quote.Break) {
		for i := 0; i < len(pairs); i += 2 {
			out = append(out, quote.Break{From: pairs[i], Each: money.FromMinor(int64(pairs[i+1]), 2)})
		}
		return out
	}
	for name, c := range map[string]struct {
		card quote.RateCard
		want string
	}{
		"rising": {quote.RateCard{Rates: each(1, 5, 10, 6)}, "costs more"},
		"gap":    {quote.RateCard{Rates: each(12, 5)}, "no price below 12"},
		"inks": {
			quote.RateCard{Sizes: []quote.SheetSize{{Name: "A", Prices: []quote.InkRow{{Inks: 1, Each: each(1, 500)}, {Inks: 2, Each: each(1, 400)}}}}},
			"2 inks cost less than 1",
		},
		"lengths": {
			quote.RateCard{Lengths: []quote.RollLength{{Length: money.Int(60), Each: money.FromMinor(900, 2)}, {Length: money.Int(120), Each: money.FromMinor(800, 2)}}},
			"a length of 120",
		},
	} {
		if got := strings.Join(warnings(c.card), "; "); !strings.Contains(got, c.want) {
			t.Errorf("%s: got %q, want %q in it", name, got, c.want)
		}
	}
	for _, c := range presenttest.New().Demo.Cards {
		if got := warnings(c.Card); len(got) > 0 {
			t.Errorf("%s, whose prices are in order: got %q", c.Card.Name, got)
		}
	}
}
