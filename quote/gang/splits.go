package gang

// Exact is the largest number of items of which every split into runs is tried.
const Exact = 7

// split is a set of runs that together print some items.
type split struct {
	ok        bool
	cost      Price
	bound     Price // no split costs less
	heuristic bool
	groups    []group
	runs      []run
}

// part is the best way found to print a set of items: its first run, which holds the earliest item, and the rest.
type part struct {
	ok     bool
	cost   Price
	runs   int
	sheets int
	first  int // the set in the first run
	size   int

	possible bool
	low      Price
}

// exact tries every split. Sets are bits over the places in the group.
func (s *Sheets) exact(g group) *split {
	n := len(g.items)
	one := make([]run, 1<<n)
	best := make([]part, 1<<n)
	best[0] = part{ok: true, possible: true}
	for set := 1; set < 1<<n; set++ {
		others := set & (set - 1) // all but the first
		for rest := others; rest > 0; rest = (rest - 1) & others {
			best[set].join(best, one[set&^rest], set&^rest, rest)
		}
		one[set] = s.run(s.askFor(g.only(set), set, one, best[set]))
		best[set].join(best, one[set], set, 0)
	}
	all := 1<<n - 1
	sp := &split{ok: best[all].ok, cost: best[all].cost, bound: best[all].low}
	if !sp.ok {
		return sp
	}
	for set := all; set != 0; set &^= best[set].first {
		sp.groups = append(sp.groups, g.only(best[set].first))
		sp.runs = append(sp.runs, one[best[set].first])
	}
	return sp
}

// askFor asks for one run of a set: dearer than in several runs is of no use, and it takes no fewer sheets than any part
// of it.
func (s *Sheets) askFor(g group, set int, one []run, several part) ask {
	a := ask{group: g, limit: most}
	if several.ok {
		a.limit = several.cost
	}
	if set&(set-1) == 0 {
		return a
	}
	a.fewest = make([]int, len(s.card.Sizes))
	for rest := set; rest > 0; rest &= rest - 1 {
		for size, x := range one[set&^(rest&-rest)].fewest {
			a.fewest[size] = max(a.fewest[size], x)
		}
	}
	return a
}

// only is the part of a group at the places of a set.
func (g group) only(set int) group {
	var out group
	for k := range g.items {
		if set>>k&1 == 1 {
			out.items, out.need = append(out.items, g.items[k]), append(out.need, g.need[k])
		}
	}
	return out
}

// join considers a first run together with the best of the rest.
func (p *part) join(best []part, r run, first, rest int) {
	q := best[rest]
	if low, ok := plus(r.low, q.low); ok && r.possible && q.possible && (!p.possible || low < p.low) {
		p.possible, p.low = true, low
	}
	if !r.ok || !q.ok {
		return
	}
	cost, ok := plus(r.cost, q.cost)
	if !ok {
		return
	}
	c := part{ok: true, cost: cost, runs: q.runs + 1, sheets: sum(r.buying.sheets, q.sheets), first: first, size: r.size}
	c.possible, c.low = p.possible, p.low
	if !p.ok || c.better(*p, best, first|rest) {
		*p = c
	}
}

// better says whether it is to be taken before another for the same set: cost, runs, sheets, sizes listed first, and then the
// earlier items together.
func (p part) better(than part, best []part, set int) bool {
	switch {
	case p.cost != than.cost:
		return p.cost < than.cost
	case p.runs != than.runs:
		return p.runs < than.runs
	case p.sheets != than.sheets:
		return p.sheets < than.sheets
	}
	a, b := p, than
	for s, t := set, set; ; {
		if a.size != b.size {
			return a.size < b.size
		}
		s, t = s&^a.first, t&^b.first
		if s == 0 || t == 0 {
			break
		}
		a, b = best[s], best[t]
	}
	a, b = p, than
	for a.first == b.first {
		set &^= a.first
		if set == 0 {
			return false
		}
		a, b = best[set], best[set]
	}
	differ := a.first ^ b.first
	return a.first&(differ&-differ) != 0
}
