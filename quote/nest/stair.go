package nest

// A stair decides whether pieces fit a region, whatever the effort. Every
// packing of rectangles can be built up from the corner so that each piece in
// turn lies beyond the envelope of those before it, in one of the envelope's
// inner corners (Martello, Pisinger & Vigo 2000; for rectangles nothing is
// missed, by the sequence pairs of Murata, Fujiyoshi, Nakatake & Kajitani 1996).
// Area below the envelope and not covered is lost for good.
type stair struct {
	t     *task
	h     int64
	sums  *sums
	left  []int
	state int   // number of left among all counts, with radix
	radix []int // what one copy of a kind is worth in it
	spare float64
	lost  float64
	spots []spot
	level []stairLevel
	nodes int
	limit int // of nodes; 0: none
	stop  func() bool
	ended bool // by the limit or by stop
}

// stairLevel is the memory for one depth: the envelope, and what may come next.
type stairLevel struct {
	corners []corner
	options []stairOption
}

type stairOption struct {
	lost         float64
	kind, corner int
	turned       bool
}

func newStair(t *task, h int64) *stair {
	s := &stair{t: t, h: h, left: t.counts(), level: make([]stairLevel, t.n+1)}
	states := 1
	for _, k := range t.kinds {
		s.radix = append(s.radix, states)
		s.state += states * k.count
		states *= k.count + 1
	}
	s.sums = newSums(t, h, states)
	whole := product(t.w, h).float()
	s.spare = whole - t.area().float()
	if whole > 1<<52 {
		s.spare += whole * 1e-12 // floats are not exact any more
	}
	return s
}

// solve returns a layout or the proof that there is none.
func (s *stair) solve() ([]spot, Verdict) {
	s.level[0].corners = append(s.level[0].corners[:0], corner{0, 0})
	switch {
	case s.down(0):
		return s.spots, Fits
	case s.ended:
		return nil, Unknown
	default:
		return nil, CannotFit
	}
}

func (s *stair) down(n int) bool {
	if n == s.t.n {
		return true
	}
	if s.tired() || s.hopeless(n) {
		return false
	}
	s.collect(n)
	lost := s.lost
	for _, o := range s.level[n].options {
		if s.ended {
			break
		}
		s.lost = lost + o.lost
		s.set(n, o)
		if s.down(n + 1) {
			return true
		}
		s.takeBack(o)
	}
	s.lost = lost
	return false
}

// tired counts a node and says that the search is to end.
func (s *stair) tired() bool {
	s.nodes++
	if s.limit > 0 && s.nodes > s.limit || s.nodes%4096 == 0 && s.stop != nil && s.stop() {
		s.ended = true
	}
	return s.ended
}

func (s *stair) set(n int, o stairOption) {
	w, h := s.t.kinds[o.kind].size(o.turned)
	c := s.level[n].corners[o.corner]
	s.level[n+1].corners = step(s.level[n+1].corners[:0], s.level[n].corners, o.corner, w, h)
	s.left[o.kind]--
	s.state -= s.radix[o.kind]
	s.spots = append(s.spots, spot{o.kind, c.x, c.y, o.turned})
}

func (s *stair) takeBack(o stairOption) {
	s.spots = s.spots[:len(s.spots)-1]
	s.left[o.kind]++
	s.state += s.radix[o.kind]
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
