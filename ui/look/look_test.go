package look

import (
	"fmt"
	"image/color"
	"math"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/theme"
)

// luminance is the relative luminance of WCAG 2.1 (https://www.w3.org/TR/WCAG21/#dfn-relative-luminance).
func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	part := func(v uint32) float64 {
		s := float64(v) / 0xffff
		if s <= 0.03928 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*part(r) + 0.7152*part(g) + 0.0722*part(b)
}

// contrast is the contrast ratio of WCAG 2.1 (https://www.w3.org/TR/WCAG21/#dfn-contrast-ratio).
func contrast(a, b color.Color) float64 {
	la, lb := luminance(a), luminance(b)
	return (math.Max(la, lb) + 0.05) / (math.Min(la, lb) + 0.05)
}

func TestContrast_measureItself(t *testing.T) {
	if got := contrast(color.White, color.Black); math.Abs(got-21) > 0.001 {
		t.Errorf("white on black: got %.3f, want 21", got)
	}
	if got := contrast(rgb(0x777777), color.White); math.Abs(got-4.48) > 0.01 {
		t.Errorf("#777777 on white: got %.2f, want 4.48", got)
	}
}

// Text must stand out by 4.5 to 1, the level AA of WCAG 2.1, criterion 1.4.3.
func TestTheme_textIsReadableInLightAndDark(t *testing.T) {
	type pair struct{ text, ground fyne.ThemeColorName }
	pairs := []pair{
		{OnAccent, Accent},
		{Warn, WarnBand},
		{Fault, FaultBand},
		{Ink, Tint},
		{Muted, Tint},
		{Accent, Tint},
		{Ink, Film},
		{Ink, Sheet},
		{theme.ColorNameForeground, theme.ColorNameBackground},
		{theme.ColorNamePlaceHolder, theme.ColorNameInputBackground},
		{theme.ColorNameForegroundOnPrimary, theme.ColorNamePrimary},
		{theme.ColorNameForegroundOnError, theme.ColorNameError},
	}
	for _, text := range Text {
		for _, ground := range Grounds {
			pairs = append(pairs, pair{text, ground})
		}
	}
	for mode, name := range map[Mode]string{Light: "light", Dark: "dark"} {
		th := NewTheme(mode, 100)
		for _, p := range pairs {
			got := contrast(th.Color(p.text, theme.VariantLight), th.Color(p.ground, theme.VariantLight))
			if got < 4.5 {
				t.Errorf("%s: %s on %s: got %.2f, want 4.5 or more", name, p.text, p.ground, got)
			}
		}
	}
}

func TestTheme_asSystemFollowsTheSystem(t *testing.T) {
	th := NewTheme(AsSystem, 100)
	for variant, want := range map[fyne.ThemeVariant]color.Color{
		theme.VariantLight: lightPalette.own[Page], theme.VariantDark: darkPalette.own[Page],
	} {
		if got := th.Color(theme.ColorNameBackground, variant); got != want {
			t.Errorf("variant %d: got %v, want %v", variant, got, want)
		}
	}
	if got, want := NewTheme(Light, 100).Color(Page, theme.VariantDark), lightPalette.own[Page]; got != want {
		t.Errorf("light on a dark system: got %v, want %v", got, want)
	}
}

func TestTheme_textSizeIsHeldWithinItsBounds(t *testing.T) {
	for asked, want := range map[int]float32{20: 11.7, 90: 11.7, 100: 13, 130: 16.9, 150: 19.5, 900: 19.5} {
		if got := NewTheme(Light, asked).Size(Body); math.Abs(float64(got-want)) > 0.01 {
			t.Errorf("%d %%: got %.2f, want %.2f", asked, got, want)
		}
	}
}

func TestTheme_toolkitsOwnColoursAreAllNamed(t *testing.T) {
	for _, own := range toolkitColors {
		for _, p := range []palette{lightPalette, darkPalette} {
			if _, ok := p.own[own]; !ok {
				t.Errorf("%q is in no palette", own)
			}
		}
	}
	if len(lightPalette.own) != len(darkPalette.own) {
		t.Errorf("light has %d colours, dark %d", len(lightPalette.own), len(darkPalette.own))
	}
}

func TestFonts_figuresAreTabular(t *testing.T) {
	app := test.NewApp()
	defer app.Quit()
	app.Settings().SetTheme(NewTheme(Light, 100))
	for _, style := range []fyne.TextStyle{{}, {Bold: true}} {
		want := fyne.MeasureText("0000000000", 30, style).Width
		for d := range 10 {
			s := fmt.Sprint(d)
			got := fyne.MeasureText(s+s+s+s+s+s+s+s+s+s, 30, style).Width
			if math.Abs(float64(got-want)) > 0.01 {
				t.Errorf("%+v: ten of %s are %.2f wide, want %.2f as for 0", style, s, got, want)
			}
		}
	}
}

func TestKinds_everyKindOfCostLineHasAColour(t *testing.T) {
	for line, want := range map[string]Kind{
		"blanks": Blanks, "transfers": Transfers, "labour": Pressing, "overhead": Overhead, "freight": Freight, "art": Art,
		"spoilage": Rest, "extra": Rest, "press_wear": Rest, "delivery": Rest,
	} {
		if got := KindOf(line); got != want {
			t.Errorf("%s: got %s, want %s", line, got.Name(), want.Name())
		}
	}
}
