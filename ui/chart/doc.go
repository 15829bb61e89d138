// Package chart draws the Counter's pictures: the stack of costs, the curve of the ladder, the bands of the cheapest
// cards, the layout of a sheet. They are vectors made of few objects that are reused, follow the theme, and say in
// words or by order whatever a colour says.
//
// Not in this package: any figure worked out; charts are given what they show.
package chart

import (
	"image/color"

	"fyne.io/fyne/v2"

	"pressworth/ui/look"
	"pressworth/ui/parts"
)

// tiny is text inside charts.
func tiny(c fyne.ThemeColorName) parts.Style { return parts.Style{Size: look.Caption, Color: c} }

// fade mixes a colour with the panel behind it: part of it, 0 to 1.
func fade(c color.Color, part float64) color.Color {
	a, b := color.NRGBAModel.Convert(c).(color.NRGBA), color.NRGBAModel.Convert(look.Color(look.Panel)).(color.NRGBA)
	mix := func(x, y uint8) uint8 { return uint8(float64(x)*part + float64(y)*(1-part) + 0.5) }
	return color.NRGBA{R: mix(a.R, b.R), G: mix(a.G, b.G), B: mix(a.B, b.B), A: 0xff}
}
