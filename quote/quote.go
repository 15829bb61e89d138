// Package quote is the engine: it works out what a heat-press job costs, by which method each placement is made, what
// is bought and what the customer pays. Values in, values out: the same job gives the same figures on every machine.
//
// Not in this package: reading or writing files (quote/jobfile has the form of a job file), a clock, a catalog of
// prices, anything of a window or a document.
package quote

import (
	"fmt"
	"slices"
	"strings"
)

// Format names of the two documents that the engine reads and gives.
const (
	JobFormat    = "pressworth.job/1"
	ResultFormat = "pressworth.result/1"
)

// Problems are all the things wrong with a job; it is the error that Price returns for bad input.
type Problems []Problem

// Error joins all problems.
func (p Problems) Error() string {
	var b strings.Builder
	for i, x := range p {
		if i > 0 {
			b.WriteString("; ")
		}
		b.WriteString(x.Path + ": " + x.Problem)
	}
	return b.String()
}

// Price works a job out in full. The error, if any, is Problems.
func Price(job Job) (Result, error) { return NewMemory().Price(job) }

// Price works a job out in full, like the function of that name.
func (k *Memory) Price(job Job) (Result, error) { return k.price(job, false, nil) }

// First is Price without the search for cliffs, most of the work of a large job, and without the room left on sheets:
// what a window shows on the key, until the whole result is there. Everything else is the same to the cent.
func (k *Memory) First(job Job) (Result, error) { return k.price(job, true, nil) }

// price works a job out, and hands what it came from on where that is asked for.
func (k *Memory) price(job Job, first bool, also func(*stair, *worked)) (r Result, err error) {
	err = k.served(job, func(m *model) Problems {
		var above *ahead
		if !first {
			above = k.lookAhead(m)
			defer above.wait()
		}
		ladder := m.stair()
		ladder.above = above
		own := ladder.own()
		if own == nil {
			return m.unserved()
		}
		r = (&report{model: m, ladder: ladder, own: own, first: first}).result()
		if also != nil {
			also(ladder, own)
		}
		return nil
	})
	return r, err
}

// MostCheapest is the largest quantity that Cheapest goes up to.
const MostCheapest = 2000

// Cheapest finds, for one placement, the spans of quantities from 1 to upto over which each card is the choice, for
// its own inks and for each ink count. Quantities scale the whole job as the ladder does. The error, if any, is
// Problems.
func Cheapest(job Job, placement string, upto int) (CheapestFromTo, error) {
	return NewMemory().Cheapest(job, placement, upto)
}

// Cheapest finds spans of quantities, like the function of that name.
func (k *Memory) Cheapest(job Job, placement string, upto int) (CheapestFromTo, error) {
	r := CheapestFromTo{Placement: placement}
	p := slices.IndexFunc(job.Placements, func(p Placement) bool { return p.ID == placement })
	if p < 0 {
		return r, Problems{{Path: "placement", Problem: fmt.Sprintf("there is no placement %q in this job", placement)}}
	}
	if upto < 1 || upto > MostCheapest {
		return r, Problems{{Path: "upto", Problem: fmt.Sprintf("enter 1 to %d pieces", MostCheapest)}}
	}
	var err error
	if r.Spans, err = k.spans(job, p, upto, func(*Placement) {}); err != nil {
		return r, err
	}
	for inks := 1; inks <= 6; inks++ {
		s, err := k.spans(job, p, upto, func(p *Placement) { p.Inks, p.InkCount, p.FullColor = nil, inks, false })
		if err != nil {
			return r, err
		}
		r.ByInks = append(r.ByInks, InkSpans{Inks: fmt.Sprint(inks), Spans: s})
	}
	s, err := k.spans(job, p, upto, func(p *Placement) { p.Inks, p.InkCount, p.FullColor = nil, 0, true })
	r.ByInks = append(r.ByInks, InkSpans{Inks: "full", Spans: s})
	return r, err
}

// spans finds which card is the choice for a placement at each quantity, its artwork changed.
func (k *Memory) spans(job Job, p, upto int, change func(*Placement)) (ss []Span, err error) {
	job.Placements = slices.Clone(job.Placements)
	change(&job.Placements[p])
	job.Placements[p].Method = ""
	job.Frozen = nil
	err = k.working(job, func(m *model) Problems {
		var hint []int
		for q := 1; q <= upto; q++ {
			card := ""
			s := m.at(q)
			if best, _ := s.best(s.allowed, hint); best.ok {
				hint = best.choice
				if c := best.choice[p]; c >= 0 {
					card = m.cards[c].ID
				}
			}
			delete(m.quantities, q)
			if n := len(ss); n > 0 && ss[n-1].Card == card {
				ss[n-1].To = q
			} else {
				ss = append(ss, Span{From: q, To: q, Card: card})
			}
		}
		return nil
	})
	return ss, err
}

// working checks a job, compiles it and hands it on; amounts that are too large become a problem.
func (k *Memory) working(job Job, work func(*model) Problems) (err error) {
	k.stop.Store(false)
	problems := check(&job)
	if slices.ContainsFunc(problems, func(p Problem) bool { return !later(p.Path) }) {
		return problems
	}
	defer func() {
		switch x := recover().(type) {
		case nil:
		case tooLarge:
			err = append(problems, (&checker{job: &job}).tooLarge()...)
		case stopped:
			err = ErrStopped
		default:
			panic(x)
		}
	}()
	m := newModel(&job, k)
	m.problems = append(problems, m.cannotServe()...)
	m.problems = append(m.problems, m.thaw()...)
	if len(problems) > 0 {
		return m.problems
	}
	if p := work(m); len(p) > 0 {
		return p
	}
	return nil
}

// served is working for jobs that rate cards serve at their own quantity.
func (k *Memory) served(job Job, work func(*model) Problems) error {
	return k.working(job, func(m *model) Problems {
		if len(m.problems) > 0 {
			return m.problems
		}
		return work(m)
	})
}

// later tells of a path whose field has no part in whether the job can be served.
func later(path string) bool {
	return strings.HasPrefix(path, "pricing.") || strings.HasPrefix(path, "art.") || strings.HasPrefix(path, "ladder")
}
