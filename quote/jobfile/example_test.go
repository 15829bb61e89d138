package jobfile_test

import (
	"fmt"

	"pressworth/quote/jobfile"
)

func ExampleDecode() {
	job, err := jobfile.Decode([]byte(`{"format":"pressworth.job/1","currency":"USD","title":"Regatta","Ladder":[12],
		"art":{"minutes":30,"charge":"25.00"}}`))
	fmt.Println(job.Title, job.Art.Charge)
	fmt.Println(err)
	// Output:
	// Regatta 25.00
	// Ladder: unknown key: write it as "ladder"; art.minutes: is a number: write it as a string, "30"
}
