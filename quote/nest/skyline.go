package nest

// skyline is the upper outline of what lies in a region, from left to right.
type skyline struct {
	w    int64
	segs []segment
}

// segment is a level part of a skyline.
type segment struct{ x, y, w int64 }

func (s *skyline) reset(w int64) {
	s.w = w
	s.segs = append(s.segs[:0], segment{0, 0, w})
}

// lowest is the lowest segment, the leftmost of several.
func (s *skyline) lowest() int {
	best := 0
	for i := 1; i < len(s.segs); i++ {
		if s.segs[i].y < s.segs[best].y {
			best = i
		}
	}
	return best
}

// walls are how high the outline stands left and right of segment i; -1 is the
// region's own border.
func (s *skyline) walls(i int) (left, right int64) {
	left, right = -1, -1
	if i > 0 {
		left = s.segs[i-1].y - s.segs[i].y
	}
	if i+1 < len(s.segs) {
		right = s.segs[i+1].y - s.segs[i].y
	}
	return left, right
}

// put lays w x h on segment i, at its right end or its left one, and returns x.
func (s *skyline) put(i int, w, h int64, right bool) int64 {
	g := s.segs[i]
	if w == g.w {
		s.segs[i].y += h
		s.merge(i)
		return g.x
	}
	s.segs = append(s.segs, segment{})
	copy(s.segs[i+1:], s.segs[i:])
	if right {
		s.segs[i].w = g.w - w
		s.segs[i+1] = segment{g.x + g.w - w, g.y + h, w}
		s.merge(i + 1)
		return g.x + g.w - w
	}
	s.segs[i] = segment{g.x, g.y + h, w}
	s.segs[i+1] = segment{g.x + w, g.y, g.w - w}
	s.merge(i)
	return g.x
}

// lift gives segment i up, raises it to its lower neighbour and returns by how
// much: 0 for a segment that has no neighbour.
func (s *skyline) lift(i int) int64 {
	left, right := s.walls(i)
	by := left
	if left < 0 || right >= 0 && right < left {
		by = right
	}
	if by < 0 {
		return 0
	}
	s.segs[i].y += by
	s.merge(i)
	return by
}

// merge joins segment i with neighbours of its height.
func (s *skyline) merge(i int) {
	if i+1 < len(s.segs) && s.segs[i+1].y == s.segs[i].y {
		s.segs[i].w += s.segs[i+1].w
		s.segs = append(s.segs[:i+1], s.segs[i+2:]...)
	}
	if i > 0 && s.segs[i-1].y == s.segs[i].y {
		s.segs[i-1].w += s.segs[i].w
		s.segs = append(s.segs[:i], s.segs[i+1:]...)
	}
}
