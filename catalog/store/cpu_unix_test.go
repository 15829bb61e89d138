//go:build unix

package store_test

import (
	"syscall"
	"time"
)

// cpuTime is the processor time this process has used; what others do on the machine does not count.
func cpuTime() time.Duration {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return time.Duration(u.Utime.Nano() + u.Stime.Nano())
}

// residentPeak is the most memory this process ever held, in MB where the system counts kilobytes.
func residentPeak() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return float64(u.Maxrss) / 1000
}
