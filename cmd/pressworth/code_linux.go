//go:build linux && cgo

package main

import (
	"bufio"
	"fmt"
	"os"
	"strings"
	"syscall"
)

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
