package packfile_test

import (
	"fmt"

	"pressworth/quote/packfile"
)

func ExampleRun() {
	request, err := packfile.Decode([]byte(`{"format":"pressworth.pack/1","width":"20","height":"12",
		"pieces":[{"id":"a","w":"2","h":"12","count":10}]}`))
	if err != nil {
		fmt.Println(err)
		return
	}
	answer, err := packfile.Run(request, nil)
	fmt.Println(answer.Sheets, answer.UsedPercent, len(answer.Pieces), err)
	// Output: 1 100.0 10 <nil>
}
