package nest

import "slices"

// Bins lays all pieces on as few sheets as it finds.
func Bins(s Sheet, ps []Piece, e Effort) (BinsResult, error) {
	if err := check(s, ps, false); err != nil {
		return BinsResult{}, err
	}
	t := newTask(s, ps)
	if t.n == 0 {
		return BinsResult{}, nil
	}
	p := pile{task: t, bound: t.sheetsBound(t.w, t.h, true)}
	p.build()
	if e.Steps > 0 && !t.vast() {
		p.improve(e)
	}
	return BinsResult{Placed: t.placed(p.best...), Sheets: len(p.best), Bound: p.bound}, nil
}

// Lay is Bins without a search and without a bound, which takes most of its time.
func Lay(s Sheet, ps []Piece) ([]Placed, int, error) {
	if err := check(s, ps, false); err != nil {
		return nil, 0, err
	}
	t := newTask(s, ps)
	if t.n == 0 {
		return nil, 0, nil
	}
	p := pile{task: t, bound: max(1, t.area().overArea(product(t.w, t.h)))}
	p.build()
	return t.placed(p.best...), len(p.best), nil
}

// pile is a number of sheets being filled.
type pile struct {
	*task
	best  [][]spot
	bound int
}

func (p *pile) keep(sheets [][]spot) {
	if p.best == nil || len(sheets) < len(p.best) {
		p.best = sheets
	}
}

// build tries the constructive methods.
func (p *pile) build() {
	p.keep(p.stack(p.shelves(p.flat())))
	if p.vast() {
		return
	}
	u := newTrial(p.task)
	for _, u.rule = range []rule{thrifty, loose} {
		for _, o := range p.orders() {
			if len(p.best) > p.bound {
				u.run(p.sequence(o), p.h, p.n, unlimited)
				p.keep(u.sheets())
			}
		}
	}
}

// sheets is the layout sheet by sheet.
func (r *trial) sheets() [][]spot {
	out := make([][]spot, 0, len(r.ends))
	from := 0
	for _, end := range r.ends {
		out = append(out, slices.Clone(r.spots[from:end]))
		from = end
	}
	return out
}

// improve takes turns: a search for a layout of all pieces on one sheet fewer,
// and refilling a few sheets, until the bound is met or the effort is spent.
func (p *pile) improve(e Effort) {
	u := &hunt{trial: newTrial(p.task), h: p.h, dice: 1, stop: e.Stop}
	orders := p.orders()
	refilled, d := 0, dice(2)
	for each, turn := max(e.Steps/64, 64), 0; len(p.best) > p.bound; each, turn = each+each/4, turn+1 {
		left := e.Steps - u.steps() - refilled
		if left <= 0 || u.stopped() {
			return
		}
		u.count, u.rule = len(p.best)-1, rule(turn)%rules
		if u.from(p.sequence(orders[turn%len(orders)]), min(each, left)*workPerStep) {
			p.keep(u.sheets())
			continue
		}
		p.refill(Effort{Steps: min(each, left), Stop: e.Stop}, &d)
		refilled += min(each, left)
	}
}
