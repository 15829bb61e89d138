package nest

// exactPieces is how many pieces on a sheet Fit decides for certain, whatever
// the effort.
const exactPieces = 10

// Fit says whether all pieces go on one sheet, and how. Up to ten pieces the
// answer is proven either way, unless Stop ends it. Input that Bins would refuse
// cannot fit; a sheet open at its far end (H 0) takes whatever its width takes.
func Fit(s Sheet, ps []Piece, e Effort) ([]Placed, Verdict) {
	if check(s, ps, true) != nil {
		return nil, CannotFit
	}
	t := newTask(s, ps)
	spots, v := t.fit(e)
	if v != Fits {
		return nil, v
	}
	return t.placed(spots), Fits
}

// Quick is Fit by the constructive methods and a short search alone, however few pieces there are. What it says fits,
// Fit finds as well.
func Quick(s Sheet, ps []Piece) ([]Placed, Verdict) {
	if check(s, ps, true) != nil {
		return nil, CannotFit
	}
	t := newTask(s, ps)
	u, spots, v := t.quick(nil)
	if v == Unknown && u != nil && t.n <= exactPieces {
		u.rule = snug
		if u.from(t.sequence(t.orders()[0]), longWork/2) {
			spots, v = u.spots, Fits
		}
	}
	if v != Fits {
		return nil, v
	}
	return t.placed(spots), Fits
}

func (t *task) fit(e Effort) ([]spot, Verdict) {
	u, spots, v := t.quick(e.Stop)
	switch {
	case v != Unknown || u == nil:
		return spots, v
	case t.n <= exactPieces:
		return u.decide(t.orders()[0])
	case e.Steps > 0:
		return u.seek(t.orders(), e.Steps)
	}
	return nil, Unknown
}

// quick is the beginning of fit, with what can look further, if anything can.
func (t *task) quick(stop func() bool) (*hunt, []spot, Verdict) {
	switch {
	case t.n == 0:
		return nil, nil, Fits
	case product(t.w, t.h).less(t.area()):
		return nil, nil, CannotFit
	case t.vast():
		spots, v := t.fitVast()
		return nil, spots, v
	}
	u := &hunt{trial: newTrial(t), h: t.h, count: 1, dice: 1, stop: stop}
	orders := t.orders()
	if u.rule = loose; u.run(t.sequence(orders[0]), u.h, 1, unlimited) == t.n {
		return u, u.spots, Fits
	}
	if t.sheetsBound(t.w, t.h, false) > 1 {
		return nil, nil, CannotFit
	}
	if u.build(orders) {
		return u, u.spots, Fits
	}
	return u, nil, Unknown
}

// fitVast is for very many pieces: rows, or nothing.
func (t *task) fitVast() ([]spot, Verdict) {
	if sheets := t.stack(t.shelves(t.flat())); len(sheets) == 1 {
		return sheets[0], Fits
	}
	if t.sheetsBound(t.w, t.h, false) > 1 {
		return nil, CannotFit
	}
	return nil, Unknown
}

// shortWork is the work of the short search that ends the constructive methods,
// and longWork that of the one before pieces are decided exactly.
const (
	shortWork = 6_000
	longWork  = 40_000
)

// build tries the constructive methods, which include a short search.
func (u *hunt) build(orders [][]int) bool {
	for _, u.rule = range []rule{loose, thrifty} {
		for _, o := range orders {
			if u.run(u.t.sequence(o), u.h, u.count, unlimited) == u.t.n {
				return true
			}
		}
	}
	u.rule = level
	return u.from(u.t.sequence(orders[0]), shortWork)
}

// decide is exact; a search first finds most of what fits.
func (u *hunt) decide(order []int) ([]spot, Verdict) {
	if u.t.sheetsBound(u.t.w, u.h, true) > 1 {
		return nil, CannotFit
	}
	u.rule = snug
	if u.from(u.t.sequence(order), longWork) {
		return u.spots, Fits
	}
	s := newStair(u.t, u.h)
	s.stop = u.stop
	return s.solve()
}

// divePieces is how many pieces a dive is tried for.
const divePieces = 200

// seek divides the effort between searches over sequences and dives, in rounds
// of twice the length each.
func (u *hunt) seek(orders [][]int, steps int) ([]spot, Verdict) {
	v := newDive(u.t, u.h)
	v.stop = u.stop
	turn := 0
	for each := max(steps/320, 64); ; each *= 2 {
		for _, o := range orders {
			if u.steps()+v.steps >= steps || u.stopped() {
				return nil, Unknown
			}
			u.rule = rule(turn) % rules
			turn++
			if u.from(u.t.sequence(o), each*workPerStep) {
				return u.spots, Fits
			}
			if u.t.n > divePieces {
				continue
			}
			spots, done := v.run(o, each)
			switch {
			case spots != nil:
				return spots, Fits
			case done && v.spare == 0:
				return nil, CannotFit
			}
		}
	}
}
