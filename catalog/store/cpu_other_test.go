//go:build !unix

package store_test

import "time"

func cpuTime() time.Duration { return 0 }

func residentPeak() float64 { return 0 }
