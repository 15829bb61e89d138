package customer

import (
	"regexp"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"

	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
	"pressworth/ui/present/presenttest"
)

// shown is the customer's side of one of the demo's quotes, in a window of the toolkit's test driver.
func shown(t *testing.T, draft int) (*Side, *present.Counter, fyne.Window) {
	t.Helper()
	t.Cleanup(parts.Inline())
	app := test.NewApp()
	t.Cleanup(app.Quit)
	app.Settings().SetTheme(look.NewTheme(look.Light, 100))
	shop := presenttest.New()
	c := shop.Counter(draft)
	shop.Run()
	side := New(c.Front)
	w := test.NewWindow(parts.NewLayered(side.Content()))
	w.Resize(fyne.NewSize(1400, 900))
	side.Shown()
	return side, c, w
}

// texts reads back every word that a tree of objects draws, hidden ones too.
func texts(o fyne.CanvasObject) []string {
	switch o := o.(type) {
	case *canvas.Text:
		return []string{o.Text}
	case *fyne.Container:
		return all(o.Objects)
	case *container.Scroll:
		return texts(o.Content)
	case fyne.Widget:
		return all(test.WidgetRenderer(o).Objects())
	}
	return nil
}

func all(objects []fyne.CanvasObject) []string {
	var out []string
	for _, o := range objects {
		out = append(out, texts(o)...)
	}
	return out
}

func TestCustomer_showsWhatTheCustomerPays(t *testing.T) {
	_, c, w := shown(t, 0)
	words := strings.Join(texts(w.Canvas().Content()), "\n")
	p := c.View().Panel
	for _, want := range []string{p.Total, p.Prices.Rows[0].Each, "If you took more", "Deposit to start", "Harbour Rowing Club regatta", "DEMO"} {
		if !strings.Contains(words, want) {
			t.Errorf("%q is not on the customer's side:\n%s", want, words)
		}
	}
}

// The words of the shop's side that must never be seen here. Figures are checked one by one below.
var secrets = regexp.MustCompile(`(?i)margin|cost|supplier|freight|overhead|labou?r|per hour|hours?\b|spoil|markup|floor|press|film|plastisol|sheet|vinyl|embroider|method|card by|runner`)

func TestCustomer_hidesTheShopsSide(t *testing.T) {
	for draft := range presenttest.New().Demo.Drafts {
		_, c, w := shown(t, draft)
		_, result, ok := c.Job()
		if !ok {
			t.Fatalf("draft %d is not priced: %v", draft, c.Problems())
		}
		own := map[string]bool{}
		front := c.Front()
		for _, l := range front.Lines {
			own[l.Amount] = true
		}
		for _, p := range front.Prices {
			own[p.Amount] = true
		}
		for _, m := range front.More {
			own[m.Amount] = true
		}
		forbidden := []string{present.Amount(result.Cost.Total), c.View().Panel.Margin, result.Hours}
		for _, l := range result.Cost.Lines {
			forbidden = append(forbidden, present.Amount(l.Amount))
		}
		book, _ := presenttest.New().Book(nil, "")
		for _, s := range book.Suppliers {
			forbidden = append(forbidden, s.Name)
		}
		for _, k := range book.Cards {
			forbidden = append(forbidden, k.Card.Name)
		}
		for _, text := range texts(w.Canvas().Content()) {
			if secrets.MatchString(text) {
				t.Errorf("draft %d: %q is on the customer's side", draft, text)
			}
			for _, f := range forbidden {
				if f != "" && text == f && !own[f] {
					t.Errorf("draft %d: the shop's %q is on the customer's side", draft, f)
				}
			}
		}
	}
}

func TestCustomer_theSecretsTestCanFail(t *testing.T) {
	for _, text := range []string{"left per hour", "margin", "Plastisol sheets", "2.25 hours"} {
		if !secrets.MatchString(text) {
			t.Errorf("%q would not be noticed", text)
		}
	}
}

func TestCustomer_drawsTheGarmentsWithTheirArtwork(t *testing.T) {
	side, c, _ := shown(t, 0)
	drawn := 0
	for _, im := range side.picture.images {
		if im.Visible() && im.Image != nil && im.Size().Width > 50 {
			drawn++
		}
	}
	if want := min(len(c.Front().Drawn), mostDrawn); drawn != want || want < 2 {
		t.Errorf("got %d drawings, want %d", drawn, want)
	}
}

func TestCustomer_anEmptyCounterShowsNoFigures(t *testing.T) {
	_, _, w := shown(t, -1)
	digits := regexp.MustCompile(`\d+\.\d\d`)
	for _, text := range texts(w.Canvas().Content()) {
		if digits.MatchString(text) {
			t.Errorf("%q is shown though nothing is priced", text)
		}
	}
}
