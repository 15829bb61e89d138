package gang

import (
	"cmp"
	"fmt"
	"math/bits"
	"slices"
)

// Need is how many copies of an item a job wants.
type Need struct{ Item, Copies int }

// Sharing says what several jobs save on one card by riding on one another's sheets.
type Sharing struct {
	Alone  []Price  // by job: the cost of its own plan
	Groups []Shared // jobs that share sheets, those with the earliest job first; a job that shares with none is in none
	Saves  Price    // over the sum of Alone, all groups together
	Pairs  []Pair   // jobs of which two alone would save something, the most first
}

// Shared is a group of jobs planned as one.
type Shared struct {
	Jobs  []int // ascending
	Plan  Plan
	Saves Price   // over their own plans
	Parts []Price // of Plan.Cost, by Jobs: in proportion to Alone, so that no job pays more than alone
}

// Pair is what two jobs save together.
type Pair struct {
	A, B  int
	Saves Price
}

// mostPaired is how many jobs are also looked at two by two.
const mostPaired = 12

// Together plans the jobs separately and as one, and says which of them share sheets, what that saves, and what part
// each has to pay. Every item belongs to one job, and no two jobs share a Placement index.
func (s *Sheets) Together(jobs [][]Need) (Sharing, error) {
	var sh Sharing
	groups := make([]group, len(jobs))
	owner := map[int]int{}
	for j, job := range jobs {
		g, err := s.groupOf(job)
		if err != nil {
			return sh, fmt.Errorf("job %d: %w", j, err)
		}
		for _, i := range g.items {
			if other, taken := owner[i]; taken {
				return sh, fmt.Errorf("job %d: item %d is job %d's", j, i, other)
			}
			owner[i] = j
		}
		cost, ok := s.Cost(g.items, g.need)
		if !ok {
			return sh, fmt.Errorf("job %d: %w", j, s.refusal(g.items, g.need))
		}
		groups[j] = g
		sh.Alone = append(sh.Alone, cost)
	}
	all := s.allOf(groups)
	for _, set := range joined(all, owner, len(jobs)) {
		part := s.partOf(all, func(item int) bool { return slices.Contains(set, owner[item]) })
		if err := sh.add(set, part, s); err != nil {
			return sh, err
		}
	}
	sh.pair(s, groups)
	return sh, nil
}

// groupOf sorts a job's needs by item.
func (s *Sheets) groupOf(job []Need) (group, error) {
	job = slices.SortedStableFunc(slices.Values(job), func(a, b Need) int { return cmp.Compare(a.Item, b.Item) })
	var items, need []int
	for _, n := range job {
		items, need = append(items, n.Item), append(need, n.Copies)
	}
	return wanted(s.items, items, need)
}

// allOf plans the items of several jobs as one. It is never dearer than their own plans: where not every split can be
// tried, it starts from them.
func (s *Sheets) allOf(groups []group) *split {
	var all group
	m := s.quickly().merging(len(s.items))
	for _, g := range groups {
		all = all.with(g)
		own := s.split(g.items, g.need)
		m.groups, m.runs = append(m.groups, own.groups...), append(m.runs, own.runs...)
	}
	if len(all.items) <= Exact {
		return s.split(all.items, all.need)
	}
	m.improve()
	return s.firm(m.split())
}

// joined are the sets of jobs that share a run, directly or by others, of two jobs and more.
func joined(sp *split, owner map[int]int, jobs int) [][]int {
	set := make([]int, jobs) // by job: the earliest of its set
	for j := range set {
		set[j] = j
	}
	for _, g := range sp.groups {
		for _, i := range g.items {
			a, b := set[owner[i]], set[owner[g.items[0]]]
			for j := range set {
				if set[j] == max(a, b) {
					set[j] = min(a, b)
				}
			}
		}
	}
	members := make([][]int, jobs)
	for j, lead := range set {
		members[lead] = append(members[lead], j)
	}
	return slices.DeleteFunc(members, func(m []int) bool { return len(m) < 2 })
}

// partOf is the runs of a split whose items are among some; no run holds others as well.
func (s *Sheets) partOf(sp *split, among func(item int) bool) *split {
	m := s.merging(0)
	var all group
	for k, g := range sp.groups {
		if among(g.items[0]) {
			m.groups, m.runs, all = append(m.groups, g), append(m.runs, sp.runs[k]), all.with(g)
		}
	}
	if len(all.items) <= Exact {
		return s.split(all.items, all.need)
	}
	return m.split()
}

// add keeps a set of jobs that share sheets if that saves something.
func (sh *Sharing) add(jobs []int, sp *split, s *Sheets) error {
	var alone []Price
	var before Price
	for _, j := range jobs {
		alone = append(alone, sh.Alone[j])
		var ok bool
		if before, ok = plus(before, sh.Alone[j]); !ok {
			return fmt.Errorf("the cost of all jobs is larger than can be reckoned with")
		}
	}
	if !sp.ok || sp.cost >= before {
		return nil
	}
	sh.Groups = append(sh.Groups, Shared{
		Jobs: jobs, Plan: s.planOf(sp), Saves: before - sp.cost, Parts: divide(sp.cost, alone, before),
	})
	sh.Saves += before - sp.cost
	return nil
}

// pair looks at the jobs two by two.
func (sh *Sharing) pair(s *Sheets, groups []group) {
	if len(groups) > mostPaired {
		return
	}
	for a := range groups {
		for b := a + 1; b < len(groups); b++ {
			before, ok := plus(sh.Alone[a], sh.Alone[b])
			if sp := s.allOf([]group{groups[a], groups[b]}); ok && sp.ok && sp.cost < before {
				sh.Pairs = append(sh.Pairs, Pair{a, b, before - sp.cost})
			}
		}
	}
	slices.SortStableFunc(sh.Pairs, func(x, y Pair) int { return cmp.Compare(y.Saves, x.Saves) })
}

// divide splits a total by weights that add up to sum, sum ≥ total: the whole parts first, and what is left one unit
// each to the largest remainders, the earlier of equals first. No part is larger than its weight.
func divide(total Price, weights []Price, sum Price) []Price {
	parts := make([]Price, len(weights))
	rests := make([]uint64, len(weights))
	order := make([]int, len(weights))
	left := total
	for i, w := range weights {
		hi, lo := bits.Mul64(uint64(total), uint64(w))
		q, r := bits.Div64(hi, lo, uint64(sum))
		parts[i], rests[i], order[i] = Price(q), r, i
		left -= parts[i]
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(rests[b], rests[a]) })
	for _, i := range order[:left] {
		parts[i]++
	}
	return parts
}
