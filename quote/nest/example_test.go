package nest_test

import (
	"fmt"

	"pressworth/quote/nest"
)

// Five pieces of an open strip 20 wide, in whole millimetres.
func ExampleStrip() {
	pieces := []nest.Piece{{W: 12, H: 8, Turn: true, Count: 2}, {W: 8, H: 8, Count: 3}}
	r, err := nest.Strip(nest.Sheet{W: 20}, pieces, nest.Effort{Steps: 1000})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("length", r.Length, "none shorter than", r.Bound)
	// Output: length 24 none shorter than 24
}

// Do six prints of 4 × 6 fit on a sheet of 13 × 19, a quarter apart and from the border? Lengths in quarters.
func ExampleFit() {
	sheet := nest.Sheet{W: 52, H: 76, Edge: 1, Gap: 1}
	_, verdict := nest.Fit(sheet, []nest.Piece{{W: 16, H: 24, Turn: true, Count: 9}}, nest.Effort{})
	fmt.Println(verdict == nest.Fits)
	// Output: true
}
