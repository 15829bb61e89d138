//go:build cgo

package main

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2/test"
)

func TestPins_onlyTheRightOneFitsAndItIsNotKeptAsTyped(t *testing.T) {
	app := test.NewApp()
	defer app.Quit()
	p := pins{app.Preferences()}
	if p.Has() || !p.Fits("") || !p.Fits("1234") {
		t.Error("without a PIN something is asked for")
	}
	if err := p.Set("4711"); err != nil {
		t.Fatal(err)
	}
	if !p.Has() || !p.Fits("4711") || p.Fits("4712") || p.Fits("") {
		t.Errorf("has %v, right %v, wrong %v, empty %v", p.Has(), p.Fits("4711"), p.Fits("4712"), p.Fits(""))
	}
	if strings.Contains(p.prefs.String(pinKey), "4711") {
		t.Error("the PIN is kept as it was typed")
	}
	if err := p.Set(""); err != nil || p.Has() {
		t.Errorf("taken away: %v, has %v", err, p.Has())
	}
}
