package gang_test

import (
	"testing"

	"pressworth/quote/gang"

	"pgregory.net/rapid"
)

// tinyRoll draws a roll card that the oracle can try out.
func tinyRoll(t *rapid.T) gang.RollCard {
	edge := int64(rapid.SampledFrom([]int{0, 0, 1}).Draw(t, "edge"))
	card := gang.RollCard{
		W: 2*edge + int64(rapid.IntRange(3, 5).Draw(t, "width")), Edge: edge,
		Gap: int64(rapid.SampledFrom([]int{0, 0, 1}).Draw(t, "gap")),
	}
	for range rapid.IntRange(1, 3).Draw(t, "lengths") {
		card.Lengths = append(card.Lengths, gang.RollLength{
			Length: 2*edge + int64(rapid.IntRange(2, 8).Draw(t, "length")),
			Each:   int64(rapid.IntRange(4, 20).Draw(t, "each")),
		})
	}
	return card
}

var rollTried, rollBeaten, rollProven int

func TestRoll_planLiesBetweenBoundAndOracle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		card, items := tinyRoll(t), tinyItems(t, 3)
		need := needs(t, items, 4)
		r := gang.NewRoll(card, items)
		plan, err := r.Plan(upto(len(items)), need)
		if err != nil {
			if got, _ := oracleRoll(card, items, need, 40); got >= 0 {
				t.Fatalf("plan of %v × %v on %+v: %v, the oracle's costs %d", need, items, card, err, got)
			}
			return
		}
		if err := gang.CheckRoll(card, items, upto(len(items)), need, plan); err != nil {
			t.Fatalf("plan of %v × %v on %+v: %v", need, items, card, err)
		}
		best, sure := oracleRoll(card, items, need, min(plan.Cost, 80))
		if !sure {
			return
		}
		if best < 0 && plan.Cost <= 80 || best > plan.Cost || best >= 0 && plan.Bound > best {
			t.Fatalf("plan of %v × %v on %+v costs %d, bound %d, the oracle's %d", need, items, card, plan.Cost, plan.Bound, best)
		}
		if best >= 0 {
			rollTried++
			if best < plan.Cost {
				rollBeaten++
				t.Logf("beaten: %v × %v on %+v costs %d, the oracle's %d", need, items, card, plan.Cost, best)
			}
			if plan.Bound == plan.Cost {
				rollProven++
			}
		}
	})
	t.Logf("%d rolls, %d dearer than the oracle's, %d proven", rollTried, rollBeaten, rollProven)
}
