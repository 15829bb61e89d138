//go:build cgo

package main

import (
	"os"
	"os/exec"
)

// openAgain starts the program anew on a shop file, in a process of its own, when this one is about to end.
func openAgain(path string, lookOnly bool) error {
	self, err := os.Executable()
	if err != nil {
		return err
	}
	args := []string{"--shop", path}
	if lookOnly {
		args = append(args, "--look-only")
	}
	cmd := exec.Command(self, args...)
	cmd.Stderr = os.Stderr
	return cmd.Start()
}
