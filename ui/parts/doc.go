// Package parts holds the widgets the window is made of: text, fields, cells, lists, tables, bands. They draw with few
// objects that stay the same, compare before they set, and read the theme each time they are refreshed.
//
// A part tells what was done to it through its On... functions, which are called on the toolkit's goroutine; text set
// by the program is not reported. All of them can be reached and used by keyboard.
//
// Not in this package: prices, the shop's records, what a place of the window is for.
package parts
