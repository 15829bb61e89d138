//go:build race

package store_test

// raced tells that the race detector is on, under which SQLite takes twenty times as long: the short forms do less then.
const raced = true
