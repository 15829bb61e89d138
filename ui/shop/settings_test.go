package shop

import (
	"bytes"
	"encoding/json"
	"image"
	"image/png"
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/money"
	"pressworth/ui/parts"
)

func TestSettings_formHoldsEverythingItShows(t *testing.T) {
	p, d := openWhole(t)
	d.settings.Calendar.Days.Closed = []string{"24 dec", "2026-12-28..2027-01-01"}
	d.settings.Calendar.Hours[6], d.settings.Calendar.Spare = money.Int(4), 2
	d.settings.Logo = catalog.Logo{Name: "mark.png", Data: picture(t)}
	d.settings.Units.Temperature = catalog.Celsius
	d.shop.Handling = map[string]money.Number{"hoodie": money.Int(40), "cap": money.Int(55)}
	p.Shown()
	want, _ := json.Marshal(d.settings)
	p.touched()
	if got, _ := json.Marshal(p.now.Settings); string(got) != string(want) {
		t.Errorf("reading the form changed the settings:\n got %s\nwant %s", got, want)
	}
	if got := p.now.Handling["cap"]; len(p.now.Handling) != 2 || got.String() != "55" {
		t.Errorf("handling: got %v", p.now.Handling)
	}
}

func TestSettings_typedAreSavedWithTheRatesAndComeBackByUndoAndRedo(t *testing.T) {
	p, d := openWhole(t)
	typed(p, "calendar.hours[6]", "3.5")
	typed(p, "calendar.closed", "24 dec, last mon may")
	typed(p, "numbering.prefix", "Q-")
	typed(p, "numbering.next", "812")
	p.tick("calendar.receiving[1]")
	p.tick("calendar.federal")
	test.Tap(p.save)
	c := d.settings.Calendar
	if c.Hours[6].String() != "3.5" || len(c.Days.Closed) != 2 || c.Receiving[1] || !c.Days.Federal {
		t.Errorf("calendar: got %+v", c)
	}
	if n := d.settings.Numbering; n.Prefix != "Q-" || n.Next != 812 || d.saved != 1 {
		t.Errorf("numbering: got %+v after %d savings", n, d.saved)
	}
	if got := p.panel.paper.number.Text(); !strings.Contains(got, "Q-0812") {
		t.Errorf("beside the form: got %q, want the next number", got)
	}
	p.Undo()
	if d.settings.Numbering.Prefix != "{year}-" || p.form.Get("numbering.prefix") != "{year}-" {
		t.Errorf("undo: got %+v, field %q", d.settings.Numbering, p.form.Get("numbering.prefix"))
	}
	p.Redo()
	if d.settings.Numbering.Prefix != "Q-" {
		t.Errorf("redo: got %+v", d.settings.Numbering)
	}
}

// tick taps a box of the form.
func (p *Place) tick(path string) { test.Tap(p.form.CheckAt(path)) }

func TestSettings_whatIsWrongStandsBesideItsField(t *testing.T) {
	p, _ := openWhole(t)
	for path, text := range map[string]string{
		"calendar.closed": "someday", "numbering.prefix": "Q7", "calendar.hours[2]": "30", "lettering.digit_percent": "200",
	} {
		before := p.form.Get(path)
		typed(p, path, text)
		if p.form.ProblemAt(path) == "" || !p.save.Disabled() {
			t.Errorf("%s %q: said %q, button off %v", path, text, p.form.ProblemAt(path), p.save.Disabled())
		}
		typed(p, path, before)
	}
	f := p.grids["lettering.heights"].Cell(0, 1)
	parts.Focus(f)
	f.SelectAll()
	test.Type(f, "baby")
	if got := p.form.ProblemAt("lettering.heights"); !strings.Contains(got, "row 1: enter youth or adult") {
		t.Errorf("below the heights: said %q", got)
	}
}

func TestSettings_calendarIsSummedUpBesideTheSampleJob(t *testing.T) {
	p, _ := openWhole(t)
	before := p.panel.days.Text()
	typed(p, "calendar.hours[6]", "5")
	if after := p.panel.days.Text(); !strings.Contains(before, "20 days") || !strings.Contains(after, "24 days") || !strings.Contains(after, "140 hours") {
		t.Errorf("said %q, then %q; want 20 days, then 24 days with 140 hours", before, after)
	}
}

