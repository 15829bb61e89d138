//go:build !linux

package store_test

import "errors"

// choreOnDisk needs a system that can mount a file system for one process alone.
func choreOnDisk(chore, string, string) error { return errors.New("no small disk on this system") }
