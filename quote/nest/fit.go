package nest

// exactPieces is how many pieces on a sheet Fit decides for certain, whatever
// the effort.
const exactPieces = 10

// Fit says whether all pieces go on one sheet, and how. Up to ten pieces the
// answer is proven either way. Input that Bins would refuse cannot fit; a sheet
// open at its far end (H 0) takes whatever its width takes.
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

func (t *task) fit(e Effort) ([]spot, Verdict) {
	if t.excluded() {
		return nil, CannotFit
	}
	if spots := t.build(); spots != nil {
		return spots, Fits
	}
	if t.n <= exactPieces {
		return t.decide()
	}
	if e.Steps > 0 {
		return t.seek(e)
	}
	return nil, Unknown
}

// excluded says that a bound forbids the pieces on one sheet.
func (t *task) excluded() bool {
	if product(t.w, t.h).less(t.area()) {
		return true
	}
	return t.sheetsBound(t.w, t.h, false) > 1
}

// build tries the constructive methods.
func (t *task) build() []spot {
	r := newTrial(t)
	for r.rule = 3; r.rule < rules; r.rule += 3 {
		for _, o := range t.orders() {
			if r.run(t.sequence(o), t.h, 1, unlimited) == t.n {
				return r.spots
			}
		}
	}
	return nil
}

// decide is exact; a short search first finds most of what fits.
func (t *task) decide() ([]spot, Verdict) {
	u := &hunt{trial: newTrial(t), h: t.h, count: 1, dice: 1}
	if u.from(t.sequence(t.orders()[0]), 10_000) {
		return u.spots, Fits
	}
	if spots := newStair(t).solve(); spots != nil {
		return spots, Fits
	}
	return nil, CannotFit
}

// seek divides the effort between searches over sequences and dives, each
// started from every order, in rounds of growing length.
func (t *task) seek(e Effort) ([]spot, Verdict) {
	u := &hunt{trial: newTrial(t), h: t.h, count: 1, dice: 1, stop: e.Stop}
	v := newDive(t, t.h)
	v.stop = e.Stop
	orders, turn := t.orders(), 0
	for budget := max(e.Steps/320, 64); u.steps()+v.steps < e.Steps && !u.stopped(); budget *= 2 {
		for _, o := range orders {
			u.rule = rule(turn) % rules
			turn++
			if u.from(t.sequence(o), budget*workPerStep) {
				return u.spots, Fits
			}
			spots, done := v.run(o, budget)
			if spots != nil {
				return spots, Fits
			}
			if done && v.spare == 0 {
				return nil, CannotFit
			}
		}
	}
	return nil, Unknown
}