func TestSettings_logoIsChosenShownAndTakenAway(t *testing.T) {
	p, d := openWhole(t)
	p.Choose = func(done func(string)) { done("/pictures/mark.png") }
	data := picture(t)
	p.Picture = func(string) (catalog.Logo, error) { return catalog.Logo{Name: "mark.png", Data: data}, nil }
	p.logo.choose()
	if !p.logo.picture.Visible() || p.save.Disabled() {
		t.Fatalf("picture shown %v, button off %v", p.logo.picture.Visible(), p.save.Disabled())
	}
	test.Tap(p.save)
	if !bytes.Equal(d.settings.Logo.Data, data) {
		t.Errorf("saved %d bytes, want %d", len(d.settings.Logo.Data), len(data))
	}
	data = []byte("no picture")
	p.logo.choose()
	if p.logo.fault.Text() == "" || !p.logo.picture.Visible() {
		t.Errorf("what is no picture: said %q, the old one shown %v", p.logo.fault.Text(), p.logo.picture.Visible())
	}
	test.Tap(p.logo.remove)
	test.Tap(p.save)
	if len(d.settings.Logo.Data) != 0 || p.logo.picture.Visible() {
		t.Errorf("taken away: %d bytes kept, shown %v", len(d.settings.Logo.Data), p.logo.picture.Visible())
	}
}

func picture(t *testing.T) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewRGBA(image.Rect(0, 0, 60, 20))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestLevels_anotherIsMadeNamedAndDropped(t *testing.T) {
	p, d := openWhole(t)
	n := len(d.shop.Levels)
	p.levels.add()
	typed(p, "level.name", "Clubs")
	typed(p, "pricing.percent", "20")
	test.Tap(p.save)
	if len(d.shop.Levels) != n+1 || d.shop.Levels[n].Name != "Clubs" || d.shop.Levels[n].Pricing.Percent.String() != "20" {
		t.Fatalf("got %d levels, the last %+v", len(d.shop.Levels), d.shop.Levels[len(d.shop.Levels)-1].Name)
	}
	typed(p, "level.name", d.shop.Levels[0].Name)
	if p.form.ProblemAt("level.name") == "" {
		t.Error("two levels of one name are not said")
	}
	p.takeBack()
	test.Tap(p.levels.remove)
	test.Tap(p.save)
	if len(d.shop.Levels) != n {
		t.Errorf("dropped: got %d levels, want %d", len(d.shop.Levels), n)
	}
}

func TestLevels_taxedPartsAndClothingRule(t *testing.T) {
	p, d := openWhole(t)
	before := p.panel.total.Text()
	p.tick(taxedPath("goods"))
	if p.panel.total.Text() == before {
		t.Errorf("without tax on goods the sample job still comes to %s", before)
	}
	p.tick(taxedPath("goods"))
	p.form.ChoiceAt(clothingRule).SetKey("exempt_below")
	p.touched()
	if p.form.ProblemAt("pricing.tax.clothing.amount") == "" {
		t.Error("a rule without its amount is not said")
	}
	typed(p, "pricing.tax.clothing.amount", "110")
	if p.panel.total.Text() == before {
		t.Errorf("with clothing below 110 free the sample job still comes to %s", before)
	}
	test.Tap(p.save)
	tax := d.shop.Levels[0].Pricing.Tax
	if tax.Clothing == nil || *tax.Clothing != (quote.ClothingRule{Rule: "exempt_below", Amount: tax.Clothing.Amount}) || tax.Clothing.Amount.String() != "110" {
		t.Errorf("saved %+v", tax.Clothing)
	}
}

func TestPanel_comparesLevelsAndQuantities(t *testing.T) {
	p, d := openWhole(t)
	levels := p.panel.byLevel.object.Objects
	if len(levels) != len(d.shop.Levels)+1 {
		t.Errorf("got %d lines for %d levels", len(levels), len(d.shop.Levels))
	}
	if n := len(p.panel.byCount.object.Objects); n < 4 {
		t.Errorf("got %d lines of quantities", n)
	}
}

func TestLetter_isWrittenInTheShopsWords(t *testing.T) {
	p, d := openWhole(t)
	if got := p.form.Get("letter.subject"); got != catalog.DefaultLetter().Subject {
		t.Errorf("the subject stands there as %q", got)
	}
	typed(p, "letter.subject", "Your quote {margin}")
	if got := p.form.ProblemAt("letter.subject"); !strings.Contains(got, "nothing is known by {margin}") {
		t.Errorf("of a word that is none it says %q", got)
	}
	typed(p, "letter.subject", "Your quote {number}; {total}")
	typed(p, "letter.before", "Dear {customer},; ;it holds until {valid until}.")
	test.Tap(p.save)
	if l := d.settings.Letter; l.Subject != "Your quote {number}; {total}" || l.Before != "Dear {customer},\n\nit holds until {valid until}." || l.After != catalog.DefaultLetter().After {
		t.Errorf("kept %+v", l)
	}
}
