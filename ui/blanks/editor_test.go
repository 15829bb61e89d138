package blanks

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
)

func TestEditor_colourGetsPricesOfItsOwn(t *testing.T) {
	p, k := editing(t)
	e := p.editor
	e.whose.SetKey("Navy")
	e.fill()
	into(e.prices.Cell(3, 1), "4.15")
	test.Tap(e.save)
	if len(k.saved) != 1 {
		t.Fatalf("saved %d times, said %q", len(k.saved), e.form.ProblemAt("sizes"))
	}
	s := k.saved[0]
	if got := catalog.WriteBreaks(s.EachOf("Navy", "2XL")); got != "4.15" || len(s.ByColor) != 1 || len(s.ByColor["Navy"]) != 1 {
		t.Errorf("navy: got %s, by colour %+v", got, s.ByColor)
	}
	if got := catalog.WriteBreaks(s.EachOf("Navy", "S")); got != "3.10 72:2.85" {
		t.Errorf("a size without a price of its own: got %s, want that of every colour", got)
	}
}

func TestEditor_pricesByTheDozenAndTheCase(t *testing.T) {
	p, k := editing(t)
	e := p.editor
	into(e.prices.Cell(0, 2), "dozen")
	into(e.prices.Cell(0, 3), "case 144")
	into(e.prices.Cell(1, 2), "36.00/dozen")
	into(e.prices.Cell(1, 3), "396/144")
	test.Tap(e.save)
	if len(k.saved) != 1 {
		t.Fatalf("saved %d times, said %q", len(k.saved), e.form.ProblemAt("sizes"))
	}
	if got := catalog.WriteBreaks(k.saved[0].Sizes[0].Each); got != "3.10 12:3.00 144:2.75" {
		t.Errorf("size S: got %s, want 3.10 12:3.00 144:2.75", got)
	}
	for text, want := range map[string]string{"50/12": "4.16666667", "49.20/12": "4.10", "4.5": "4.5", "1,234.50/dz": "102.875"} {
		if got, err := eachOf(text); err != nil || got.String() != want {
			t.Errorf("%s: got %s, %v, want %s", text, got, err, want)
		}
	}
	for _, text := range []string{"4/0", "4/x", "x/12", "-4", "4/12/3"} {
		if got, err := eachOf(text); err == nil {
			t.Errorf("%s: got %s, want a problem", text, got)
		}
	}
}

func TestEditor_ownPriceAndSale(t *testing.T) {
	p, k := editing(t)
	e := p.editor
	for col, text := range []string{"net", "", "", "2.90 72:2.70"} {
		into(e.own.Cell(0, col), text)
	}
	for col, text := range []string{"sale", "Navy", "S", "2.50"} {
		into(e.own.Cell(1, col), text)
	}
	if got := e.form.ProblemAt("own"); !strings.Contains(got, "last day of the sale") || !e.save.Disabled() {
		t.Errorf("a sale without an end: said %q, button off %v", got, e.save.Disabled())
	}
	into(e.own.Cell(1, 5), "2026-12-24")
	test.Tap(e.save)
	if len(k.own) != 4 || k.own[2].Size != "2XL" || catalog.WriteBreaks(k.own[0].Each) != "2.90 72:2.70" || k.own[3].Until != "2026-12-24" {
		t.Fatalf("kept %+v; want the net price of three sizes and a sale; said %q", k.own, e.form.ProblemAt("own"))
	}
	p.openStyle(k.saved[0])
	if got := e.own.Cell(3, 0).Text(); got != "sale" {
		t.Errorf("opened again, the fourth row is %q", got)
	}
}

func TestEditor_printableAreaWeightAndSizesOfAColour(t *testing.T) {
	p, k := editing(t)
	e := p.editor
	for col, text := range []string{"S", "10", "12.5"} {
		into(e.print.Cell(0, col), text)
	}
	into(e.form.Field("weight"), "5.3 oz")
	into(e.colors.Cell(0, 4), "S M")
	test.Tap(e.save)
	if len(k.saved) != 1 {
		t.Fatalf("said %q", e.form.ProblemAt("printable"))
	}
	s := k.saved[0]
	if len(s.Printable) != 1 || s.Printable[0].Height.String() != "12.5" || s.Weight.String() != "179.7" {
		t.Errorf("printable %+v, weight %s; want 10 × 12.5 and 179.7 (5.3 oz/yd², by NIST SP 811)", s.Printable, s.Weight)
	}
	if strings.Join(s.Colors[0].Sizes, " ") != "S M" {
		t.Errorf("navy comes in %v", s.Colors[0].Sizes)
	}
}

func TestSuppliers_areEditedAddedAndTakenBack(t *testing.T) {
	k := &keeper{suppliers: []catalog.Supplier{{ID: 7, Key: "northgate", Name: "Northgate Blanks"}}}
	p := New(stock(10), func() time.Time { return day })
	p.Keeper = k
	onScreen(t, p)
	p.openSuppliers()
	h := p.houses
	into(h.form.Field("cut_off"), "2 o'clock")
	if h.form.ProblemAt("cut_off") == "" || !h.save.Disabled() {
		t.Errorf("cut-off: said %q", h.form.ProblemAt("cut_off"))
	}
	into(h.form.Field("cut_off"), "14:00")
	into(h.form.Field("minimum_order"), "75")
	into(h.form.Field("closed"), "24 dec")
	test.Tap(h.save)
	if s := k.suppliers[0]; s.CutOff != "14:00" || s.MinimumOrder.String() != "75" || len(s.Calendar.Closed) != 1 || s.Key != "northgate" {
		t.Fatalf("kept %+v", s)
	}
	h.fresh()
	into(h.form.Field("name"), "Northgate Transfers")
	test.Tap(h.save)
	if len(k.suppliers) != 2 || k.suppliers[1].Key != "northgate-2" {
		t.Fatalf("kept %+v", k.suppliers)
	}
	p.Undo()
	if k.suppliers[0].CutOff != "" {
		t.Errorf("undo: got %+v", k.suppliers[0])
	}
	p.Redo()
	if k.suppliers[0].CutOff != "14:00" {
		t.Errorf("redo: got %+v", k.suppliers[0])
	}
	key(h.form.Field("name"), fyne.KeyEscape)
	if !p.Escape() || h.object.Visible() {
		t.Error("Esc does not lead back")
	}
}

func TestDetail_saysWherePricesCameFrom(t *testing.T) {
	entry := func(kind, from, until, file, each string) catalog.Price {
		breaks, err := catalog.ReadBreaks(each)
		if err != nil {
			t.Fatal(err)
		}
		return catalog.Price{Kind: kind, Size: "S", Each: breaks, From: from, Until: until, File: catalog.PriceFile{Name: file}}
	}
	undone := entry("list", "2026-09-01", "", "wrong.csv", "9.99")
	undone.File.Undone = true
	p := New(stock(3), func() time.Time { return day })
	onScreen(t, p)
	p.detail.show(p.detail.style, stock(3).row(0), []catalog.Price{
		entry("list", "2026-01-05", "", "spring.csv", "3.10"), entry("list", "2026-01-05", "", "spring.csv", "3.20"), undone,
		entry("sale", "2026-06-01", "2026-06-30", "Wren", "2.50"), entry("net", "2026-07-01", "", "Wren", ""),
	}, 0, 90)
	got := strings.ReplaceAll(texts(p.detail.origins), "\n", " | ")
	want := "2026-07-01 | Wren | net ended | 2026-06-01–06-30 | Wren | sale, 1 price | 2026-01-05 | spring.csv | list, 2 prices | "
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}
