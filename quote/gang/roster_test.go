package gang

import (
	"math/rand"
	"testing"
)

// roster is n different pieces for a roll, in hundredths of an inch: names 2 inches high, or numbers and names of many
// heights.
func roster(seed int64, n int, oneHeight bool) (items []Item, idx, need []int) {
	r := rand.New(rand.NewSource(seed))
	for i := range n {
		it := Item{Placement: 0, W: int64(150 + 3*r.Intn(300)), H: 200, Turn: true}
		if !oneHeight {
			it.W, it.H = int64(100+r.Intn(700)), int64(100+r.Intn(500))
		}
		items, idx, need = append(items, it), append(idx, i), append(need, 1)
	}
	return items, idx, need
}

// rosterRoll is sold by the foot from two feet on, the longer the cheaper a foot.
func rosterRoll() RollCard {
	c := RollCard{W: 2200, Gap: 25}
	for feet := int64(2); feet <= 20; feet++ {
		c.Lengths = append(c.Lengths, RollLength{feet * 1200, 400 + 550*feet})
	}
	return c
}

const rosters = 8

// rosterGap is how much plans for rosters cost above their bounds, in percent, all together.
func rosterGap(tb testing.TB, card RollCard, oneHeight bool) float64 {
	var cost, bound float64
	for seed := range int64(rosters) {
		items, idx, need := roster(seed, 300, oneHeight)
		plan, err := NewRoll(card, items).Plan(idx, need)
		if err == nil {
			err = CheckRoll(card, items, idx, need, plan)
		}
		if err != nil {
			tb.Fatal(err)
		}
		cost, bound = cost+float64(plan.Cost), bound+float64(plan.Bound)
	}
	return 100 * (cost/bound - 1)
}

// Names are near their bound; of pieces with nothing in common the bound, which is mostly area, cannot be reached.
var rosterCases = []struct {
	name      string
	card      RollCard
	oneHeight bool
	most      float64 // percent
}{
	{"names of one height", shopRoll(), true, 3},
	{"all different", shopRoll(), false, 5},
	{"names of one height, by the foot", rosterRoll(), true, 3},
	{"all different, by the foot", rosterRoll(), false, 5},
}

func TestRoll_rostersOf300AreNearTheirBounds(t *testing.T) {
	for _, c := range rosterCases {
		gap := rosterGap(t, c.card, c.oneHeight)
		if t.Logf("%s: %.2f %% above the bounds", c.name, gap); gap > c.most {
			t.Errorf("%s: %.2f %% above the bounds, want at most %.0f", c.name, gap, c.most)
		}
	}
}

// BenchmarkRoll_roster plans rosters of 300 different pieces, cold.
func BenchmarkRoll_roster(b *testing.B) {
	for _, c := range rosterCases {
		b.Run(c.name, func(b *testing.B) {
			gap := 0.0
			for b.Loop() {
				gap = rosterGap(b, c.card, c.oneHeight)
			}
			b.ReportMetric(gap, "gap%")
			b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N*rosters), "ms/plan")
		})
	}
}
