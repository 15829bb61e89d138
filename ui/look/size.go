package look

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/theme"
)

// Names of the sizes of type.
const (
	Caption  fyne.ThemeSizeName = "caption"  // 11: over fields, heads of columns
	Body     fyne.ThemeSizeName = "body"     // 13: everything else
	Title    fyne.ThemeSizeName = "title"    // 14: names of sections, semibold
	Key      fyne.ThemeSizeName = "key"      // 18: the figures that decide
	Display  fyne.ThemeSizeName = "display"  // 30: the total
	Front    fyne.ThemeSizeName = "front"    // 17: the customer's side
	FrontKey fyne.ThemeSizeName = "frontKey" // 30: its smaller prices
	FrontSum fyne.ThemeSizeName = "frontSum" // 22: its total
	FrontTop fyne.ThemeSizeName = "frontTop" // 58: its price
	onePoint fyne.ThemeSizeName = "onePoint" // 1 at 100 %
)

// sizes are in points at 100 %; text follows the text size setting, and so do measures asked for through Px.
var sizes = map[fyne.ThemeSizeName]float32{
	Caption: 11, Body: 13, Title: 14, Key: 18, Display: 30, Front: 17, FrontKey: 30, FrontSum: 22, FrontTop: 58, onePoint: 1,
	theme.SizeNameText: 13, theme.SizeNameCaptionText: 11, theme.SizeNameSubHeadingText: 14, theme.SizeNameHeadingText: 18,
	theme.SizeNameInlineIcon: 16, theme.SizeNameInnerPadding: 6, theme.SizeNamePadding: 4, theme.SizeNameLineSpacing: 4,
}

// fixed sizes do not follow the text size.
var fixed = map[fyne.ThemeSizeName]float32{
	theme.SizeNameInputBorder: 1, theme.SizeNameSeparatorThickness: 1, theme.SizeNameInputRadius: FieldRadius,
	theme.SizeNameButtonRadius: FieldRadius, theme.SizeNameSelectionRadius: FieldRadius, theme.SizeNameMenuRadius: FieldRadius,
	theme.SizeNamePopupRadius: SectionRadius, theme.SizeNameDialogRadius: SectionRadius, theme.SizeNameCardRadius: SectionRadius,
	theme.SizeNameScrollBar: 10, theme.SizeNameScrollBarSmall: 4, theme.SizeNameScrollBarRadius: 4,
}

// Radii of corners, and the two widths of borders.
const (
	SectionRadius = 8
	FieldRadius   = 5
	Hairline      = 1
	FocusBorder   = 2
)

// Measures at 100 %, to be used through Px.
const (
	FieldHeight  = 30
	CellHeight   = 24 // a field inside a table
	RowHeight    = 30 // a row of a table
	RailWidth    = 84
	PanelWidth   = 450
	SectionPadX  = 16
	SectionPadY  = 14
	SectionApart = 14
	PageMargin   = 20
	FieldApart   = 10
)

// Size gives Pressworth's sizes, and those of the toolkit's own widgets.
func (t *Theme) Size(name fyne.ThemeSizeName) float32 {
	if s, ok := sizes[name]; ok {
		return s * float32(t.percent) / 100
	}
	if s, ok := fixed[name]; ok {
		return s
	}
	return theme.DefaultTheme().Size(name)
}

// Size is a size of the theme in use.
func Size(name fyne.ThemeSizeName) float32 { return theme.Size(name) }

// Px is a measure at 100 % brought to the text size in use.
func Px(at100 float32) float32 { return at100 * theme.Size(onePoint) }
