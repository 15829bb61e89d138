package nest

// Straight lays all pieces on one sheet in straight rows from border to border,
// each design one way round, or says that it found no such layout.
func Straight(s Sheet, ps []Piece) ([]Placed, bool) {
	if check(s, ps, true) != nil {
		return nil, false
	}
	t := newTask(s, ps)
	var out []spot
	var y int64
	for k, c := range t.counts() {
		spots, top, ok := t.rows(k, c, y)
		if !ok {
			return nil, false
		}
		out, y = append(out, spots...), top
	}
	return t.placed(out), true
}

// rows lays c copies of a kind in rows from y on, the way that is lower.
func (t *task) rows(k, c int, y int64) (out []spot, top int64, ok bool) {
	best := int64(-1)
	turned := false
	for _, way := range []bool{false, true} {
		w, h := t.kinds[k].size(way)
		if way && !t.kinds[k].turn || w > t.w {
			continue
		}
		per := int(min(t.w/w, int64(c)))
		if high := int64((c+per-1)/per) * h; best < 0 || high < best {
			best, turned = high, way
		}
	}
	if best < 0 || best > t.h-y {
		return nil, 0, false
	}
	w, h := t.kinds[k].size(turned)
	per := int(min(t.w/w, int64(c)))
	for i := range c {
		out = append(out, spot{k, int64(i%per) * w, y + int64(i/per)*h, turned})
	}
	return out, y + best, true
}
