//go:build cgo

package main

import (
	"strings"
	"testing"
	"time"

	"fyne.io/fyne/v2/test"
)

func TestPins_onlyTheRightOneFitsAndItIsNotKeptAsTyped(t *testing.T) {
	app := test.NewApp()
	defer app.Quit()
	p := newPins(app.Preferences())
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

func TestPins_wrongOnesMakeTheNextWait(t *testing.T) {
	app := test.NewApp()
	defer app.Quit()
	now := time.Date(2026, 5, 4, 9, 0, 0, 0, time.UTC)
	p := newPins(app.Preferences())
	p.now = func() time.Time { return now }
	if err := p.Set("4711"); err != nil {
		t.Fatal(err)
	}
	for range freeTries + 1 {
		p.Fits("0000")
	}
	if p.Fits("4711") {
		t.Error("the right one fits at once after four wrong ones")
	}
	if now = now.Add(3 * time.Second); !p.Fits("4711") {
		t.Error("the right one does not fit after the wait")
	}
	for range 30 {
		p.Fits("0000")
		now = now.Add(longestWait)
	}
	if wait := p.wrong.until.Sub(now); wait > longestWait || !p.Fits("4711") {
		t.Errorf("the wait became %v", wait)
	}
}
