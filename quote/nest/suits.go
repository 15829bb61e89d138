package nest

// suits scores a piece of w x h in a gap between two walls, and says at which end
// of the gap it goes. Filling the gap's width counts most, then ending level
// with a wall, which makes one longer floor of two.
func suits(w, h, gap, left, right int64) (score int, atRight bool) {
	if w == gap {
		switch {
		case h == left && h == right:
			return 6, false
		case h == left || h == right:
			return 5, false
		default:
			return 4, false
		}
	}
	switch {
	case h == left:
		return 2, false
	case h == right:
		return 2, true
	default:
		return 0, right > left
	}
}
