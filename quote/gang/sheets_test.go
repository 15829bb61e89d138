package gang_test

import (
	"fmt"
	"reflect"
	"testing"

	"pressworth/quote/gang"

	"pgregory.net/rapid"
)

// found is a plan in the oracle's terms.
func found(plan gang.Plan, items int) oracle {
	o := oracle{ok: true, cost: plan.Cost, runs: len(plan.Runs)}
	block := make([]int, items)
	for n, r := range plan.Runs {
		o.sheets += r.Sheets
		o.sizes += fmt.Sprint(r.Size)
		for _, i := range r.Items {
			block[i] = n
		}
	}
	o.blocks = fmt.Sprint(block)
	return o
}

func TestSheets_planIsTheBestOfAll(t *testing.T) {
	var plans, refused, shared, proven int
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 4)
		need := needs(t, items, 8)
		want := oracleSheets(card, items, need)
		plan, err := gang.NewSheets(card, items).Plan(upto(len(items)), need)
		if (err == nil) != want.ok {
			t.Fatalf("plan of %v × %v on %+v: error %v, the oracle's is %+v", need, items, card, err, want)
		}
		if err != nil {
			refused++
			return
		}
		if got := found(plan, len(items)); got != want {
			t.Fatalf("plan of %v × %v on %+v is %+v, want %+v", need, items, card, got, want)
		}
		if err := gang.CheckSheets(card, items, upto(len(items)), need, plan); err != nil {
			t.Fatalf("plan of %v × %v on %+v: %v", need, items, card, err)
		}
		if plan.Bound > plan.Cost {
			t.Fatalf("plan of %v × %v on %+v: bound %d is above the cost %d", need, items, card, plan.Bound, plan.Cost)
		}
		plans++
		shared += min(1, len(items)-len(plan.Runs))
		if plan.Bound == plan.Cost {
			proven++
		}
	})
	if plans < 20 || refused == 0 || shared < 5 || proven < plans/2 {
		t.Errorf("%d plans, %d refused, %d with a shared sheet, %d proven: the cases do not try enough", plans, refused, shared, proven)
	}
}

func TestSheets_boundIsTheCostUpToTenPiecesASheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 4)
		for i := range card.Sizes { // at most 3 × 3 of the smallest piece
			card.Sizes[i].W, card.Sizes[i].H = min(card.Sizes[i].W, 2*card.Sizes[i].Edge+3), min(card.Sizes[i].H, 2*card.Sizes[i].Edge+3)
		}
		need := needs(t, items, 12)
		plan, err := gang.NewSheets(card, items).Plan(upto(len(items)), need)
		if err == nil && plan.Bound != plan.Cost {
			t.Fatalf("plan of %v × %v on %+v: cost %d, bound %d", need, items, card, plan.Cost, plan.Bound)
		}
	})
}

func TestSheets_whatWasAskedBeforeChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 9)
		used := gang.NewSheets(card, items)
		for range 6 {
			need := make([]int, len(items))
			for i := range need {
				need[i] = rapid.IntRange(0, 40).Draw(t, "need")
			}
			cost, ok := used.Cost(upto(len(items)), need)
			got, err := used.Plan(upto(len(items)), need)
			want, wantErr := gang.NewSheets(card, items).Plan(upto(len(items)), need)
			if (err == nil) != (wantErr == nil) || !reflect.DeepEqual(got, want) {
				t.Fatalf("plan of %v × %v on %+v: %+v, asked first %+v", need, items, card, got, want)
			}
			if ok != (err == nil) || ok && cost != got.Cost {
				t.Fatalf("plan of %v × %v on %+v costs %d, alone it was said to cost %d", need, items, card, got.Cost, cost)
			}
		}
	})
}

func TestSheets_moreItemsAndCopiesNeverCostLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 5)
		for _, size := range card.Sizes { // more inks are no cheaper
			for r := 1; r < len(size.Prices); r++ {
				size.Prices[r].Each = dearerBy(size.Prices[r-1].Each, int64(r))
			}
		}
		s := gang.NewSheets(card, items)
		need := needs(t, items, 12)
		cost, ok := s.Cost(upto(len(items)), need)
		less := make([]int, len(items))
		for i := range less {
			less[i] = rapid.IntRange(0, need[i]).Draw(t, "less")
		}
		costLess, okLess := s.Cost(upto(len(items)), less)
		if ok && (!okLess || costLess > cost) {
			t.Fatalf("%v × %v on %+v: %d, but %v of them %d", need, items, card, cost, less, costLess)
		}
	})
}

func TestSheets_sharingIsNeverDearerThanRunsAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 9)
		s := gang.NewSheets(card, items)
		need := needs(t, items, 20)
		var sum gang.Price
		for i := range items {
			alone, ok := s.Alone(i, need[i])
			if ok != s.Serves(i) {
				t.Fatalf("item %v on %+v: served %v, alone %v", items[i], card, s.Serves(i), ok)
			}
			if !ok {
				return
			}
			sum += alone
		}
		if cost, ok := s.Cost(upto(len(items)), need); !ok || cost > sum {
			t.Fatalf("%v × %v on %+v: together %d, %v, alone %d", need, items, card, cost, ok, sum)
		}
	})
}

func TestSheets_dearerPricesNeverLowerTheCost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyCard(t), tinyItems(t, 5)
		need := needs(t, items, 12)
		cost, ok := gang.NewSheets(card, items).Cost(upto(len(items)), need)
		for i := range card.Sizes {
			for r := range card.Sizes[i].Prices {
				for b := range card.Sizes[i].Prices[r].Each {
					card.Sizes[i].Prices[r].Each[b].Each += int64(rapid.IntRange(0, 3).Draw(t, "dearer"))
				}
			}
		}
		dearer, okDearer := gang.NewSheets(card, items).Cost(upto(len(items)), need)
		if ok != okDearer || dearer < cost {
			t.Fatalf("%v × %v on %+v: %d, %v, at lower prices %d, %v", need, items, card, dearer, okDearer, cost, ok)
		}
	})
}

func dearerBy(breaks []gang.Break, by int64) []gang.Break {
	out := append([]gang.Break(nil), breaks...)
	for i := range out {
		out[i].Each += by
	}
	return out
}
