package quote

// Roamed is the figure of the combination that is found for a job as if there were too many to weigh them all, and the
// figure of the best, with all weighed.
func Roamed(job Job) (roamed, best int64, err error) {
	err = NewMemory().served(job, func(m *model) Problems {
		s := m.at(m.pieces)
		x := &search{s: s, allowed: s.allowed, choice: make([]int, len(s.allowed)), scratch: m.newScratch(), effort: bestEffort}
		for p := range x.choice {
			x.choice[p] = -1
		}
		x.bounds()
		x.roam(nil, mostDescended+1)
		all, _ := s.best(s.allowed, nil)
		roamed, best = x.best.figure, all.figure
		return nil
	})
	return roamed, best, err
}
