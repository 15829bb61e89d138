package nest

// few says that there are few enough kinds to widen their sides.
func (t *task) few(limit int64) bool {
	return len(t.kinds) <= 32 && limit <= maxReach && int64(len(t.kinds)*len(t.kinds))*limit < 1<<21
}

// widened is the kinds with sides made longer by what can never be used beside
// them: on a line across the region a side and whatever else fits leave at least
// that much free, so areas may be measured with the longer sides (conservative
// scales, Fekete & Schepers 2004). Sides along x and along y grow apart.
func (t *task) widened(w, h int64) []ways {
	out := t.widenedAcross(w)
	for i, k := range t.kinds {
		for way := range k.bothWays() {
			out[i].y[way] = widen(out, i, way, alongY, h)
		}
		if !k.turn {
			out[i].y[1] = out[i].y[0]
		}
	}
	return out
}

// widenedAcross widens along x only.
func (t *task) widenedAcross(w int64) []ways {
	out := t.ways()
	for i, k := range t.kinds {
		for way := range k.bothWays() {
			out[i].x[way] = widen(out, i, way, alongX, w)
		}
		if !k.turn {
			out[i].x[1] = out[i].x[0]
		}
	}
	return out
}

// widen is how long a side may be said to be: with any number of its kind on a
// line, all of them still fit beside the best of the others.
func widen(all []ways, i, way int, a axis, limit int64) int64 {
	side := all[i].along(a)[way]
	longest := limit
	for j := 1; j <= all[i].count && int64(j)*side <= limit && longest > side; j++ {
		rest := limit - int64(j)*side
		others := make([]kind, 0, len(all))
		for o := range all {
			s := all[o].along(a)
			k := kind{w: s[0], h: s[1], turn: s[0] != s[1], count: all[o].count}
			if o == i {
				k = kind{w: s[1-way], h: s[1-way], count: all[o].count - j} // lying the other way
			}
			if k.count > 0 {
				others = append(others, k)
			}
		}
		longest = min(longest, side+(rest-newReach(others, alongX, limit).below(rest))/int64(j))
	}
	return longest
}
