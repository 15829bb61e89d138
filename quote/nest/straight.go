package nest

import "slices"

// Straight lays all pieces on one sheet in straight rows from border to border,
// or in straight columns, every design one way round: such a sheet comes apart
// with a guillotine. Rows of a single height are tried before rows that mix. It
// says false when it finds no such layout; there may be one all the same.
func Straight(s Sheet, ps []Piece) ([]Placed, bool) {
	if check(s, ps, true) != nil {
		return nil, false
	}
	t := newTask(s, ps)
	if t.n == 0 {
		return nil, true
	}
	ways := t.waysRound()
	for _, mixed := range []bool{false, true} {
		for _, columns := range []bool{false, true} {
			u := t
			if columns {
				if s.H == 0 {
					continue
				}
				u = t.across()
			}
			if spots := u.straight(ways, mixed); spots != nil {
				if columns {
					mirror(spots)
				}
				return t.placed(spots), true
			}
		}
	}
	return nil, false
}

// straight lays rows for the way round of every kind that needs the least
// height, if that is no more than the region has.
func (t *task) straight(ways [][]bool, mixed bool) []spot {
	var best []spot
	least := t.h
	for _, turned := range ways {
		if !t.lie(turned) {
			continue
		}
		rows := t.shelves(turned)
		if !mixed && !t.pure(rows) {
			if len(t.kinds) > manyHeights {
				continue
			}
			rows = t.pureRows(turned)
		}
		var height int64
		for _, r := range rows {
			height += r.h
		}
		if height > least || best != nil && height == least {
			continue
		}
		least, best = height, t.stack(rows)[0]
	}
	return best
}

// lie says whether every kind fits the region that way round.
func (t *task) lie(turned []bool) bool {
	for i, k := range t.kinds {
		if w, h := k.size(turned[i]); w > t.w || h > t.h {
			return false
		}
	}
	return true
}

// pure says that in no row there are pieces of two heights.
func (t *task) pure(rows []shelf) bool {
	for _, r := range rows {
		for _, p := range r.spots {
			if _, h := t.kinds[p.kind].size(p.turned); h != r.h {
				return false
			}
		}
	}
	return true
}

// pureRows gives pieces of every height rows of their own.
func (t *task) pureRows(turned []bool) []shelf {
	heights := make([]int64, 0, len(t.kinds))
	for i, k := range t.kinds {
		_, h := k.size(turned[i])
		heights = append(heights, h)
	}
	slices.Sort(heights)
	var out []shelf
	for _, h := range slices.Compact(heights) {
		part := *t
		part.kinds = slices.Clone(t.kinds)
		for i := range part.kinds {
			if _, own := part.kinds[i].size(turned[i]); own != h {
				part.n -= part.kinds[i].count
				part.kinds[i].count = 0
			}
		}
		out = append(out, part.shelves(turned)...)
	}
	return out
}

// manyHeights is how many kinds rows of their own are tried for.
const manyHeights = 100

// manyWays is for how many kinds that turn every combination of ways is tried.
const manyWays = 6

// waysRound lists the combinations of ways round: all of them for a few kinds
// that turn, else all as they are, all flat and all upright.
func (t *task) waysRound() [][]bool {
	var turns []int
	for i, k := range t.kinds {
		if k.turn {
			turns = append(turns, i)
		}
	}
	if len(turns) > manyWays || t.n > 10_000 {
		upright := t.flat()
		for i, k := range t.kinds {
			upright[i] = k.turn && !upright[i]
		}
		return [][]bool{make([]bool, len(t.kinds)), t.flat(), upright}
	}
	out := make([][]bool, 0, 1<<len(turns))
	for bits := range 1 << len(turns) {
		turned := make([]bool, len(t.kinds))
		for j, i := range turns {
			turned[i] = bits>>j&1 == 1
		}
		out = append(out, turned)
	}
	return out
}

// across is the task with x and y changed over.
func (t *task) across() *task {
	o := *t
	o.w, o.h = t.h, t.w
	o.kinds = slices.Clone(t.kinds)
	for i, k := range o.kinds {
		o.kinds[i].w, o.kinds[i].h = k.h, k.w
	}
	return &o
}

// mirror changes x and y over.
func mirror(spots []spot) {
	for i, s := range spots {
		spots[i].x, spots[i].y = s.y, s.x
	}
}
