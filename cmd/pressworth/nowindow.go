//go:build !cgo

package main

import "errors"

// openWindow has no window to open: the toolkit draws through C libraries.
func openWindow(shell) error {
	return errors.New("this build has no window, only the commands: build it with a C compiler at hand (CGO_ENABLED=1), or see `pressworth help`")
}
