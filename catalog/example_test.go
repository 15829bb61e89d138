package catalog_test

import (
	"fmt"

	"pressworth/assets"
	"pressworth/catalog"
)

// A draft is text as it stands in a form; Freeze reads it with the prices of a day, or says what is wrong beside each
// field.
func ExampleFreeze() {
	demo, err := catalog.ReadDemo(assets.DemoJob, assets.DemoCatalog, "2026-05-04")
	if err != nil {
		fmt.Println(err)
		return
	}
	book := catalog.Book{Shop: demo.Shop, Suppliers: demo.Suppliers, Cards: demo.Cards, Styles: make(map[int64]catalog.Style)}
	for _, s := range demo.Styles {
		book.Styles[s.ID] = s
	}
	draft := demo.Drafts[0]
	job, _ := catalog.Freeze(draft, book, "2026-05-04")
	fmt.Println(job.Garments[0].Name, job.Garments[0].Color, job.Garments[0].Sizes[1].Qty)

	draft.Placements[0].Width = "wide"
	_, problems := catalog.Freeze(draft, book, "2026-05-04")
	fmt.Println(problems[0].Path+":", problems[0].Problem)
	// Output:
	// Long-sleeve tee Navy 11
	// placements[0].width: enter inches, like 3.5 or 3 1/2
}
