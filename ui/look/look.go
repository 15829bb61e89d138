// Package look is how Pressworth looks: its colours in light and dark, its type, its measures. Everything drawn asks
// here, at the moment of drawing, so that a change of theme or of text size is followed at once.
//
// Not in this package: any widget, any file, the choice of theme a shop has made.
package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"

	"pressworth/assets"
)

// Mode says which of the two sets of colours is used.
type Mode int

// The modes; Light is where nothing is said.
const (
	Light Mode = iota
	Dark
	AsSystem
)

// MinPercent and MaxPercent bound the text size setting.
const (
	MinPercent = 90
	MaxPercent = 150
)

// Theme is Pressworth's theme. A Theme is a value: a change of mode or size makes a new one.
type Theme struct {
	mode    Mode
	percent int
}

// NewTheme makes a theme with text at a percentage of its usual size, held within MinPercent and MaxPercent.
func NewTheme(mode Mode, percent int) *Theme {
	return &Theme{mode: mode, percent: min(max(percent, MinPercent), MaxPercent)}
}

// Mode is the mode the theme was made with.
func (t *Theme) Mode() Mode { return t.mode }

// Percent is the text size.
func (t *Theme) Percent() int { return t.percent }

// Dark tells whether the dark colours are shown where the system prefers a variant.
func (t *Theme) dark(system fyne.ThemeVariant) bool {
	return t.mode == Dark || t.mode == AsSystem && system == theme.VariantDark
}

// Color gives Pressworth's colours, and those of the toolkit's own widgets in terms of them.
func (t *Theme) Color(name fyne.ThemeColorName, system fyne.ThemeVariant) color.Color {
	p := &lightPalette
	if t.dark(system) {
		p = &darkPalette
	}
	return p.color(name)
}

var (
	regular  = fyne.NewStaticResource("plex-regular.ttf", assets.PlexRegular)
	medium   = fyne.NewStaticResource("plex-medium.ttf", assets.PlexMedium)
	semibold = fyne.NewStaticResource("plex-semibold.ttf", assets.PlexSemibold)
)

// Font gives the family: semibold where the toolkit asks for bold.
func (t *Theme) Font(style fyne.TextStyle) fyne.Resource {
	switch {
	case style.Symbol:
		return theme.DefaultTheme().Font(style)
	case style.Bold:
		return semibold
	}
	return regular
}

// Icon gives the toolkit's icons: Pressworth draws its own where it uses any.
func (t *Theme) Icon(name fyne.ThemeIconName) fyne.Resource { return theme.DefaultTheme().Icon(name) }

// SemiboldFont is the weight of headings and of what counts.
func SemiboldFont() fyne.Resource { return semibold }

// MediumFont is the weight between the two, for names of things.
func MediumFont() fyne.Resource { return medium }
