package sizes_test

import (
	"fmt"

	"pressworth/quote/sizes"
)

func ExampleParse() {
	counts, err := sizes.Parse("S12 M24 2XL6", []string{"S", "M", "L", "XL", "2XL"})
	fmt.Println(counts, err)
	counts, err = sizes.Parse("6/11/-/0/3", []string{"S", "M", "L", "XL", "2XL"})
	fmt.Println(counts, err)
	_, err = sizes.Parse("M12 Q4", []string{"S", "M"})
	fmt.Println(err)
	// Output:
	// [{S 12} {M 24} {2XL 6}] <nil>
	// [{S 6} {M 11} {L 0} {XL 0} {2XL 3}] <nil>
	// Q4 is not read: write a size and how many, like S12; sizes here: S, M
}
