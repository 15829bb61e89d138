package quote

import (
	"fmt"
	"strings"
)

// cannotServe names the placements that no rate card serves at the job's own quantity.
func (m *model) cannotServe() (ps Problems) {
	s := m.at(m.pieces)
	for p := range m.placements {
		if s.active[p] && len(s.allowed[p]) == 0 {
			ps = append(ps, Problem{Path: fmt.Sprintf("placements[%d].method", p), Problem: s.whyNot(p)})
		}
	}
	return ps
}

// whyNot says for each card what keeps it from serving a placement.
func (s *state) whyNot(p int) string {
	m, pl := s.m, &s.m.placements[p]
	var why []string
	for c := range m.cards {
		cd := &m.cards[c]
		if pl.Method != "" && pl.Method != "auto" && pl.Method != cd.ID {
			continue
		}
		why = append(why, cd.ID+" "+s.obstacle(cd, p))
		if len(why) == 6 {
			break
		}
	}
	if len(why) == 0 {
		return "no rate card serves it: add one to the job"
	}
	return "no rate card serves it: " + strings.Join(why, "; ")
}

func (s *state) obstacle(c *card, p int) string {
	m, pl := s.m, &s.m.placements[p]
	switch {
	case !c.isFor(pl.ID):
		return "is for other artwork"
	case pl.FullColor && (!c.FullColor || c.Kind == SheetCard):
		return "has no full colour"
	case c.MaxInks > 0 && pl.inks > c.MaxInks:
		return fmt.Sprintf("takes at most %d inks", c.MaxInks)
	case !m.carries(c, pl):
		return "has no price for this kind of artwork"
	}
	for _, l := range pl.on {
		if s.lineQty[l] > 0 && !c.goesOn(&m.lines[l]) {
			return "does not go on " + m.lines[l].ID
		}
	}
	for _, i := range pl.items {
		if s.need[i] > 0 && !m.holds(c, i) {
			return "does not take its size"
		}
	}
	return "has no price at this quantity"
}

// unserved says why the job's own quantity could not be worked out.
func (m *model) unserved() (ps Problems) {
	s := m.at(m.pieces)
	x := &search{s: s, allowed: s.allowed}
	t, _ := x.lowSetting()
	for p, cards := range s.allowed {
		served := !s.active[p]
		for _, c := range cards {
			cd := &m.cards[c]
			if cd.sheets != nil || cd.roll != nil {
				served = true
			} else if _, ok := t.placementOn(c, p); ok {
				served = true
			}
		}
		if !served {
			ps = append(ps, Problem{Path: fmt.Sprintf("placements[%d].method", p), Problem: s.whyNot(p)})
		}
	}
	ps = append(ps, t.unpriced...)
	if len(ps) == 0 {
		ps = append(ps, Problem{Path: "placements", Problem: "no combination of rate cards serves this job"})
	}
	return ps
}

// Unserved are the places, among the job's placements, of those that no rate card serves at the job's own quantity. A
// job that cannot be worked out for another reason has none: Price says what is wrong with it.
func Unserved(job Job) (places []int) {
	job.Frozen = nil
	_ = NewMemory().working(job, func(m *model) Problems {
		s := m.at(m.pieces)
		for p := range m.placements {
			if s.active[p] && len(s.allowed[p]) == 0 {
				places = append(places, p)
			}
		}
		return nil
	})
	return places
}
