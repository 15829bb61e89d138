package main

import (
	"os"
	"runtime"
)

// start brings a fresh machine to the open window on the demo shop.
func start(t *task) error {
	needs := [][]string{buildPackages, runPackages}
	if !hasDisplay() {
		t.say("no display here: the same window will be drawn off screen")
		needs = append(needs, offscreenPackages)
	}
	if err := t.install(needs...); err != nil {
		return err
	}
	if err := t.goBuild(); err != nil {
		return err
	}
	if !hasDisplay() {
		return t.offscreenDemo()
	}
	t.say("· open the window; your data lies where it says under Shop")
	return t.handOver(append([]string{"--demo"}, t.args...)...)
}

// hasDisplay tells whether a window can be shown: on Linux the window is an X11 window.
func hasDisplay() bool {
	return runtime.GOOS == "windows" || runtime.GOOS == "darwin" || os.Getenv("DISPLAY") != ""
}
