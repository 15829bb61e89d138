package nest

// corner is an inner corner of an envelope: x rises and y falls along it.
type corner struct{ x, y int64 }

// step is the envelope once w x h lies in corner i of the old one.
func step(out, old []corner, i int, w, h int64) []corner {
	right, top := old[i].x+w, old[i].y+h
	j := 0
	for ; old[j].y > top; j++ {
		out = append(out, old[j])
	}
	// corner j is the first at or below the top: its x begins the new step
	out = append(out, corner{old[j].x, top})
	k := i
	for k+1 < len(old) && old[k+1].x <= right {
		k++
	}
	out = append(out, corner{right, old[k].y})
	return append(out, old[k+1:]...)
}

// swallowed is the area that a new piece at corner i puts below the envelope.
func swallowed(c []corner, i int, w, h int64) float64 {
	right, top := c[i].x+w, c[i].y+h
	var sum float64
	for j := range c {
		if c[j].y >= top || c[j].x >= right {
			continue
		}
		end := right
		if j+1 < len(c) {
			end = min(end, c[j+1].x)
		}
		sum += float64(end-c[j].x) * float64(top-c[j].y)
	}
	return sum
}

// hopeless says that more is lost than there is to lose, or that a piece has no
// place left.
func (s *stair) hopeless(n int) bool {
	c := s.level[n].corners
	return s.lost+s.beyond(c) > s.spare || s.shutOut(c)
}

// beyond is an area beyond the envelope that is lost as well. Rows are used up
// to a sum of widths only and columns up to a sum of heights; columns left of a
// corner and rows right of it have no area in common, so that both count.
func (s *stair) beyond(c []corner) float64 {
	x, y := s.sums.of(alongX, s.state, s.left), s.sums.of(alongY, s.state, s.left)
	var rows, columns float64
	for i := range c {
		rows += s.row(c, i, x)
	}
	most := rows
	for i := range c {
		end := s.t.w
		if i+1 < len(c) {
			end = c[i+1].x
		}
		room := s.h - c[i].y
		columns += float64(end-c[i].x) * float64(room-y.below(room))
		rows -= s.row(c, i, x)
		most = max(most, rows+columns)
	}
	return most
}

// row is what is lost of the rows from floor i up to the one before.
func (s *stair) row(c []corner, i int, x *reach) float64 {
	top := s.h
	if i > 0 {
		top = c[i-1].y
	}
	room := s.t.w - c[i].x
	return float64(top-c[i].y) * float64(room-x.below(room))
}

// shutOut says that a piece that is left has no place any more.
func (s *stair) shutOut(c []corner) bool {
	for k, n := range s.left {
		if n > 0 && !s.opens(c, k, false) && !(s.t.kinds[k].turn && s.opens(c, k, true)) {
			return true
		}
	}
	return false
}

// opens says that some corner is near enough for a piece.
func (s *stair) opens(c []corner, k int, turned bool) bool {
	x, y := s.farthest(k, turned)
	for i := range c {
		if c[i].x <= x && c[i].y <= y {
			return true
		}
	}
	return false
}

// farthest is how far out a piece may lie. By reflection the middle of one
// piece, the largest, may be taken to lie in the near left quarter.
func (s *stair) farthest(k int, turned bool) (x, y int64) {
	w, h := s.t.kinds[k].size(turned)
	x, y = s.t.w-w, s.h-h
	if k == 0 && s.t.kinds[k].count == 1 && x >= 0 && y >= 0 {
		x, y = x/2, y/2
	}
	return x, y
}

// sums remembers the sums of sides for every set of pieces left.
type sums struct {
	t     *task
	h     int64
	along [2][]*reach
}

func newSums(t *task, h int64, states int) *sums {
	return &sums{t, h, [2][]*reach{make([]*reach, states), make([]*reach, states)}}
}

func (s *sums) of(a axis, state int, left []int) *reach {
	i, limit := 0, s.t.w
	if a == alongY {
		i, limit = 1, s.h
	}
	if s.along[i][state] == nil {
		kinds := make([]kind, 0, len(left))
		for k, n := range left {
			if n > 0 {
				c := s.t.kinds[k]
				c.count = n
				kinds = append(kinds, c)
			}
		}
		s.along[i][state] = newReach(kinds, a, limit)
	}
	return s.along[i][state]
}
