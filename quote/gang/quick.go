package gang

// Floor is less than or equal to Cost and found fast, from areas and lengths alone: a caller that weighs many
// combinations asks it before it asks Cost. It is false where there is no plan.
func (r *Roll) Floor(items, need []int) (Price, bool) {
	g, err := wanted(r.items, items, need)
	if err != nil {
		return 0, false
	}
	if len(g.items) == 0 {
		return 0, true
	}
	for _, i := range g.items {
		if !r.Serves(i) {
			return 0, false
		}
	}
	return newCover(r.stock, r.measures(g.items), g.need).cheapest(), true
}

// Floor is less than or equal to Cost and found fast, like Roll's: the cost of few items, and for more a bound by areas.
// It is false where the card cannot print them.
func (s *Sheets) Floor(items, need []int) (Price, bool) {
	g, err := wanted(s.items, items, need)
	if err != nil {
		return 0, false
	}
	if len(g.items) <= Exact {
		return s.Cost(items, need)
	}
	var apart Price // what a plan costs at most
	for k, i := range g.items {
		one, ok := s.Alone(i, g.need[k])
		if apart, ok = plusIf(ok, apart, one); !ok {
			return 0, false
		}
	}
	return s.boundByArea(g, apart), true
}

func plusIf(ok bool, a, b Price) (Price, bool) {
	sum, fine := plus(a, b)
	return sum, ok && fine
}

// Least is less than or equal to the cost of every plan that holds need copies of an item, whatever else it holds.
func (s *Sheets) Least(item, need int) Price {
	if item < 0 || item >= len(s.items) || need <= 0 {
		return 0
	}
	if low := s.dearest(group{[]int{item}, []int{need}}); low < most {
		return low
	}
	return 0
}

// Least is like that of Sheets.
func (r *Roll) Least(item, need int) Price {
	low, _ := r.Floor([]int{item}, []int{need})
	return low
}

// Runs are the runs of Plan without their layouts.
func (s *Sheets) Runs(items, need []int) ([]Run, bool) {
	sp := s.split(items, need)
	runs := make([]Run, len(sp.runs))
	for k, r := range sp.runs {
		runs[k] = Run{
			Size: r.size, Inks: r.inks, Row: r.row, Sheets: r.buying.sheets, Each: r.buying.each, Setup: r.setup,
			Items: sp.groups[k].items,
		}
	}
	return runs, sp.ok
}
