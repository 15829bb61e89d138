// Package nest lays axis-parallel rectangles on sheets and on open strips,
// keeping a gap between pieces and an edge free along the border, and turning
// pieces by 90 degrees where that is allowed and helps.
//
// Lengths are integers in a unit the caller chooses. There is no clock and no
// chance in here: effort is counted in steps, so the same call gives the same
// layout on every machine.
//
// Not in this package: prices, inks, runs of sheets, which sheet to buy, files
// and their formats, drawing.
package nest
