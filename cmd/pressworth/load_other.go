//go:build !linux && cgo

package main

// tellLoad is for the tests that drive the window, which run on Linux.
func tellLoad(func(string)) {}
