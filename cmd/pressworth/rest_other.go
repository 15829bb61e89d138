//go:build !linux && cgo

package main

import (
	"runtime/debug"
	"time"
)

// rest gives the heap that only the start needed back to the system, once the start has ended.
func (d *desktop) rest() {
	time.AfterFunc(4*time.Second, debug.FreeOSMemory)
}
