package cards

import (
	"context"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/parts"
)

func into(f *parts.Field, text string) {
	parts.Focus(f)
	f.SelectAll()
	test.Type(f, text)
}

func TestTerms_productionDaysAndRushAreTypedAndSaved(t *testing.T) {
	p, d := open(t)
	p.choose(t, quote.AreaCard)
	e := p.editor
	into(e.form.Field("production_days"), "3")
	into(e.rush.Cell(0, 0), "2")
	into(e.rush.Cell(0, 1), "25")
	into(e.rush.Cell(1, 0), "4")
	into(e.rush.Cell(1, 1), "40")
	if got := e.form.ProblemAt("rush"); !strings.Contains(got, "row 2") || !e.save.Disabled() {
		t.Errorf("a rush that takes longer: said %q, button off %v", got, e.save.Disabled())
	}
	into(e.rush.Cell(1, 0), "1")
	test.Tap(e.save)
	got := d.saved[len(d.saved)-1].Terms
	if got.ProductionDays != 3 || len(got.Rush) != 2 || got.Rush[1].Days != 1 || got.Rush[1].Percent.String() != "40" {
		t.Errorf("saved %+v", got)
	}
	p.Undo()
	if got := d.saved[len(d.saved)-1].Terms; got.ProductionDays == 3 {
		t.Errorf("undo: %+v", got)
	}
	p.Redo()
	if got := d.saved[len(d.saved)-1].Terms; got.ProductionDays != 3 {
		t.Errorf("redo: %+v", got)
	}
}

// C = (F − 32)/1.8: 320 °F = 160 °C, 212 = 100, 32 = 0, 300 → 148.9, 350 → 176.7.
func TestHeat_inBothUnits(t *testing.T) {
	for text, want := range map[string]string{
		"320 °F": "160 °C", "212F": "100 °C", "32 °F": "0 °C", "300": "148.9 °C", "350 deg F": "176.7 °C", "160 °C": "320 °F", "160c": "320 °F",
	} {
		n, unit, ok := temperature(text, catalog.Fahrenheit)
		if got := inOther(n, unit); !ok || got != want {
			t.Errorf("%s: got %s, %v, want %s", text, got, ok, want)
		}
	}
	if n, unit, ok := temperature("160", catalog.Celsius); !ok || inOther(n, unit) != "320 °F" {
		t.Errorf("160 in a shop that counts in °C: got %s", inOther(n, unit))
	}
	for _, text := range []string{"medium", "", "320 K", "3 20"} {
		if _, _, ok := temperature(text, "F"); ok {
			t.Errorf("%q was read", text)
		}
	}
}

func TestHeat_typedInOneUnitAndTurnedIntoTheOther(t *testing.T) {
	p, d := open(t)
	p.Units = func(context.Context) (catalog.Units, error) { return catalog.Units{Temperature: catalog.Celsius}, nil }
	p.read()
	p.choose(t, quote.AreaCard)
	e := p.editor
	into(e.form.Field(at("temperature")), "155")
	if got := e.heat.words.Text(); got != "155 °C is 311 °F" {
		t.Errorf("said %q", got)
	}
	test.Tap(e.heat.turn)
	test.Tap(e.save)
	if got := d.saved[len(d.saved)-1].Card.Info.Temperature; got != "311 °F" {
		t.Errorf("saved %q, want 311 °F", got)
	}
	into(e.form.Field(at("temperature")), "900")
	if e.form.ProblemAt(at("temperature")) == "" {
		t.Error("900 °C is not said")
	}
}

func TestCards_pastedListWithItsTitlesAndSpans(t *testing.T) {
	p, _ := open(t)
	p.choose(t, quote.SheetCard)
	e := p.editor
	e.grids[0].Cell(1, 0).Paste("Qty\t1 color\t2 colors\n10–24\t$9.00\t$11.00\n25–49\t$8.00\t$10.00\n50+\t7.00\t9.00\n")
	card, problems, _ := e.text.card()
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	rows := card.Card.Sizes[0].Prices
	if rows[0].Inks != 1 || rows[1].Inks != 2 || rows[0].Each[0].From != 10 || rows[1].Each[1].Each.String() != "10.00" || rows[0].Each[2].From != 50 {
		t.Errorf("got %+v", rows)
	}
	for text, want := range map[string]string{
		"12+": "12", "1,000 - 2,499": "1000", "100 or more": "100", "full color": fullColor, "3c": "3", "n/a": "", "$ 4.35": "4.35", "13x19": "13x19", "4.35": "4.35",
	} {
		if got := tidy(text); got != want {
			t.Errorf("%q: got %q, want %q", text, got, want)
		}
	}
}

func TestCards_anotherSheetSizeAndDroppedAgain(t *testing.T) {
	p, d := open(t)
	p.choose(t, quote.SheetCard)
	e := p.editor
	n := len(e.text.blocks)
	e.addSheet()
	if len(e.grids) != n+1 {
		t.Fatalf("got %d tables, want %d", len(e.grids), n+1)
	}
	into(e.grids[n].Cell(1, 0), "10")
	for col := 1; e.grids[n].Cell(0, col).Text() != ""; col++ {
		into(e.grids[n].Cell(1, col), "6.50")
	}
	test.Tap(e.save)
	if len(d.saved) == 0 || len(d.saved[0].Card.Sizes) != n+1 || d.saved[0].Card.Sizes[n].Prices[0].Each[0].Each.String() != "6.50" {
		t.Fatalf("saved %+v; said %q", d.saved, e.form.ProblemAt("prices"))
	}
	e.dropSheet()
	test.Tap(e.save)
	if got := d.saved[1].Card.Sizes; len(got) != n {
		t.Errorf("dropped: got %d sizes, want %d", len(got), n)
	}
}

func TestCards_oldPricesAreFlagged(t *testing.T) {
	p, _ := open(t)
	p.Rules = func(context.Context) (catalog.Shop, error) { return catalog.Shop{StaleDays: 90}, nil }
	p.cards.(*drawer).cards[0].ValidFrom = "2026-06-01"
	p.read()
	p.table.Select(1)
	p.table.Select(0)
	if got := p.row(0)[2].Text; got != "2026-06-01 !" {
		t.Errorf("184 days with a limit of 90: got %q", got)
	}
	if got := p.editor.old.Text(); !strings.Contains(got, "184 days") {
		t.Errorf("beside the card: said %q", got)
	}
}

func TestWarnings_nameGapsWithinATable(t *testing.T) {
	each := func(froms ...int) (out []quote.Break) {
		for i, from := range froms {
			out = append(out, quote.Break{From: from, Each: money.FromMinor(int64(900-10*i), 2)})
		}
		return out
	}
	card := quote.RateCard{Sizes: []quote.SheetSize{{Name: "A", Prices: []quote.InkRow{{Inks: 1, Each: each(1, 10, 25)}, {Inks: 2, Each: each(1, 25)}}}}}
	if got := strings.Join(gaps(card), "; "); got != "A, 2 inks: no price from 10, where others have one" {
		t.Errorf("got %q", got)
	}
}
