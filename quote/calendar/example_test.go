package calendar_test

import (
	"fmt"

	"pressworth/quote/calendar"
)

// Blanks come in two working days, sheets are made in three and take two more; Thanksgiving is closed. The club needs its
// shirts on Friday 11 December.
func ExampleSchedule() {
	federal, err := calendar.New(calendar.Settings{Federal: true})
	if err != nil {
		fmt.Println(err)
		return
	}
	press := calendar.Press{Calendar: federal, Minutes: [7]int{0, 360, 360, 360, 360, 360, 0}}
	plan := calendar.Schedule(calendar.Ask{
		Now:    calendar.Moment{Day: calendar.On(2026, 11, 25), Clock: 10 * 60},
		Needed: calendar.On(2026, 12, 11), Minutes: 135, Press: press,
		Sources: []calendar.Source{
			{Name: "Blanks", Calendar: federal, CutOff: 15 * 60, Transit: 2},
			{Name: "Sheets", Calendar: federal, CutOff: 12 * 60, Production: 3, Transit: 2},
		},
	})
	fmt.Println(plan.Basis)
	for _, o := range plan.Orders {
		fmt.Printf("%s: order by %s, %s\n", o.Source.Name, o.By(), o.LatestBasis)
	}
	// Output:
	// goods taken in Thu 3 Dec; 2.3 h of pressing from Fri 4 Dec: ready Fri 4 Dec
	// Blanks: order by Tue 8 Dec 15:00, to be taken in by Thu 10 Dec, less 2 working days on the way
	// Sheets: order by Thu 3 Dec 12:00, to be taken in by Thu 10 Dec, less 3 working days to make, 2 on the way
}
