package nest

// Bins lays all pieces on as few sheets as it finds.
func Bins(s Sheet, ps []Piece, e Effort) (BinsResult, error) {
	if err := checkSheet(s, false); err != nil {
		return BinsResult{}, err
	}
	if err := checkPieces(s, ps); err != nil {
		return BinsResult{}, err
	}
	t := newTask(s, ps)
	if t.n == 0 {
		return BinsResult{}, nil
	}
	var best [][]spot
	for _, o := range t.orders() {
		var sheets [][]spot
		left := t.counts()
		for n := 0; n < t.n; {
			spots := t.fill(o, left, t.h)
			n += len(spots)
			sheets = append(sheets, spots)
		}
		if best == nil || len(sheets) < len(best) {
			best = sheets
		}
	}
	bound := int(t.area().overArea(product(t.w, t.h)))
	return BinsResult{Placed: t.placed(best...), Sheets: len(best), Bound: bound}, nil
}
