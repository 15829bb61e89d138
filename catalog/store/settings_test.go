package store_test

import (
	"bytes"
	"errors"
	"image"
	"image/png"
	"slices"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/quote/calendar"
)

func TestSettings_comeBackAsTheyWereSaved(t *testing.T) {
	s := demoStore(t)
	x, err := s.Settings(ctx)
	if err != nil || asJSON(t, x) != asJSON(t, catalog.DefaultSettings()) {
		t.Fatalf("before: got %+v, %v, want those of a new shop", x, err)
	}
	x.Calendar.Days = calendar.Settings{Federal: true, SaturdayStays: true, Closed: []string{"2026-12-24", "every fri"}}
	x.Calendar.Hours[6], x.Calendar.Receiving[1] = number(t, "3.5"), false
	x.Lettering.Heights[0].Height = number(t, "2.25")
	x.Logo = catalog.Logo{Name: "mark.png", Data: pictureOf(t, 40, 20)}
	x.Units.Temperature = catalog.Celsius
	x.Numbering = catalog.Numbering{Prefix: "Q-", Next: 70, Width: 3}
	shop, err := s.Shop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	shop.StaleDays = 45
	if err := s.SaveRules(ctx, shop, x); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Settings(ctx); err != nil || asJSON(t, got) != asJSON(t, x) {
		t.Errorf("got %+v, %v, want %+v", got, err, x)
	}
	if got, err := s.Shop(ctx); err != nil || got.StaleDays != 45 {
		t.Errorf("the rates beside them: got %d days, %v, want 45", got.StaleDays, err)
	}
	suppliers, err := s.Suppliers(ctx)
	if err != nil {
		t.Fatal(err)
	}
	suppliers[0].Calendar = calendar.Settings{Federal: true, Closed: []string{"2026-11-27"}}
	if _, err := s.SaveSupplier(ctx, suppliers[0]); err != nil {
		t.Fatal(err)
	}
	if got, err := s.Suppliers(ctx); err != nil || asJSON(t, got[0].Calendar) != asJSON(t, suppliers[0].Calendar) {
		t.Errorf("supplier's calendar: got %+v, %v, want %+v", got[0].Calendar, err, suppliers[0].Calendar)
	}
}

func TestSettings_allProblemsAtOnceAndNothingSaved(t *testing.T) {
	s := demoStore(t)
	shop, err := s.Shop(ctx)
	if err != nil {
		t.Fatal(err)
	}
	stale := shop.StaleDays
	shop.StaleDays = 1
	err = s.SaveRules(ctx, shop, catalog.Settings{
		Calendar:  catalog.ShopCalendar{Days: calendar.Settings{Closed: []string{"tomorrow"}}, Spare: 90},
		Numbering: catalog.Numbering{Prefix: "Q7"},
		Lettering: catalog.Lettering{Heights: []catalog.LetterHeight{{Text: "name", Group: "cat"}}, DigitsAtLeast: -1},
		Logo:      catalog.Logo{Data: []byte("GIF89a")},
	})
	var problems quote.Problems
	if !errors.As(err, &problems) {
		t.Fatalf("got %v, want problems", err)
	}
	for _, path := range []string{
		"calendar.closed", "calendar.hours[1]", "calendar.receiving", "calendar.spare", "numbering.prefix", "numbering.next",
		"lettering.heights[0].group", "lettering.heights[0].height", "lettering.digits_at_least", "logo", "units.temperature",
	} {
		if !slices.ContainsFunc(problems, func(p quote.Problem) bool { return p.Path == path }) {
			t.Errorf("no problem at %s among %v", path, problems)
		}
	}
	if shop, err := s.Shop(ctx); err != nil || shop.StaleDays != stale {
		t.Errorf("the rates were saved all the same: %d, %v", shop.StaleDays, err)
	}
}

func TestLogo_onlyPicturesThatCanBePrinted(t *testing.T) {
	for what, data := range map[string][]byte{
		"no PNG or JPEG":  []byte("GIF89a"),
		"cannot be drawn": pictureOf(t, 40, 20)[:60],
		"KB: choose":      make([]byte, catalog.MostLogoBytes+1),
		"pixels: choose":  pictureOf(t, catalog.MostLogoSide+1, 1),
	} {
		if err := (catalog.Logo{Data: data}).Check(); err == nil || !strings.Contains(err.Error(), what) {
			t.Errorf("got %v, want a refusal that says %q", err, what)
		}
	}
	if err := (catalog.Logo{}).Check(); err != nil {
		t.Errorf("no logo: %v", err)
	}
}

func TestNumbering_asTheShopSays(t *testing.T) {
	s := demoStore(t)
	for _, step := range []struct {
		how  catalog.Numbering
		want string
	}{
		{catalog.Numbering{Prefix: "Q {year}/", Next: 70, Width: 3}, "Q 2026/070"},
		{catalog.Numbering{Prefix: "Q {year}/", Next: 70, Width: 3}, "Q 2026/071"},
		{catalog.Numbering{Prefix: "Q {year}/", Next: 5, Width: 3}, "Q 2026/072"},
		{catalog.Numbering{Prefix: "Ö-", Next: 1}, "Ö-1"},
		{catalog.Numbering{Prefix: "Ö-", Next: 1}, "Ö-2"},
		{catalog.Numbering{Prefix: "", Next: 900}, "900"},
	} {
		x, err := s.Settings(ctx)
		if err != nil {
			t.Fatal(err)
		}
		x.Numbering = step.how
		if err := s.SaveSettings(ctx, x); err != nil {
			t.Fatal(err)
		}
		d, err := s.SaveDraft(ctx, catalog.Draft{Title: "anything"}, nil)
		if err != nil || d.Number != step.want {
			t.Errorf("%+v: got %s, %v, want %s", step.how, d.Number, err, step.want)
		}
	}
}

// pictureOf makes a PNG of that many pixels.
func pictureOf(t *testing.T, width, height int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := png.Encode(&b, image.NewRGBA(image.Rect(0, 0, width, height))); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}
