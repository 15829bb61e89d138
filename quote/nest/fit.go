package nest

// Fit says whether all pieces go on one sheet, and how. Input that Bins would
// refuse cannot fit, with the exception of a sheet open at its end.
func Fit(s Sheet, ps []Piece, e Effort) ([]Placed, Verdict) {
	if checkSheet(s, true) != nil || checkPieces(s, ps) != nil {
		return nil, CannotFit
	}
	t := newTask(s, ps)
	if product(t.w, t.h).less(t.area()) {
		return nil, CannotFit
	}
	for _, o := range t.orders() {
		if spots := t.fill(o, t.counts(), t.h); len(spots) == t.n {
			return t.placed(spots), Fits
		}
	}
	return nil, Unknown
}
