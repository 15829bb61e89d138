package gang

import "testing"

// onePrice is a size with one ink row.
func onePrice(minimum int, breaks ...Break) *SheetSize {
	return &SheetSize{Minimum: minimum, Prices: []InkRow{{Inks: 1, Each: breaks}}}
}

func TestBuy_movesUpWhereThatCostsLess(t *testing.T) {
	// At 10 below 500 and 9 from there on 500 cost 4500: computed, more from 451 on, the same at 450.
	two := onePrice(0, Break{1, 10}, Break{500, 9})
	// Three breaks at .75, .72 and .68 from 0, 400 and 800, as in Snyder & Shen, Fundamentals of Supply Chain Theory,
	// example 3.5, in hundredths; quantities computed: 400 × .72 = 288 = 384 × .75, 800 × .68 = 544 ≈ 755.6 × .72.
	three := onePrice(0, Break{0, 75}, Break{400, 72}, Break{800, 68})
	for _, c := range []struct {
		name  string
		size  *SheetSize
		x     int
		want  int
		price Price
	}{
		{"below", two, 449, 449, 4490},
		{"equal: fewer are bought", two, 450, 450, 4500},
		{"above", two, 451, 500, 4500},
		{"at the break", two, 500, 500, 4500},
		{"beyond it", two, 501, 501, 4509},
		{"the lowest price", three, 384, 384, 28800},
		{"to the second", three, 385, 400, 28800},
		{"the second", three, 755, 755, 54360},
		{"to the third", three, 756, 800, 54400},
		{"two breaks on", onePrice(0, Break{1, 100}, Break{10, 99}, Break{11, 10}), 2, 11, 110},
		{"the minimum", onePrice(6, Break{1, 10}), 2, 6, 60},
		{"the first break", onePrice(2, Break{5, 10}), 3, 5, 50},
		{"a break the minimum has passed", onePrice(6, Break{1, 10}, Break{4, 8}), 2, 6, 48},
	} {
		got, ok := buy(c.size, 0, c.x)
		if !ok || got.sheets != c.want || got.cost != c.price {
			t.Errorf("%s: %d wanted, bought %d for %d, %v; want %d for %d", c.name, c.x, got.sheets, got.cost, ok, c.want, c.price)
		}
	}
}

func TestBuy_passesOverWhatCannotBeReckonedWith(t *testing.T) {
	if got, ok := buy(onePrice(0, Break{1, most}), 0, 2); ok {
		t.Errorf("twice the largest amount costs %d", got.cost)
	}
	if got, ok := buy(onePrice(0, Break{1, most}, Break{10, 3}), 0, 2); !ok || got.cost != 30 {
		t.Errorf("bought %+v, %v; want 10 at 3", got, ok)
	}
	if _, ok := buy(onePrice(0), 0, 1); ok {
		t.Error("a row without prices sells")
	}
}

func TestRowFor_isTheFirstWithEnoughInks(t *testing.T) {
	size := &SheetSize{Prices: []InkRow{{Inks: 1}, {Inks: 2}, {Inks: 4}}}
	for inks, want := range []int{0, 0, 1, 2, 2, -1} {
		if got := rowFor(size, inks); got != want {
			t.Errorf("%d inks: row %d, want %d", inks, got, want)
		}
	}
}

func TestPalette_countsInksOnce(t *testing.T) {
	items := []Item{
		{Placement: 4, Inks: []string{"white", "gold", "white"}},
		{Placement: 9, Inks: []string{"gold", "red"}},
		{Placement: 2, InkCount: 2},
		{Placement: 2, InkCount: 2}, // another size of the same design
		{Placement: 3, InkCount: 2},
	}
	p := newPalette(items)
	for _, c := range []struct {
		items         []int
		inks, designs int
	}{
		{[]int{0}, 2, 1},
		{[]int{0, 1}, 3, 2},
		{[]int{2}, 2, 1},
		{[]int{2, 3}, 2, 1},
		{[]int{2, 4}, 4, 2},
		{[]int{0, 1, 2, 3, 4}, 7, 4},
		{nil, 0, 0},
	} {
		if inks, designs := p.union(c.items); inks != c.inks || designs != c.designs {
			t.Errorf("items %v: %d inks, %d designs; want %d, %d", c.items, inks, designs, c.inks, c.designs)
		}
	}
}
