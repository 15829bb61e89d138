package start

import (
	"context"
	"errors"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present/presenttest"
)

type memory struct {
	shop  catalog.Shop
	saved int
	fails error
}

func (m *memory) Shop(context.Context) (catalog.Shop, error) { return m.shop, nil }

func (m *memory) SaveShop(_ context.Context, s catalog.Shop) error {
	if m.fails == nil {
		m.shop = s
		m.saved++
	}
	return m.fails
}

func open(t *testing.T) (g *Guide, m *memory, done *int) {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	shop := presenttest.New().Demo.Shop
	shop.Letterhead = quote.Party{}
	m, done = &memory{shop: shop}, new(int)
	g = New(m, func() { *done++ })
	w := test.NewWindow(parts.NewLayered(g.Content()))
	w.Resize(fyne.NewSize(1000, 800))
	return g, m, done
}

func typed(g *Guide, path, text string) {
	f := g.form.Field(path)
	parts.Focus(f)
	test.Type(f, text)
}

func TestGuide_answersBecomeTheShop(t *testing.T) {
	g, m, done := open(t)
	if !g.save.Disabled() {
		t.Error("a shop without a name can be begun")
	}
	for path, text := range map[string]string{"name": "Tideline Press", "wage": "21.50", "percent": "48", "tax": "6.25", "hours": "90"} {
		typed(g, path, text)
	}
	test.Tap(g.save)
	if m.saved != 1 || *done != 1 {
		t.Fatalf("saved %d times, done %d times", m.saved, *done)
	}
	s := m.shop
	got := []string{s.Letterhead.Name, s.Rates.WagePerHour.String(), s.Levels[0].Pricing.Percent.String(), s.Levels[1].Pricing.Tax.Percent.String(), s.Rates.ProductiveHoursPerMonth.String()}
	for i, want := range []string{"Tideline Press", "21.50", "48", "6.25", "90"} {
		if got[i] != want {
			t.Errorf("got %q, want %q", got[i], want)
		}
	}
	if s.Levels[1].Pricing.Percent.Cmp(presenttest.New().Demo.Shop.Levels[1].Pricing.Percent) != 0 {
		t.Error("the margin of another level was changed")
	}
}

func TestGuide_badAnswersAreSaidBesideTheirFields(t *testing.T) {
	g, _, _ := open(t)
	typed(g, "name", "Tideline Press")
	for path, text := range map[string]string{"wage": "lots", "percent": "100", "hours": "0"} {
		before := g.form.Get(path)
		typed(g, path, text)
		if g.form.ProblemAt(path) == "" || !g.save.Disabled() {
			t.Errorf("%s %q: said %q, button off %v", path, text, g.form.ProblemAt(path), g.save.Disabled())
		}
		typed(g, path, before)
	}
	if g.save.Disabled() {
		t.Error("with the old answers back it still cannot be begun")
	}
}

func TestGuide_failureIsSaidAndSkippingLeavesTheShopAlone(t *testing.T) {
	g, m, done := open(t)
	m.fails = errors.New("disk full")
	typed(g, "name", "Tideline Press")
	test.Tap(g.save)
	if g.fault.Text() == "" || *done != 0 {
		t.Errorf("said %q, done %d times", g.fault.Text(), *done)
	}
	g.done()
	if m.saved != 0 || *done != 1 {
		t.Errorf("saved %d times, done %d times", m.saved, *done)
	}
}
