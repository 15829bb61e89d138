package gang_test

import (
	"fmt"

	"pressworth/quote/gang"
)

// Lengths are hundredths of an inch here, prices cents.
func Example() {
	card := gang.SheetCard{SetupPerInk: 1500, Sizes: []gang.SheetSize{{
		W: 1300, H: 1900, Edge: 25, Gap: 25, Minimum: 10,
		Prices: []gang.InkRow{
			{Inks: 1, Each: []gang.Break{{From: 10, Each: 460}, {From: 25, Each: 335}}},
			{Inks: 2, Each: []gang.Break{{From: 10, Each: 560}, {From: 25, Each: 435}}},
		},
	}}}
	items := []gang.Item{
		{Placement: 0, W: 1100, H: 900, Turn: true, Inks: []string{"white", "gold"}}, // full back
		{Placement: 1, W: 400, H: 400, Turn: true, Inks: []string{"white"}},          // left chest
	}
	plan, err := gang.NewSheets(card, items).Plan([]int{0, 1}, []int{24, 26})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range plan.Runs {
		fmt.Printf("%d sheets at %d, %d inks, setup %d, items %v, copies %v\n", r.Sheets, r.Each, r.Inks, r.Setup, r.Items, r.Copies)
	}
	fmt.Println("cost", plan.Cost, "no plan below", plan.Bound)
	// Output:
	// 25 sheets at 435, 2 inks, setup 3000, items [0 1], copies [1 2]
	// cost 13875 no plan below 13875
}

func ExampleRoll_Plan() {
	card := gang.RollCard{W: 2200, Gap: 25, Lengths: []gang.RollLength{{Length: 2400, Each: 1300}, {Length: 6000, Each: 2900}}}
	items := []gang.Item{{W: 1100, H: 900, Turn: true}}
	plan, err := gang.NewRoll(card, items).Plan([]int{0}, []int{14})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, r := range plan.Runs {
		fmt.Printf("%d of length %d with %d pieces each\n", r.Sheets, card.Lengths[r.Size].Length, r.Copies[0])
	}
	fmt.Println("cost", plan.Cost)
	// Output:
	// 1 of length 6000 with 10 pieces each
	// 1 of length 2400 with 4 pieces each
	// cost 4200
}

func ExampleSheets_Together() {
	card := gang.SheetCard{SetupPerInk: 1500, Sizes: []gang.SheetSize{{
		W: 1300, H: 1900, Edge: 25, Gap: 25, Minimum: 10,
		Prices: []gang.InkRow{{Inks: 1, Each: []gang.Break{{From: 10, Each: 460}, {From: 25, Each: 335}}}},
	}}}
	items := []gang.Item{
		{Placement: 0, W: 1100, H: 900, Turn: true, Inks: []string{"white"}},
		{Placement: 1, W: 1000, H: 800, Turn: true, Inks: []string{"white"}},
	}
	club := []gang.Need{{Item: 0, Copies: 10}}
	school := []gang.Need{{Item: 1, Copies: 12}}
	sharing, err := gang.NewSheets(card, items).Together([][]gang.Need{club, school})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("alone", sharing.Alone, "saves", sharing.Saves)
	for _, g := range sharing.Groups {
		fmt.Println("jobs", g.Jobs, "pay", g.Parts)
	}
	// Output:
	// alone [6100 6100] saves 5180
	// jobs [0 1] pay [3510 3510]
}
