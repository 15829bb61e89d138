//go:build cgo

package main

import (
	"fyne.io/fyne/v2"

	"pressworth/ui"
	"pressworth/ui/look"
)

// How a person likes the window is kept by the toolkit, apart from the shop's data: it belongs to the computer.
const (
	modeKey    = "mode"
	percentKey = "text_percent"
)

func keptSettings(p fyne.Preferences) ui.Settings {
	return ui.Settings{Mode: look.Mode(p.IntWithFallback(modeKey, int(look.Light))), Percent: p.IntWithFallback(percentKey, 100)}
}

func keepSettings(p fyne.Preferences, s ui.Settings) {
	p.SetInt(modeKey, int(s.Mode))
	p.SetInt(percentKey, s.Percent)
}
