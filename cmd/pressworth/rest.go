//go:build cgo

package main

import (
	"runtime/debug"
	"time"
)

// settled is how long after the first frame the work of the start has ended: the shaders are compiled, every chart is
// drawn, the day's backup is made.
const settled = 4 * time.Second

// rest gives back what only the start needed, once it has ended: the heap that is free again, and code that ran once.
func (d *desktop) rest() {
	time.AfterFunc(settled, func() {
		debug.FreeOSMemory()
		dropCode()
		d.trace("at rest")
	})
}
