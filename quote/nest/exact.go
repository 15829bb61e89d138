package nest

// A stair decides whether pieces fit a region, whatever the effort. Every
// packing of rectangles can be built up from the corner so that each piece in
// turn lies beyond the envelope of those before it, in one of the envelope's
// inner corners (Martello, Pisinger & Vigo 2000; for rectangles nothing is
// missed, by the sequence pairs of Murata, Fujiyoshi, Nakatake & Kajitani 1996).
// Area below the envelope and not covered is lost for good.
type stair struct {
	t     *task
	spare float64
	sums  *sums
	left  []int
	state int // index of left among all counts
	radix []int
	big   int // the kind with the largest area
	lost  float64
	spots []spot
	nodes int
	level []stairLevel
}

type stairLevel struct {
	corners []corner
	options []stairOption
}

// corner is an inner corner of the envelope: x rises and y falls along it.
type corner struct{ x, y int64 }

type stairOption struct {
	lost   float64
	kind   int
	corner int
	turned bool
}

func newStair(t *task) *stair {
	s := &stair{t: t, left: t.counts()}
	states := 1
	for _, k := range t.kinds {
		s.radix = append(s.radix, states)
		s.state += states * k.count
		states *= k.count + 1
	}
	s.sums = newSums(t, s.radix, states)
	s.spare = product(t.w, t.h).float() - t.area().float()
	if s.spare > 1<<50 {
		s.spare += s.spare * 1e-9
	}
	s.level = make([]stairLevel, t.n+1)
	return s
}

// solve returns a layout, or nil when there is none.
func (s *stair) solve() []spot {
	s.level[0].corners = append(s.level[0].corners[:0], corner{0, 0})
	if s.down(0) {
		return s.spots
	}
	return nil
}

func (s *stair) down(n int) bool {
	if n == s.t.n {
		return true
	}
	s.nodes++
	if s.hopeless(n) {
		return false
	}
	s.collect(n)
	lost := s.lost
	for _, o := range s.level[n].options {
		w, h := s.t.kinds[o.kind].size(o.turned)
		c := s.level[n].corners[o.corner]
		s.level[n+1].corners = step(s.level[n+1].corners[:0], s.level[n].corners, o.corner, w, h)
		s.lost = lost + o.lost
		s.left[o.kind]--
		s.state -= s.radix[o.kind]
		s.spots = append(s.spots, spot{o.kind, c.x, c.y, o.turned})
		if s.down(n + 1) {
			return true
		}
		s.spots = s.spots[:len(s.spots)-1]
		s.left[o.kind]++
		s.state += s.radix[o.kind]
	}
	s.lost = lost
	return false
}

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
		// the column above floor j, up to the old wall or the new top
		end := right
		if j+1 < len(c) {
			end = min(end, c[j+1].x)
		}
		sum += float64(end-c[j].x) * float64(top-c[j].y)
	}
	return sum
}

// hopeless says that more is lost than there is to lose, or that a piece has no
// place left. Beyond the envelope, rows are used up to a sum of widths only and
// columns up to a sum of heights; columns left of a corner and rows right of it
// have no area in common, so both losses count.
func (s *stair) hopeless(n int) bool {
	c := s.level[n].corners
	x, y := s.sums.of(alongX, s.state, s.left), s.sums.of(alongY, s.state, s.left)
	var cols, rows float64
	top := s.t.h
	for i := range c {
		room := s.t.w - c[i].x
		rows += float64(top-c[i].y) * float64(room-x.below(room))
		top = c[i].y
	}
	most := rows
	top = s.t.h
	for i := range c {
		room := s.t.w - c[i].x
		rows -= float64(top-c[i].y) * float64(room-x.below(room))
		top = c[i].y
		end := s.t.w
		if i+1 < len(c) {
			end = c[i+1].x
		}
		room = s.t.h - c[i].y
		cols += float64(end-c[i].x) * float64(room-y.below(room))
		most = max(most, rows+cols)
	}
	return s.lost+most > s.spare || s.shutOut(c)
}

// shutOut says that a piece that is left has no place any more.
func (s *stair) shutOut(c []corner) bool {
	for k, n := range s.left {
		if n > 0 && !s.place(c, k, false) && !(s.t.kinds[k].turn && s.place(c, k, true)) {
			return true
		}
	}
	return false
}

func (s *stair) place(c []corner, k int, turned bool) bool {
	x, y := s.farthest(k, turned)
	for i := range c {
		if c[i].x <= x && c[i].y <= y {
			return true
		}
	}
	return false
}

// farthest is how far from the corner a piece may lie. By reflection the middle
// of one piece, the largest, may be taken to lie in the near left quarter.
func (s *stair) farthest(k int, turned bool) (x, y int64) {
	w, h := s.t.kinds[k].size(turned)
	x, y = s.t.w-w, s.t.h-h
	if k == s.big && s.t.kinds[k].count == 1 {
		x, y = x/2, y/2
	}
	return x, y
}

// held says that a piece at c touches something on its left and something below
// it; a layout pushed to the corner has no others.
func (s *stair) held(c corner, w, h int64) bool {
	left, below := c.x == 0, c.y == 0
	for _, p := range s.spots {
		if left && below {
			return true
		}
		pw, ph := s.t.kinds[p.kind].size(p.turned)
		if p.x+pw == c.x && p.y < c.y+h && p.y+ph > c.y {
			left = true
		}
		if p.y+ph == c.y && p.x < c.x+w && p.x+pw > c.x {
			below = true
		}
	}
	return left && below
}

// collect lists what may come next, least loss first.
func (s *stair) collect(n int) {
	l := &s.level[n]
	l.options = l.options[:0]
	for k := range s.t.kinds {
		if s.left[k] == 0 {
			continue
		}
		s.offer(n, k, false)
		if s.t.kinds[k].turn {
			s.offer(n, k, true)
		}
	}
}

// offer lists the corners a piece may come to next. Of two pieces that could
// swap turns the left one comes first.
func (s *stair) offer(n, k int, turned bool) {
	l := &s.level[n]
	w, h := s.t.kinds[k].size(turned)
	x, y := s.farthest(k, turned)
	for i, c := range l.corners {
		if c.x > x || c.y > y || n > 0 && c.x+w <= s.spots[n-1].x {
			continue
		}
		lost := swallowed(l.corners, i, w, h) - float64(w)*float64(h)
		if s.lost+lost > s.spare || !s.held(c, w, h) {
			continue
		}
		l.options = append(l.options, stairOption{lost, k, i, turned})
		o := l.options
		for j := len(o) - 1; j > 0 && o[j].lost < o[j-1].lost; j-- {
			o[j], o[j-1] = o[j-1], o[j]
		}
	}
}

// sums remembers the sums of sides for every set of pieces left.
type sums struct {
	t     *task
	radix []int
	along [2][]*reach
}

func newSums(t *task, radix []int, states int) *sums {
	s := &sums{t: t, radix: radix}
	s.along[0], s.along[1] = make([]*reach, states), make([]*reach, states)
	return s
}

func (s *sums) of(along axis, state int, left []int) *reach {
	i, limit := 0, s.t.w
	if along == alongY {
		i, limit = 1, s.t.h
	}
	if r := s.along[i][state]; r != nil {
		return r
	}
	kinds := make([]kind, 0, len(left))
	for k, n := range left {
		if n > 0 {
			c := s.t.kinds[k]
			c.count = n
			kinds = append(kinds, c)
		}
	}
	r := newReach(kinds, along, limit)
	s.along[i][state] = r
	return r
}
