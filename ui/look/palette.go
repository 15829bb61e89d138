package look

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Names of Pressworth's colours.
const (
	Page      fyne.ThemeColorName = "page"      // behind everything
	Panel     fyne.ThemeColorName = "panel"     // sections, the price panel, the status bar
	Rule      fyne.ThemeColorName = "rule"      // hairlines and the borders of fields
	Ink       fyne.ThemeColorName = "ink"       // text
	Muted     fyne.ThemeColorName = "muted"     // captions, basis, what is secondary
	Accent    fyne.ThemeColorName = "accent"    // focus, the chosen, the one filled button
	OnAccent  fyne.ThemeColorName = "onAccent"  // text on accent
	Tint      fyne.ThemeColorName = "tint"      // a chosen row: accent, much thinned
	Hover     fyne.ThemeColorName = "hover"     // under the pointer
	Fill      fyne.ThemeColorName = "field"     // inside fields
	Warn      fyne.ThemeColorName = "warn"      // text of a warning
	WarnBand  fyne.ThemeColorName = "warnBand"  // what it stands on
	Fault     fyne.ThemeColorName = "fault"     // text of a problem
	FaultBand fyne.ThemeColorName = "faultBand" // what it stands on
	Selected  fyne.ThemeColorName = "selected"  // text that is selected
	Film      fyne.ThemeColorName = "film"      // bands and sheets of full-colour transfers
	Sheet     fyne.ThemeColorName = "sheet"     // bands and sheets of screen-printed transfers
	Rim       fyne.ThemeColorName = "rim"       // round a swatch, so that it shows on its ground
	Shade     fyne.ThemeColorName = "shade"     // below menus and dialogs of the toolkit
	Clear     fyne.ThemeColorName = "clear"     // nothing
)

// Text tells which colours are used for text, and Grounds on which they stand: the pairs that must be readable.
var (
	Text    = []fyne.ThemeColorName{Ink, Muted, Accent, Fault, Warn}
	Grounds = []fyne.ThemeColorName{Page, Panel, Fill}
)

type palette struct {
	own map[fyne.ThemeColorName]color.NRGBA
}

func (p *palette) color(name fyne.ThemeColorName) color.Color {
	if c, ok := p.own[name]; ok {
		return c
	}
	if alias, ok := toolkitColors[name]; ok {
		return p.own[alias]
	}
	return p.own[Ink]
}

func rgb(hex uint32) color.NRGBA { return rgba(hex, 0xff) }

func rgba(hex uint32, alpha uint8) color.NRGBA {
	return color.NRGBA{R: uint8(hex >> 16), G: uint8(hex >> 8), B: uint8(hex), A: alpha}
}

var lightPalette = palette{own: map[fyne.ThemeColorName]color.NRGBA{
	Page: rgb(0xf3f1ec), Panel: rgb(0xffffff), Rule: rgb(0xe4dfd5), Ink: rgb(0x1f2428), Muted: rgb(0x666b70),
	Accent: rgb(0x0b6e69), OnAccent: rgb(0xffffff), Tint: rgb(0xe9f2f0), Hover: rgba(0x1f2428, 0x0c), Fill: rgb(0xfaf9f6),
	Warn: rgb(0xa3510a), WarnBand: rgb(0xfbf0e2), Fault: rgb(0xa4262c), FaultBand: rgb(0xfbeceb),
	Selected: rgba(0x0b6e69, 0x33), Film: rgb(0xf4dcab), Sheet: rgb(0x93bfbc), Rim: rgb(0xc9c3b6), Shade: rgba(0x1f2428, 0x30), Clear: {},
}}

var darkPalette = palette{own: map[fyne.ThemeColorName]color.NRGBA{
	Page: rgb(0x16181a), Panel: rgb(0x1e2124), Rule: rgb(0x32363a), Ink: rgb(0xece9e2), Muted: rgb(0x9aa0a5),
	Accent: rgb(0x5cc2b8), OnAccent: rgb(0x10201f), Tint: rgb(0x20322f), Hover: rgba(0xffffff, 0x0d), Fill: rgb(0x24282b),
	Warn: rgb(0xf0a85a), WarnBand: rgb(0x33281a), Fault: rgb(0xff8a86), FaultBand: rgb(0x3a2222),
	Selected: rgba(0x5cc2b8, 0x40), Film: rgb(0x66501b), Sheet: rgb(0x1d4a47), Rim: rgb(0x70767b), Shade: rgba(0x000000, 0x90), Clear: {},
}}

// toolkitColors says which of Pressworth's colours the toolkit's own widgets get.
var toolkitColors = map[fyne.ThemeColorName]fyne.ThemeColorName{
	theme.ColorNameBackground: Page, theme.ColorNameForeground: Ink, theme.ColorNamePrimary: Accent,
	theme.ColorNameForegroundOnPrimary: OnAccent, theme.ColorNameButton: Fill, theme.ColorNameDisabledButton: Page,
	theme.ColorNameDisabled: Muted, theme.ColorNamePlaceHolder: Muted, theme.ColorNameInputBackground: Fill,
	theme.ColorNameInputBorder: Rule, theme.ColorNameSeparator: Rule, theme.ColorNameHover: Hover,
	theme.ColorNamePressed: Hover, theme.ColorNameFocus: Selected, theme.ColorNameSelection: Selected,
	theme.ColorNameMenuBackground: Panel, theme.ColorNameOverlayBackground: Panel, theme.ColorNameHeaderBackground: Panel,
	theme.ColorNameScrollBar: Rule, theme.ColorNameScrollBarBackground: Clear, theme.ColorNameShadow: Shade,
	theme.ColorNameError: Fault, theme.ColorNameForegroundOnError: Panel, theme.ColorNameWarning: Warn,
	theme.ColorNameForegroundOnWarning: Panel, theme.ColorNameSuccess: Accent, theme.ColorNameForegroundOnSuccess: OnAccent,
	theme.ColorNameHyperlink: Accent, theme.ColorNameInnerWindowBorder: Rule, theme.ColorNameInnerWindowBorderInactive: Rule,
}

// Color is a colour of the theme in use.
func Color(name fyne.ThemeColorName) color.Color { return theme.Color(name) }
