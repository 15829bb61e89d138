package nest

// Strip lays all pieces on the shortest strip it finds. The sheet's H must be 0.
func Strip(s Sheet, ps []Piece, e Effort) (StripResult, error) {
	s.H = 0
	if err := checkSheet(s, true); err != nil {
		return StripResult{}, err
	}
	if err := checkPieces(s, ps); err != nil {
		return StripResult{}, err
	}
	t := newTask(s, ps)
	var best []spot
	length := int64(-1)
	for _, o := range t.orders() {
		spots := t.fill(o, t.counts(), t.h)
		if l := t.length(spots); length < 0 || l < length {
			best, length = spots, l
		}
	}
	bound := t.area().over(t.w)
	return StripResult{Placed: t.placed(best), Length: t.outer(length), Bound: t.outer(bound)}, nil
}
