package nest

import "slices"

// Strip lays all pieces on the shortest strip it finds; the sheet's H counts as
// 0. Without steps the length is below twice the area over the width plus the
// longest piece.
func Strip(s Sheet, ps []Piece, e Effort) (StripResult, error) {
	s.H = 0
	if err := check(s, ps, true); err != nil {
		return StripResult{}, err
	}
	t := newTask(s, ps)
	if t.n == 0 {
		return StripResult{}, nil
	}
	r := roll{task: t, bound: t.stripBound()}
	r.build()
	if e.Steps > 0 {
		r.improve(e)
	}
	return StripResult{Placed: t.placed(r.best), Length: t.outer(r.length), Bound: t.outer(r.bound)}, nil
}

// StripBound is a length that no layout on an open strip goes below.
func StripBound(s Sheet, ps []Piece) (int64, error) {
	s.H = 0
	if err := check(s, ps, true); err != nil {
		return 0, err
	}
	t := newTask(s, ps)
	if t.n == 0 {
		return 0, nil
	}
	return t.outer(t.stripBound()), nil
}

// roll is a strip being packed.
type roll struct {
	*task
	best          []spot
	length, bound int64
}

// keep takes a layout if it is the shortest so far.
func (r *roll) keep(spots []spot) {
	if l := r.task.length(spots); r.best == nil || l < r.length {
		r.best, r.length = slices.Clone(spots), l
	}
}

// build tries the constructive methods.
func (r *roll) build() {
	r.keep(r.stack(r.shelves(r.flat()))[0])
	if r.vast() {
		return
	}
	u := newTrial(r.task)
	for _, u.rule = range []rule{thrifty, loose} {
		for _, o := range r.orders() {
			if r.length > r.bound {
				u.run(r.sequence(o), r.h, 1, unlimited)
				r.keep(u.spots)
			}
		}
	}
}

// improve spends the effort: on a search, and for a few pieces on a proof.
func (r *roll) improve(e Effort) {
	if r.vast() {
		return
	}
	if r.n > exactPieces {
		r.search(e)
		return
	}
	r.search(Effort{Steps: min(e.Steps, fewSteps), Stop: e.Stop})
	for r.length > r.bound && r.prove(e) {
	}
}

// fewSteps is the effort of the search before a proof.
const fewSteps = 20_000

// prove decides whether a strip shorter by one holds all pieces. It says false
// when the effort ends first.
func (r *roll) prove(e Effort) bool {
	s := newStair(r.task, r.length-1)
	s.limit, s.stop = e.Steps, e.Stop
	spots, v := s.solve()
	switch v {
	case Fits:
		r.keep(spots)
	case CannotFit:
		r.bound = r.length
	case Unknown:
	}
	return v != Unknown
}

// search goes down from the best length in steps of a quarter of the way to what
// is held impossible, which where it fails moves up, in rounds of growing length
// (after Wei, Hu, Leung & Zhang 2017). A sequence that did well goes on to the
// next, shorter, length.
func (r *roll) search(e Effort) {
	u := &hunt{trial: newTrial(r.task), count: 1, dice: 1, stop: e.Stop}
	orders := r.orders()
	var seq []int32
	dived := 0
	for each, turn := max(e.Steps/512, 64), 0; r.length > r.bound; each += each / 2 {
		dived += r.dive(orders[turn%len(orders)], min(each/2, e.Steps-u.steps()-dived), e.Stop)
		for low := r.bound - 1; low+1 < r.length; turn++ {
			left := e.Steps - u.steps() - dived
			if left <= 0 || u.stopped() {
				return
			}
			u.h = r.length - max(1, (r.length-low)/4)
			if seq == nil {
				seq = r.sequence(orders[turn%len(orders)])
			}
			u.rule = rule(turn) % rules
			if u.from(seq, min(each, left)*workPerStep) {
				r.keep(u.spots)
				continue
			}
			seq = nil
			low = u.h
		}
	}
}

// dive looks for a layout that is as short as the bound, which a search over sequences seldom finds where hardly any
// waste is allowed, and raises the bound where there is none. It returns the steps taken.
func (r *roll) dive(order []int, steps int, stop func() bool) int {
	if r.n > divePieces || steps <= 0 {
		return 0
	}
	v := newDive(r.task, r.bound)
	v.stop = stop
	spots, done := v.run(order, steps/diveWorth)
	switch {
	case spots != nil:
		r.keep(spots)
	case done && v.spare == 0:
		r.bound++
	}
	return v.steps * diveWorth
}

// diveWorth is how many steps of a search over sequences take the time of one of a dive.
const diveWorth = 3

// vast says that there are too many pieces and gaps for more than shelves.
func (t *task) vast() bool {
	small := t.w
	for _, k := range t.kinds {
		small = min(small, k.w, k.h)
	}
	gaps := min(int64(t.n), t.w/small)
	return int64(t.n)*(2*int64(len(t.kinds))+gaps) > 40_000_000
}
