package gang

import (
	"cmp"
	"slices"
)

// Guess is about what a plan for need[k] copies of items[k] costs, found in a few microseconds from areas alone: for
// choosing which of very many combinations to look at. It is false where the card cannot print them.
func (s *Sheets) Guess(items, need []int) (Price, bool) {
	a := newAllotment(s, items, need)
	for _, k := range a.order {
		if !a.place(k) {
			return 0, false
		}
	}
	a.settle()
	var total Price
	for _, r := range a.runs {
		if len(r.members) > 0 {
			total += r.cost
		}
	}
	return total, total >= 0
}

// filled is how much of a sheet layouts are guessed to use, in hundredths.
const filled = 86

// allotment gives items to runs, by area.
type allotment struct {
	*Sheets
	need  []int
	items []int
	area  [][]float64 // by size, item: with the gap
	whole []float64   // by size: what layouts use of it
	order []int       // items, the largest total area first
	runs  []guessed
	room  []int
}

// guessed is a run of an allotment: places in its items, and what it costs.
type guessed struct {
	members []int
	cost    Price
}

func newAllotment(s *Sheets, items, need []int) *allotment {
	a := &allotment{Sheets: s, items: items, need: need}
	total := make([]float64, len(items))
	for n := range s.card.Sizes {
		sz := &s.card.Sizes[n]
		of := make([]float64, len(items))
		for k, i := range items {
			of[k] = float64(s.items[i].W+sz.Gap) * float64(s.items[i].H+sz.Gap)
			total[k] = max(total[k], of[k]*float64(need[k]))
		}
		a.area = append(a.area, of)
		a.whole = append(a.whole, float64(sz.W-2*sz.Edge+sz.Gap)*float64(sz.H-2*sz.Edge+sz.Gap))
	}
	for k := range items {
		if need[k] > 0 {
			a.order = append(a.order, k)
		}
	}
	slices.SortStableFunc(a.order, func(x, y int) int { return cmp.Compare(total[y], total[x]) })
	return a
}

// place puts an item where it adds least, a run of its own included.
func (a *allotment) place(k int) bool {
	best, at := a.cost([]int{k})
	if at < 0 {
		return false
	}
	at = len(a.runs)
	cost := best
	for r := range a.runs {
		a.room = append(append(a.room[:0], a.runs[r].members...), k)
		if c, ok := a.cost(a.room); ok >= 0 && c-a.runs[r].cost < best {
			best, at, cost = c-a.runs[r].cost, r, c
		}
	}
	if at == len(a.runs) {
		a.runs = append(a.runs, guessed{})
	}
	a.runs[at].members = append(a.runs[at].members, k)
	a.runs[at].cost = cost
	return true
}

// settle moves each item once more to where it costs least.
func (a *allotment) settle() {
	for _, k := range a.order {
		from := slices.IndexFunc(a.runs, func(r guessed) bool { return slices.Contains(r.members, k) })
		rest := slices.DeleteFunc(slices.Clone(a.runs[from].members), func(m int) bool { return m == k })
		var left Price
		if len(rest) > 0 {
			c, ok := a.cost(rest)
			if ok < 0 {
				continue
			}
			left = c
		}
		saves := a.runs[from].cost - left
		for r := range a.runs {
			if r == from || len(a.runs[r].members) == 0 {
				continue
			}
			a.room = append(append(a.room[:0], a.runs[r].members...), k)
			if c, ok := a.cost(a.room); ok >= 0 && c-a.runs[r].cost < saves {
				a.runs[r] = guessed{slices.Clone(a.room), c}
				a.runs[from] = guessed{rest, left}
				break
			}
		}
	}
}

// cost is the least a run of some places costs on a size, by area; the size is -1 where there is none.
func (a *allotment) cost(members []int) (best Price, size int) {
	size = -1
	items := make([]int, len(members))
	for j, k := range members {
		items[j] = a.items[k]
	}
	inks, designs := a.inks.union(items)
	setup, ok := a.setup(inks, designs)
	if !ok || a.card.MaxInks > 0 && inks > a.card.MaxInks {
		return 0, -1
	}
	for n := range a.card.Sizes {
		row := rowFor(&a.card.Sizes[n], inks)
		if row < 0 {
			continue
		}
		x, ok := a.sheetsFor(members, n)
		if !ok {
			continue
		}
		if b, ok := buy(&a.card.Sizes[n], row, x); ok && (size < 0 || b.cost+setup < best) && b.cost < most-setup {
			best, size = b.cost+setup, n
		}
	}
	return best, size
}

// sheetsFor is how many sheets of a size some places take, by area.
func (a *allotment) sheetsFor(members []int, size int) (int, bool) {
	all, one, top := 0.0, 0.0, 0
	for _, k := range members {
		one += a.area[size][k]
		all += a.area[size][k] * float64(a.need[k])
		top = max(top, a.need[k])
	}
	whole := a.whole[size] * filled / 100
	if one > whole {
		return top, len(members) == 1 && one <= a.whole[size]
	}
	for x := max(1, int(all/whole)); ; x += 1 + x/16 {
		used := 0.0
		for _, k := range members {
			used += a.area[size][k] * float64(parts(a.need[k], x))
		}
		if used <= whole || x >= top {
			return min(x, top), true
		}
	}
}

// Guess is about what a plan on the roll costs, setups not counted.
func (r *Roll) Guess(items, need []int) (Price, bool) {
	var total float64
	for k, i := range items {
		if need[k] > 0 && !r.Serves(i) {
			return 0, false
		}
		b := r.stock.blank(r.items[i])
		total += float64(b.w) * float64(b.h) * float64(need[k])
	}
	high := total / float64(r.stock.width) * 100 / rolled
	return r.stock.about(high, 0), true
}

// rolled is how much of a roll layouts are guessed to use, in hundredths.
const rolled = 93

// about is what lengths, from the j-th on, that add up to at least high cost: as many of each as are filled, then the
// shorter ones, or one more.
func (st stock) about(high float64, j int) Price {
	if high <= 0 {
		return 0
	}
	n := high / float64(st.lengths[j].high)
	if n > 1<<30 {
		return most
	}
	full := Price(n) * st.lengths[j].each
	rest := high - float64(Price(n))*float64(st.lengths[j].high)
	if rest <= 0 {
		return full
	}
	if j+1 == len(st.lengths) {
		return full + st.lengths[j].each
	}
	return full + min(st.lengths[j].each, st.about(rest, j+1))
}
