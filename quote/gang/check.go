package gang

import (
	"errors"
	"fmt"

	"pressworth/quote/nest"
)

// CheckSheets says what is wrong with a plan for need[k] copies of items[idx[k]] on a sheet card: a layout that does
// not lie on its sheet, an item missing, printed in two runs or too seldom, inks over the limit, a minimum or first
// break not kept, a price, setup or sum that is not the card's. It shares no code with the search and takes nothing of
// the plan for granted, which may come from a file.
func CheckSheets(card SheetCard, items []Item, idx, need []int, plan Plan) error {
	d, err := newDemand(items, idx, need)
	if err != nil {
		return err
	}
	bill := bill{}
	for i, run := range plan.Runs {
		if err := d.onSheets(card, run, &bill); err != nil {
			return fmt.Errorf("run %d: %w", i, err)
		}
	}
	return errors.Join(d.met(), bill.is(plan.Cost))
}

// CheckRoll is CheckSheets for a plan on a roll, where an item may be in several runs and setups are no part.
func CheckRoll(card RollCard, items []Item, idx, need []int, plan Plan) error {
	d, err := newDemand(items, idx, need)
	if err != nil {
		return err
	}
	d.often = true
	bill := bill{}
	for i, run := range plan.Runs {
		if err := d.onLength(card, run, &bill); err != nil {
			return fmt.Errorf("run %d: %w", i, err)
		}
	}
	return errors.Join(d.met(), bill.is(plan.Cost))
}

// demand is what a plan has to print, and what it has printed so far.
type demand struct {
	items []Item
	need  map[int]int // copies still wanted; at most 0 once there are enough
	runs  map[int]int
	often bool // an item may be in several runs
}

func newDemand(items []Item, idx, need []int) (*demand, error) {
	if len(idx) != len(need) {
		return nil, fmt.Errorf("%d items and %d needs", len(idx), len(need))
	}
	d := &demand{items: items, need: map[int]int{}, runs: map[int]int{}}
	for k, i := range idx {
		if i < 0 || i >= len(items) {
			return nil, fmt.Errorf("no item %d", i)
		}
		if _, twice := d.need[i]; twice {
			return nil, fmt.Errorf("item %d is asked for twice", i)
		}
		if need[k] > 0 {
			d.need[i] = need[k]
		}
	}
	return d, nil
}

// met says whether every item has been printed, and on sheets in one run.
func (d *demand) met() error {
	var all []error
	for i := range d.items {
		if n := d.need[i]; n > 0 {
			all = append(all, fmt.Errorf("item %d: %d copies are missing", i, n))
		}
		if d.runs[i] > 1 && !d.often {
			all = append(all, fmt.Errorf("item %d is in %d runs", i, d.runs[i]))
		}
	}
	return errors.Join(all...)
}

func (d *demand) onSheets(card SheetCard, run Run, b *bill) error {
	if run.Size < 0 || run.Size >= len(card.Sizes) {
		return fmt.Errorf("no sheet size %d", run.Size)
	}
	size := card.Sizes[run.Size]
	sheet := nest.Sheet{W: size.W, H: size.H, Edge: size.Edge, Gap: size.Gap}
	if err := d.layout(sheet, run); err != nil {
		return err
	}
	inks, designs := d.inks(run)
	if inks != run.Inks {
		return fmt.Errorf("its designs have %d inks, not %d", inks, run.Inks)
	}
	if card.MaxInks > 0 && inks > card.MaxInks {
		return fmt.Errorf("%d inks, the card takes %d", inks, card.MaxInks)
	}
	if err := priced(size, run); err != nil {
		return err
	}
	setup, ok := charge(card, designs, inks)
	if !ok || run.Setup != setup {
		return fmt.Errorf("setup %d, the card's is %d", run.Setup, setup)
	}
	return b.add(run)
}

// priced says whether the row, the number of sheets and their price are the size's.
func priced(size SheetSize, run Run) error {
	for r, row := range size.Prices {
		if row.Inks < run.Inks {
			continue
		}
		if run.Row != r {
			return fmt.Errorf("ink row %d, %d inks are priced by row %d", run.Row, run.Inks, r)
		}
		if run.Sheets < size.Minimum {
			return fmt.Errorf("%d sheets, the minimum is %d", run.Sheets, size.Minimum)
		}
		at := -1
		for k, br := range row.Each {
			if br.From <= run.Sheets {
				at = k
			}
		}
		if at < 0 {
			return fmt.Errorf("%d sheets are below the first break", run.Sheets)
		}
		if row.Each[at].Each != run.Each {
			return fmt.Errorf("price %d, the card's for %d sheets is %d", run.Each, run.Sheets, row.Each[at].Each)
		}
		return nil
	}
	return fmt.Errorf("%d inks have no price on this size", run.Inks)
}

// charge is the card's setup for one run.
func charge(card SheetCard, designs, inks int) (Price, bool) {
	a, okA := product64(int64(designs), card.SetupPerDesign)
	b, okB := product64(int64(inks), card.SetupPerInk)
	return a + b, okA && okB && a+b >= 0
}

func (d *demand) onLength(card RollCard, run Run, b *bill) error {
	if run.Size < 0 || run.Size >= len(card.Lengths) {
		return fmt.Errorf("no length %d", run.Size)
	}
	l := card.Lengths[run.Size]
	sheet := nest.Sheet{W: card.W, H: l.Length, Edge: card.Edge, Gap: card.Gap}
	if err := d.layout(sheet, run); err != nil {
		return err
	}
	if run.Each != l.Each {
		return fmt.Errorf("price %d, the length's is %d", run.Each, l.Each)
	}
	if run.Setup != 0 {
		return fmt.Errorf("setup %d: a roll's runs have none", run.Setup)
	}
	return b.add(run)
}

// inks counts the different inks and placements of a run.
func (d *demand) inks(run Run) (inks, designs int) {
	seen := map[string]bool{}
	places := map[int]bool{}
	for _, i := range run.Items {
		it := d.items[i]
		if len(it.Inks) == 0 && !places[it.Placement] {
			inks += it.InkCount
		}
		places[it.Placement] = true
		for _, name := range it.Inks {
			if !seen[name] {
				seen[name] = true
				inks++
			}
		}
	}
	return inks, len(places)
}

// bill adds up runs.
type bill struct{ sum Price }

func (b *bill) add(run Run) error {
	cost, ok := product64(int64(run.Sheets), run.Each)
	if ok {
		cost, ok = cost+run.Setup, cost+run.Setup >= cost
	}
	if !ok || b.sum+cost < b.sum {
		return fmt.Errorf("cost is out of range")
	}
	b.sum += cost
	return nil
}

func (b *bill) is(cost Price) error {
	if b.sum != cost {
		return fmt.Errorf("cost %d, the runs add up to %d", cost, b.sum)
	}
	return nil
}

// product64 is a × b where both are from 0 on and it has room.
func product64(a, b int64) (int64, bool) {
	p := product(a, b)
	return int64(p.lo), a >= 0 && b >= 0 && p.hi == 0 && int64(p.lo) >= 0
}
