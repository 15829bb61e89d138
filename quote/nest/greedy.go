package nest

// fill lays pieces in a region of height h, lowest gap first, the piece that
// suits a gap best taken first (Burke, Kendall & Whitwell 2004; the scores are
// in the manner of Leung, Zhang & Sim 2011). order lists kinds, earlier ones
// winning ties; left holds the copies still to lay and is counted down. It ends
// when nothing more fits.
func (t *task) fill(order []int, left []int, h int64) []spot {
	var sky skyline
	sky.reset(t.w)
	var out []spot
	for {
		i := sky.lowest()
		c, ok := t.choose(&sky, i, order, left, h)
		if !ok {
			if !sky.lift(i) {
				return out
			}
			continue
		}
		w, ht := t.kinds[c.kind].size(c.turned)
		y := sky.segs[i].y
		x := sky.put(i, w, ht, c.right)
		left[c.kind]--
		out = append(out, spot{c.kind, x, y, c.turned})
	}
}

type choice struct {
	kind          int
	turned, right bool
}

// choose finds the piece that suits segment i best.
func (t *task) choose(sky *skyline, i int, order, left []int, h int64) (choice, bool) {
	best, score := choice{}, -1
	gap := sky.segs[i]
	lw, rw := sky.walls(i)
	for _, k := range order {
		if left[k] == 0 {
			continue
		}
		for way := 0; way < 2; way++ {
			if way == 1 && !t.kinds[k].turn {
				break
			}
			w, ht := t.kinds[k].size(way == 1)
			if w > gap.w || ht > h-gap.y {
				continue
			}
			if v, right := suits(w, ht, gap.w, lw, rw); v > score {
				best, score = choice{k, way == 1, right}, v
			}
		}
	}
	return best, score >= 0
}

// suits scores a piece of w x h in a gap between two walls.
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
