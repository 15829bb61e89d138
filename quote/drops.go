package quote

import (
	"sort"

	"pressworth/quote/money"
)

// Drop is what taking a larger quantity of the ladder would take off the price each of one price group.
type Drop struct {
	Pieces int          // the ladder's quantity
	More   int          // pieces more than the job has
	Group  string       // the price group's id
	Unit   money.Amount // price each at that quantity
	Less   money.Amount // how much lower than now
}

// Drops lists, for every quantity of the ladder above the job's own, the groups whose price each would be lower, in
// ascending quantity; within one quantity the group that falls most comes first.
func (r Result) Drops() []Drop {
	var out []Drop
	for _, s := range r.Ladder {
		if s.Unserved || s.Pieces <= r.Pieces {
			continue
		}
		for _, g := range r.Groups {
			if d, ok := r.drop(s, g); ok {
				out = append(out, d)
			}
		}
	}
	sort.SliceStable(out, func(i, j int) bool {
		if out[i].Pieces != out[j].Pieces {
			return out[i].Pieces < out[j].Pieces
		}
		return out[i].Less.Cmp(out[j].Less) > 0
	})
	return out
}

func (r Result) drop(s Step, g Group) (Drop, bool) {
	for _, id := range g.Lines {
		u, ok := s.Units[id]
		if !ok {
			continue
		}
		less := Less(g.UnitPrice, u)
		d := Drop{Pieces: s.Pieces, More: s.Pieces - r.Pieces, Group: g.ID, Unit: u, Less: less}
		return d, less.Sign() > 0
	}
	return Drop{}, false
}

// NextBreak is the first drop worth saying out loud: at least one part in twenty of the price each. Where none is that
// large it is the first of all.
func (r Result) NextBreak() (Drop, bool) {
	drops := r.Drops()
	for _, d := range drops {
		if worthSaying(d) {
			return d, true
		}
	}
	if len(drops) > 0 {
		return drops[0], true
	}
	return Drop{}, false
}

func worthSaying(d Drop) bool {
	places := max(placesOf(d.Less), placesOf(d.Unit))
	less, _ := d.Less.Minor(places)
	unit, _ := d.Unit.Minor(places)
	return less*20 >= unit+less
}
