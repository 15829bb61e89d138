package nest

import "slices"

// A dual is a dual feasible function on lengths up to a limit: sides that sum to
// no more than the limit have values that sum to no more than its own. Areas
// measured with one dual along each axis then still fit a sheet when pieces do
// (Fekete & Schepers 2004). A piece that may be turned counts with the smaller
// of its two measures, so that the bound holds whichever way it lies.
type dual struct {
	limit  int64      // value of the whole length
	values [][2]int64 // by kind, for its two ways of lying
}

// ways are a kind's lengths along x and along y for its two ways of lying, which
// are the same where it may not be turned.
type ways struct {
	x, y  [2]int64
	count int
}

// ways lists those of all kinds.
func (t *task) ways() []ways {
	out := make([]ways, len(t.kinds))
	for i, k := range t.kinds {
		out[i] = ways{[2]int64{k.w, k.w}, [2]int64{k.h, k.h}, k.count}
		if k.turn {
			out[i].x[1], out[i].y[1] = k.h, k.w
		}
	}
	return out
}

func (w *ways) along(a axis) [2]int64 {
	if a == alongX {
		return w.x
	}
	return w.y
}

// maxDuals is about how many duals are made for an axis; fewer for very many
// kinds.
const maxDuals = 96

// duals lists the functions worth trying for an axis of the region.
func duals(kinds []ways, along axis, limit int64) []dual {
	steps := dualSteps(kinds, along, limit)
	most := 5 + 2*len(steps)
	out := make([]dual, 0, most)
	all := make([][2]int64, 0, most*len(kinds)) // the values of every dual, one after another
	add := func(f func(x int64) int64) {
		from := len(all)
		for i := range kinds {
			k := kinds[i].along(along)
			all = append(all, [2]int64{f(min(k[0], limit)), f(min(k[1], limit))})
		}
		out = append(out, dual{limit: f(limit), values: all[from:]})
	}
	add(func(x int64) int64 { return x })
	for _, p := range steps {
		add(func(x int64) int64 { return threshold(x, p, limit) })
		if p <= limit/2 {
			add(func(x int64) int64 { return rounded(x, p, limit) })
		}
	}
	for k := int64(1); k <= 4; k++ {
		add(func(x int64) int64 { return staircase(x, k, limit) })
	}
	return out
}

// dualSteps are the parameters: sides up to the middle, and what the longer ones
// leave.
func dualSteps(kinds []ways, along axis, limit int64) []int64 {
	steps := make([]int64, 0, 4*len(kinds)+8)
	for i := range kinds {
		k := kinds[i].along(along)
		steps = append(steps, k[0], limit-k[0]+1, k[1], limit-k[1]+1)
	}
	for j := int64(2); j <= 7; j++ {
		steps = append(steps, limit/j+1)
	}
	slices.Sort(steps)
	steps = slices.Compact(steps)
	steps = slices.DeleteFunc(steps, func(p int64) bool { return p < 1 || p > (limit+1)/2 })
	most := max(2, min(maxDuals/2, 100_000/max(1, len(kinds))))
	if n := len(steps); n > most {
		for i := range most {
			steps[i] = steps[i*n/most]
		}
		steps = steps[:most]
	}
	return steps
}

// threshold counts sides over limit-p whole and sides under p not at all.
func threshold(x, p, limit int64) int64 {
	switch {
	case x > limit-p:
		return limit
	case x < p:
		return 0
	default:
		return x
	}
}

// rounded counts in steps of k, up beyond the middle and down before it
// (Carlier, Clautiaux & Moukrim 2007).
func rounded(x, k, limit int64) int64 {
	switch {
	case 2*x > limit:
		return 2 * (limit/k - (limit-x)/k)
	case 2*x == limit:
		return limit / k
	default:
		return 2 * (x / k)
	}
}

// staircase has k+1 steps (Fekete & Schepers 2001), here times k.
func staircase(x, k, limit int64) int64 {
	if (k+1)*x%limit == 0 {
		return k * x
	}
	return (k + 1) * x / limit * limit
}

// measure is the area of all pieces under a dual along each axis.
func measure(kinds []ways, f, g *dual) area {
	var sum area
	for i := range kinds {
		a := product(f.values[i][0], g.values[i][0])
		if b := product(f.values[i][1], g.values[i][1]); b.less(a) {
			a = b
		}
		sum = sum.add(a.times(kinds[i].count))
	}
	return sum
}
