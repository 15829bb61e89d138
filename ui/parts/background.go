package parts

import "fyne.io/fyne/v2"

// run carries out a piece of work and what follows it; tests put an inline one in its place.
var run = func(work func() (onUI func())) {
	go func() {
		if done := work(); done != nil {
			fyne.Do(done)
		}
	}()
}

// Background does work on another goroutine, and then what it returns on the toolkit's. It is the only way off the
// toolkit's goroutine and back. Whoever starts work twice drops the stale result by a sequence number of their own.
func Background(work func() (onUI func())) { run(work) }

// Inline makes Background do everything at once, on the caller's goroutine, until restore is called. For tests.
func Inline() (restore func()) {
	before := run
	run = func(work func() (onUI func())) {
		if done := work(); done != nil {
			done()
		}
	}
	return func() { run = before }
}
