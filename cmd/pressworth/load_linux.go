//go:build linux && cgo

package main

import (
	"fmt"
	"os"
	"os/signal"
	"runtime"
	"syscall"
)

// tellLoad says on SIGUSR1 what the window holds, for the tests that watch it for days of work. Only where marker lines
// are asked for does anybody listen.
func tellLoad(trace func(string)) {
	if os.Getenv("PRESSWORTH_TRACE") == "" {
		return
	}
	asked := make(chan os.Signal, 1)
	signal.Notify(asked, syscall.SIGUSR1)
	go func() {
		for range asked {
			runtime.GC()
			runtime.GC()
			var m runtime.MemStats
			runtime.ReadMemStats(&m)
			trace(fmt.Sprintf("load %d %d", runtime.NumGoroutine(), m.HeapAlloc))
		}
	}()
}
