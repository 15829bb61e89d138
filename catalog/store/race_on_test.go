//go:build race

package store_test

import "flag"

// raced tells that the race detector is on, under which SQLite takes twenty times as long: the short forms do less then.
const raced = true

// Property tests draw fewer cases, unless the command line says how many.
func init() {
	if err := flag.Set("rapid.checks", "15"); err != nil {
		panic(err)
	}
}
