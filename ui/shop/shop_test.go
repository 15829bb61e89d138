package shop

import (
	"context"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present/presenttest"
)

// memory is a shop file in memory.
type memory struct {
	shop  catalog.Shop
	saved int
	fails error
}

func (m *memory) Shop(context.Context) (catalog.Shop, error) { return m.shop, nil }

func (m *memory) SaveShop(_ context.Context, s catalog.Shop) error {
	if m.fails != nil {
		return m.fails
	}
	m.shop = s
	m.saved++
	return nil
}

// drawer keeps settings in memory beside the rates.
type drawer struct {
	*memory
	settings catalog.Settings
}

func (d *drawer) Settings(context.Context) (catalog.Settings, error) { return d.settings, nil }

func (d *drawer) SaveRules(ctx context.Context, s catalog.Shop, x catalog.Settings) error {
	d.settings = x
	return d.SaveShop(ctx, s)
}

// openWhole is the place with its settings on screen.
func openWhole(t *testing.T) (*Place, *drawer) {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	demo := presenttest.New().Demo
	d := &drawer{&memory{shop: demo.Shop}, catalog.DefaultSettings()}
	p := New(d, sampler(demo), "/data/shop.db")
	p.Settings, p.Now = d, func() time.Time { return presenttest.Day }
	w := test.NewWindow(parts.NewLayered(p.Content()))
	w.Resize(fyne.NewSize(1280, 820))
	p.Shown()
	return p, d
}

// sampler prices the demo's first quote with the rates of a shop.
func sampler(demo catalog.Demo) func(catalog.Shop) (quote.Result, error) {
	styles := map[int64]catalog.Style{}
	for _, s := range demo.Styles {
		styles[s.ID] = s
	}
	draft := demo.Drafts[0]
	return func(s catalog.Shop) (quote.Result, error) {
		job, problems := catalog.Freeze(draft, catalog.Book{Shop: s, Suppliers: demo.Suppliers, Cards: demo.Cards, Styles: styles}, draft.QuotedOn)
		if len(problems) > 0 {
			return quote.Result{}, quote.Problems(problems)
		}
		return quote.Price(job)
	}
}

func open(t *testing.T) (*Place, *memory) {
	t.Helper()
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	demo := presenttest.New().Demo
	m := &memory{shop: demo.Shop}
	p := New(m, sampler(demo), "/data/shop.db")
	w := test.NewWindow(parts.NewLayered(p.Content()))
	w.Resize(fyne.NewSize(1280, 820))
	p.Shown()
	return p, m
}

func typed(p *Place, path, text string) {
	f := p.form.Field(path)
	parts.Focus(f)
	test.Type(f, text)
}

func TestShop_formHoldsEverythingItShows(t *testing.T) {
	p, m := open(t)
	want, err := json.Marshal(m.shop)
	if err != nil {
		t.Fatal(err)
	}
	p.touched() // reads the whole form
	got, _ := json.Marshal(p.now.Shop)
	if strings.ReplaceAll(string(got), `"Sizes":""`, `"Sizes":"upcharge"`) != strings.ReplaceAll(string(want), `"Sizes":""`, `"Sizes":"upcharge"`) {
		t.Errorf("reading the form changed the shop:\n got %s\nwant %s", got, want)
	}
}

func TestShop_sampleJobFollowsTheWageAsItIsTyped(t *testing.T) {
	p, m := open(t)
	before := p.panel.total.Text()
	typed(p, "shop.wage_per_hour", "36")
	if p.panel.total.Text() == before || !strings.Contains(p.panel.before.Text(), before) {
		t.Errorf("total %s, before %s, said %q", p.panel.total.Text(), before, p.panel.before.Text())
	}
	if m.saved > 0 || p.save.Disabled() {
		t.Errorf("saved %d times, button off %v", m.saved, p.save.Disabled())
	}
	test.Tap(p.save)
	if m.saved != 1 || m.shop.Rates.WagePerHour.Cmp(money.FromMinor(3600, 2)) != 0 {
		t.Errorf("saved %d times, wage %s", m.saved, m.shop.Rates.WagePerHour)
	}
	p.Undo()
	if m.shop.Rates.WagePerHour.Cmp(money.FromMinor(1800, 2)) != 0 || p.panel.total.Text() != before {
		t.Errorf("undo: wage %s, total %s", m.shop.Rates.WagePerHour, p.panel.total.Text())
	}
}

