package gang_test

import (
	"testing"

	"pressworth/quote/gang"

	"pgregory.net/rapid"
)

func TestSheets_costIsTheLowestOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 4)
		need := needs(t, items, 8)
		want := oracleSheets(card, items, need)
		plan, err := gang.NewSheets(card, items).Plan(upto(len(items)), need)
		if (err == nil) != want.ok {
			t.Fatalf("plan of %v × %v on %+v: error %v, the oracle's is %+v", need, items, card, err, want)
		}
		if err != nil {
			return
		}
		got := oracle{true, plan.Cost, len(plan.Runs), 0}
		for _, r := range plan.Runs {
			got.sheets += r.Sheets
		}
		if got != want {
			t.Fatalf("plan of %v × %v on %+v is %+v, want %+v", need, items, card, got, want)
		}
		if err := gang.CheckSheets(card, items, upto(len(items)), need, plan); err != nil {
			t.Fatalf("plan of %v × %v on %+v: %v", need, items, card, err)
		}
		if plan.Bound > plan.Cost {
			t.Fatalf("plan of %v × %v on %+v: bound %d is above the cost %d", need, items, card, plan.Bound, plan.Cost)
		}
	})
}
