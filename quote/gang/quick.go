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
	h := r.hunt(g)
	bs := newCover(r.stock, h.measures(), h.blanks, h.need).baskets()
	if _, cost, ok := bs.next(); ok {
		return cost, true
	}
	return bs.least(), true
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