func TestShop_problemsStandBesideTheirFields(t *testing.T) {
	p, _ := open(t)
	typed(p, "shop.wage_per_hour", "eighteen")
	if p.form.ProblemAt("shop.wage_per_hour") == "" || !p.save.Disabled() {
		t.Errorf("said %q, button off %v", p.form.ProblemAt("shop.wage_per_hour"), p.save.Disabled())
	}
	typed(p, "shop.wage_per_hour", "18")
	typed(p, "pricing.floor_percent", "100") // the engine's own rule
	if p.form.ProblemAt("pricing.floor_percent") == "" || p.form.ProblemAt("shop.wage_per_hour") != "" {
		t.Errorf("floor: said %q", p.form.ProblemAt("pricing.floor_percent"))
	}
	test.Tap(p.back)
	if p.form.Get("pricing.floor_percent") != "25" || p.changed {
		t.Errorf("taken back: floor %q", p.form.Get("pricing.floor_percent"))
	}
}

func TestShop_levelsHaveRulesOfTheirOwn(t *testing.T) {
	p, m := open(t)
	chips := p.levels.chips.Objects
	if len(chips) < 2 {
		t.Fatalf("got %d levels", len(chips))
	}
	first := p.form.Get("pricing.percent")
	test.Tap(chips[1].(*parts.Chip))
	typed(p, "pricing.percent", "33")
	test.Tap(p.save)
	if m.shop.Levels[1].Pricing.Percent.String() != "33" || m.shop.Levels[0].Pricing.Percent.String() != first {
		t.Errorf("percents: %s and %s, want %s and 33", m.shop.Levels[0].Pricing.Percent, m.shop.Levels[1].Pricing.Percent, first)
	}
}

func TestShop_rowTypedBelowATableIsAdded(t *testing.T) {
	p, m := open(t)
	g := p.grids["extras"]
	row := len(m.shop.Extras)
	for col, text := range []string{"Hem tag", "0.20", "15", "0.75"} {
		f := g.Cell(row, col)
		parts.Focus(f)
		test.Type(f, text)
	}
	test.Tap(p.save)
	if n := len(m.shop.Extras); n != row+1 || m.shop.Extras[row].Extra.Name != "Hem tag" || m.shop.Extras[row].Extra.Charge.String() != "0.75" {
		t.Errorf("got %d extras: %+v", n, m.shop.Extras[n-1])
	}
}

func TestShop_failedSaveIsSaidAndNothingTypedIsLost(t *testing.T) {
	p, m := open(t)
	m.fails = errors.New("disk full")
	typed(p, "shop.wage_per_hour", "21")
	test.Tap(p.save)
	if !strings.Contains(p.fault.Text(), "disk full") || p.form.Get("shop.wage_per_hour") != "21" || !p.changed {
		t.Errorf("said %q, wage %q, changed %v", p.fault.Text(), p.form.Get("shop.wage_per_hour"), p.changed)
	}
}

func TestLists_pairsThatCannotBeReadAreSaid(t *testing.T) {
	for text, want := range map[string]int{"12 45, 24 42": 0, "12": 1, "a 45": 1, "": 0, "12 forty": 1} {
		r := form.Reader{Get: func(string) string { return text }}
		var p quote.Pricing
		readPercents(&r, "x", &p)
		if len(r.Problems) != want {
			t.Errorf("%q: got %v", text, r.Problems)
		}
	}
}

type keptPIN struct{ pin string }

func (k *keptPIN) Has() bool { return k.pin != "" }

func (k *keptPIN) Set(pin string) error { k.pin = pin; return nil }

func TestShop_pinIsSetAndTakenAway(t *testing.T) {
	app := test.NewApp()
	t.Cleanup(app.Quit)
	t.Cleanup(parts.Inline())
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	demo := presenttest.New().Demo
	k := &keptPIN{}
	p := New(&memory{shop: demo.Shop}, sampler(demo), "/data/shop.db")
	p.PIN = k
	w := test.NewWindow(parts.NewLayered(p.Content()))
	w.Resize(fyne.NewSize(1280, 820))
	parts.Focus(p.pinEntry)
	test.Type(p.pinEntry, "47")
	test.Tap(p.pinSet)
	if k.Has() {
		t.Error("a PIN of two digits was taken")
	}
	test.Type(p.pinEntry, "4711")
	test.Tap(p.pinSet)
	if k.pin != "4711" || p.pinEntry.Text() != "" {
		t.Errorf("kept %q, field %q", k.pin, p.pinEntry.Text())
	}
	test.Tap(p.pinRemove)
	if k.Has() || !p.pinRemove.Disabled() {
		t.Errorf("has %v, button off %v", k.Has(), p.pinRemove.Disabled())
	}
}
