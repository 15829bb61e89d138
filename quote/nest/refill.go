package nest

import "slices"

// refill empties the emptiest sheet little by little: its pieces and those of one
// or two other sheets are laid anew, so that the others take more of the area
// and less is left for it. A few sheets are searched far better than all.
func (p *pile) refill(e Effort, d *dice) {
	spent := 0
	for spent < e.Steps && len(p.best) > p.bound && len(p.best) > 1 && !(e.Stop != nil && e.Stop()) {
		low := p.emptiest()
		chosen := p.others(low, 1+d.below(2), d)
		u := &hunt{trial: newTrial(p.some(append(chosen, low))), h: p.h, count: len(chosen), dice: *d, stop: e.Stop}
		u.rule = rule(d.below(int(rules)))
		seq := u.t.sequence(u.t.orders()[d.below(5)])
		u.from(seq, min(refillSteps, e.Steps-spent)*workPerStep)
		*d = u.dice
		p.accept(u, seq, chosen, low)
		spent += u.steps() + 1
	}
}

// refillSteps is the effort for one choice of sheets.
const refillSteps = 10_000

// accept puts the layout of a sequence in the place of the chosen sheets where
// it leaves less for the emptiest, and that fits.
func (p *pile) accept(u *hunt, seq []int32, chosen []int, low int) {
	u.run(seq, u.h, u.count, unlimited)
	left := make([]int, len(p.kinds))
	for k := range left {
		left[k] = int(u.first[k+1] - u.next[k])
	}
	rest := p.with(left)
	if !rest.area().less(p.some([]int{low}).area()) {
		return
	}
	spots, v := rest.fit(Effort{})
	if v != Fits {
		return
	}
	sheets := append(u.sheets(), spots)
	for i, at := range append(chosen, low) {
		p.best[at] = nil
		if i < len(sheets) {
			p.best[at] = sheets[i]
		}
	}
	p.best = slices.DeleteFunc(p.best, func(s []spot) bool { return len(s) == 0 })
}

// emptiest is the sheet with the least area on it.
func (p *pile) emptiest() int {
	low, least := 0, p.some([]int{0}).area()
	for i := range p.best {
		if a := p.some([]int{i}).area(); a.less(least) {
			low, least = i, a
		}
	}
	return low
}

// others draws n different sheets besides one.
func (p *pile) others(not, n int, d *dice) []int {
	var out []int
	for len(out) < min(n, len(p.best)-1) {
		if i := d.below(len(p.best)); i != not && !slices.Contains(out, i) {
			out = append(out, i)
		}
	}
	return out
}

// some is the task of the pieces on the given sheets.
func (p *pile) some(sheets []int) *task {
	counts := make([]int, len(p.kinds))
	for _, i := range sheets {
		for _, s := range p.best[i] {
			counts[s.kind]++
		}
	}
	return p.with(counts)
}

// with is the task with other counts.
func (t *task) with(counts []int) *task {
	o := *t
	o.kinds, o.n = slices.Clone(t.kinds), 0
	for i, n := range counts {
		o.kinds[i].count = n
		o.n += n
	}
	return &o
}
