package present

import (
	"maps"
	"strconv"

	"pressworth/quote"
	"pressworth/quote/money"
)

// ladderColumns is how many quantities of the ladder stand in the panel; the curve shows all.
const ladderColumns = 5

// rung is a quantity of the ladder, or the job's own.
type rung struct {
	pieces   int
	own      bool
	unserved bool
	each     money.Amount
	total    money.Amount
	units    map[string]money.Amount
	methods  map[string]string
}

func (c *Counter) ladder() Ladder {
	all := c.rungs()
	kept := thin(all)
	var l Ladder
	for _, r := range kept {
		l.Columns = append(l.Columns, LadderColumn{Pieces: Grouped(strconv.Itoa(r.pieces)), Own: r.own})
	}
	for _, g := range c.result.Groups {
		if g.Pieces > 0 && len(l.Rows) < 3 {
			l.Rows = append(l.Rows, c.ladderRow(g, kept))
		}
	}
	order := LadderRow{Name: "order"}
	for _, r := range kept {
		order.Values = append(order.Values, orDash(!r.unserved, r.total))
	}
	l.Rows = append(l.Rows, order)
	l.Points, l.Cliffs = points(all), c.ladderCliffs()
	return l
}

// rungs are the steps of the ladder with the job's own quantity merged in.
func (c *Counter) rungs() []rung {
	r := c.result
	own := rung{
		pieces: r.Pieces, own: true, each: quote.PerPiece(r.Price.Goods, r.Pieces), total: r.Price.Total,
		units: map[string]money.Amount{}, methods: map[string]string{},
	}
	for _, m := range r.Methods {
		own.methods[m.Placement] = m.Card
	}
	for _, g := range r.Garments {
		own.units[g.ID] = g.UnitPrice
	}
	var out []rung
	placed := false
	for _, s := range r.Ladder {
		if !placed && s.Pieces >= own.pieces {
			out, placed = append(out, own), true
		}
		if s.Pieces != own.pieces {
			out = append(out, rung{
				pieces: s.Pieces, unserved: s.Unserved, each: s.Each, total: s.Total, units: s.Units,
				methods: s.Methods,
			})
		}
	}
	if !placed {
		out = append(out, own)
	}
	return out
}

// thin keeps as many rungs as there are columns: those within a tenth of the job's own quantity go first, then those
// farthest from it.
func thin(all []rung) []rung {
	own := 0
	for i, r := range all {
		if r.own {
			own = i
		}
	}
	kept := make([]rung, 0, len(all))
	for _, r := range all {
		if d := r.pieces - all[own].pieces; r.own || len(all) <= ladderColumns || 10*max(d, -d) > all[own].pieces {
			kept = append(kept, r)
		}
	}
	for len(kept) > ladderColumns {
		if farther(kept) {
			kept = kept[1:]
			continue
		}
		kept = kept[:len(kept)-1]
	}
	return kept
}

// farther says whether the first rung is farther from the job's own, in steps, than the last.
func farther(kept []rung) bool {
	for i, r := range kept {
		if r.own {
			return i > len(kept)-1-i
		}
	}
	return false
}

func (c *Counter) ladderRow(g quote.Group, kept []rung) LadderRow {
	row := LadderRow{Name: c.groupNoun(g)}
	if row.Name == "piece" || c.sharedNoun(g) {
		row.Name = lower(c.groupName(g))
	}
	for _, r := range kept {
		u, ok := unit(g, r)
		row.Values = append(row.Values, orDash(ok && !r.unserved, u))
	}
	return row
}

// sharedNoun says whether another group is called the same in a sentence.
func (c *Counter) sharedNoun(g quote.Group) bool {
	for _, o := range c.result.Groups {
		if o.ID != g.ID && o.Pieces > 0 && c.groupNoun(o) == c.groupNoun(g) {
			return true
		}
	}
	return false
}

func unit(g quote.Group, r rung) (money.Amount, bool) {
	for _, id := range g.Lines {
		if u, ok := r.units[id]; ok {
			return u, true
		}
	}
	return money.Amount{}, false
}

func orDash(ok bool, a money.Amount) string {
	if !ok {
		return "–"
	}
	return Amount(a)
}

func points(all []rung) []LadderPoint {
	var out []LadderPoint
	var below map[string]string
	for _, r := range all {
		if r.unserved {
			continue
		}
		p := LadderPoint{Pieces: r.pieces, Each: drawn(r.each.String()), Label: Amount(r.each), Own: r.own}
		p.Break = below != nil && !maps.Equal(below, r.methods)
		out, below = append(out, p), r.methods
	}
	return out
}
