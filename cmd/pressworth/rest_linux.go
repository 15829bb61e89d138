//go:build linux && cgo

package main

import (
	"bufio"
	"fmt"
	"os"
	"runtime/debug"
	"strings"
	"syscall"
	"time"
)

const (
	restLook = 2 * time.Second        // how often the window is asked whether it rests
	restCalm = restLook / 20          // processor time of a look in which nothing went on
	restWork = 500 * time.Millisecond // processor time after which there is something to give back
)

// rest gives back what the work behind it needed, whenever the window has come to rest after some: after the start,
// after a while of typing, after a turn to the customer's side. That is the heap that is free again, and code.
func (d *desktop) rest() {
	go func() {
		var rested time.Duration
		for last := spent(); ; {
			time.Sleep(restLook)
			now := spent()
			if now-last < restCalm && now-rested > restWork {
				debug.FreeOSMemory()
				dropCode()
				d.trace("at rest")
				now = spent()
				rested = now
			}
			last = now
		}
	}()
}

// spent is the processor time that the program has used.
func spent() time.Duration {
	var use syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &use); err != nil {
		return 0
	}
	return time.Duration(use.Utime.Nano() + use.Stime.Nano())
}

// dropCode unmaps the code of the program and its libraries from memory. What still runs comes back from the system's
// file cache at its next use, page by page; what ran at the start alone, above all a software renderer's compiler, some
// forty megabytes, does not. Only mappings that are executable and cannot be written are touched: their pages are those
// of the file (madvise(2), MADV_DONTNEED; proc(5), maps). Memory is all this is about, so nobody is told when it fails.
func dropCode() {
	maps, err := os.Open("/proc/self/maps")
	if err != nil {
		return
	}
	defer maps.Close()
	for lines := bufio.NewScanner(maps); lines.Scan(); {
		fields := strings.Fields(lines.Text())
		if len(fields) < 6 || fields[1] != "r-xp" || !strings.HasPrefix(fields[5], "/") {
			continue
		}
		var from, to uintptr
		if _, err := fmt.Sscanf(fields[0], "%x-%x", &from, &to); err == nil {
			_, _, _ = syscall.Syscall(syscall.SYS_MADVISE, from, to-from, syscall.MADV_DONTNEED)
		}
	}
}
