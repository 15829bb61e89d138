package gang

// merged looks for a cheap split of more items than every split can be tried of: from one run for each item, the two
// runs that save most together are joined until none do.
func (s *Sheets) merged(g group) *split {
	sp := &split{ok: true, heuristic: true}
	for k := range g.items {
		one := group{g.items[k : k+1], g.need[k : k+1]}
		r := s.run(ask{group: one, limit: most})
		if !r.ok {
			return &split{}
		}
		sp.groups, sp.runs = append(sp.groups, one), append(sp.runs, r)
		sp.bound = max(sp.bound, r.low)
	}
	for s.joinTwo(sp) {
	}
	for _, r := range sp.runs {
		var ok bool
		if sp.cost, ok = plus(sp.cost, r.cost); !ok {
			return &split{}
		}
	}
	return sp
}

// joinTwo joins the two runs that save most, if any do.
func (s *Sheets) joinTwo(sp *split) bool {
	var best Price = -1
	var bi, bj int
	var br run
	for i := range sp.runs {
		for j := i + 1; j < len(sp.runs); j++ {
			r := s.run(ask{group: sp.groups[i].with(sp.groups[j]), limit: sp.runs[i].cost + sp.runs[j].cost})
			if r.ok && sp.runs[i].cost+sp.runs[j].cost-r.cost > best {
				best, bi, bj, br = sp.runs[i].cost+sp.runs[j].cost-r.cost, i, j, r
			}
		}
	}
	if best < 0 {
		return false
	}
	sp.groups[bi], sp.runs[bi] = sp.groups[bi].with(sp.groups[bj]), br
	sp.groups = append(sp.groups[:bj], sp.groups[bj+1:]...)
	sp.runs = append(sp.runs[:bj], sp.runs[bj+1:]...)
	return true
}

// with is both groups together.
func (g group) with(h group) group {
	var out group
	for i, j := 0, 0; i < len(g.items) || j < len(h.items); {
		if j == len(h.items) || i < len(g.items) && g.items[i] < h.items[j] {
			out.items, out.need = append(out.items, g.items[i]), append(out.need, g.need[i])
			i++
		} else {
			out.items, out.need = append(out.items, h.items[j]), append(out.need, h.need[j])
			j++
		}
	}
	return out
}
