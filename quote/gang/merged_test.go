package gang

import (
	"math/rand"
	"testing"
)

// shopCard is a card like a shop's: two sizes, prices by inks and sheets, lengths in hundredths of an inch.
func shopCard() SheetCard {
	row := func(inks int, each ...Price) InkRow {
		r := InkRow{Inks: inks}
		for k, from := range []int{10, 25, 50, 100} {
			r.Each = append(r.Each, Break{from, each[k]})
		}
		return r
	}
	return SheetCard{MaxInks: 6, SetupPerInk: 1500, Sizes: []SheetSize{
		{W: 1300, H: 1900, Edge: 25, Gap: 25, Minimum: 10, Prices: []InkRow{
			row(1, 460, 335, 260, 210), row(2, 560, 435, 330, 280), row(4, 760, 635, 430, 380), row(6, 960, 735, 530, 480),
		}},
		{W: 1125, H: 1400, Edge: 25, Gap: 25, Minimum: 10, Prices: []InkRow{
			row(1, 360, 235, 190, 150), row(2, 460, 335, 250, 200), row(4, 600, 500, 380, 310),
		}},
	}}
}

// shopItems are designs with sides and inks like a shop's.
func shopItems(r *rand.Rand, n int) []Item {
	inks := []string{"white", "gold", "navy", "red"}
	sides := []int64{250, 300, 350, 400, 450, 800, 900, 1000, 1100}
	items := make([]Item, n)
	for i := range items {
		items[i] = Item{Placement: i, Turn: true, W: sides[r.Intn(len(sides))], H: sides[r.Intn(len(sides))]}
		for _, k := range r.Perm(len(inks))[:1+r.Intn(2)] {
			items[i].Inks = append(items[i].Inks, inks[k])
		}
	}
	return items
}

func shopNeed(r *rand.Rand, n, least, span int) (items, need []int) {
	for i := range n {
		items, need = append(items, i), append(need, least+r.Intn(span))
	}
	return items, need
}

func TestMerged_isNearTheBestSplitOfSeven(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	var exact, merged Price
	missed, worst, cases := 0, 0.0, 40
	for range cases {
		s := NewSheets(shopCard(), shopItems(r, Exact))
		items, need := shopNeed(r, Exact, 15, 60)
		best, got := s.exact(group{items, need}), s.merged(group{items, need})
		if !best.ok || !got.ok {
			t.Fatalf("%v × %+v: exact %v, merged %v", need, s.items, best.ok, got.ok)
		}
		if got.cost < best.cost {
			t.Fatalf("%v × %+v: merged %d is below the best split, %d", need, s.items, got.cost, best.cost)
		}
		if bound := s.boundMany(group{items, need}, got.cost); bound > best.cost {
			t.Fatalf("%v × %+v: bound %d is above the best split, %d", need, s.items, bound, best.cost)
		}
		exact, merged = exact+best.cost, merged+got.cost
		if got.cost > best.cost {
			missed++
			worst = max(worst, 100*float64(got.cost-best.cost)/float64(best.cost))
		}
	}
	gap := 100 * float64(merged-exact) / float64(exact)
	t.Logf("of %d jobs of %d items %d cost more than the best split: %.2f %% on average, %.2f %% at most", cases, Exact, missed, gap, worst)
	if gap > 1 || worst > 8 {
		t.Errorf("the heuristic costs %.2f %% more than the best split on average, %.2f %% at most", gap, worst)
	}
}

func TestMerged_manyItemsStayWithinTheEffort(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	s := NewSheets(shopCard(), shopItems(r, 60))
	items, need := shopNeed(r, 60, 5, 400)
	plan, err := s.Plan(items, need)
	if err != nil {
		t.Fatal(err)
	}
	if err := CheckSheets(shopCard(), s.items, items, need, plan); err != nil {
		t.Error(err)
	}
	if !plan.Heuristic || plan.Bound <= 0 || plan.Bound > plan.Cost {
		t.Errorf("heuristic %v, bound %d, cost %d", plan.Heuristic, plan.Bound, plan.Cost)
	}
}
