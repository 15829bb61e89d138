package present

import (
	"fmt"
	"math/big"
	"strings"

	"pressworth/quote"
)

// drawnPieces is the most pieces of one layout that are drawn.
const drawnPieces = 120

func (c *Counter) sheets() []Sheet {
	var out []Sheet
	for _, p := range c.result.Plans {
		for i, r := range p.Runs {
			s := c.sheet(p, r)
			if i == 0 {
				s.Left = c.left(p)
			}
			out = append(out, s)
		}
	}
	return out
}

func (c *Counter) sheet(p quote.Plan, r quote.Run) Sheet {
	kind, _ := c.cardKind(p.Card)
	s := Sheet{
		Card: c.cardName(p.Card), Kind: kind, Width: drawn(r.Width), Height: drawn(r.Height),
		Roll: r.Length != "", Edge: c.edge(p.Card, r.Size), Title: title(r), Amount: Amount(p.Cost),
	}
	details := []string{wholePercent(r.UsedPercent) + " % used", quality(p)}
	if r.Inks > 0 {
		details = append([]string{count(r.Inks, "ink")}, details...)
	}
	if room := c.room(r); room != "" {
		details = append(details, room)
	}
	s.Detail = strings.Join(details, " · ")
	for _, x := range r.Pieces {
		if len(s.Pieces) == drawnPieces {
			s.Clipped = len(r.Pieces) - drawnPieces
			break
		}
		s.Pieces = append(s.Pieces, c.sheetPiece(x))
	}
	return s
}

// leastOffered is the shortest side of free room, in inches, that is worth offering.
const leastOffered = 2

// room says what every sheet could carry beside, for the shop to offer.
func (c *Counter) room(r quote.Run) string {
	switch {
	case r.Room == nil:
		return ""
	case r.Room.More > 0:
		return fmt.Sprintf("room for %d more %s on each", r.Room.More, lower(c.placementName(r.Room.Placement)))
	case drawn(r.Room.W) >= leastOffered && drawn(r.Room.H) >= leastOffered:
		return "free room of " + inches(r.Room.W, r.Room.H) + " on each"
	}
	return ""
}

func title(r quote.Run) string {
	if r.Length != "" {
		return fmt.Sprintf("%s of %s in, roll %s wide", figures(r.Sheets, "length"), trim(r.Length), trim(r.Width))
	}
	return figures(r.Sheets, "sheet") + " of " + inches(r.Width, r.Height)
}

// wholePercent rounds a percentage for reading.
func wholePercent(s string) string {
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		return "–"
	}
	return r.FloatString(0)
}

// quality says how good a plan is: nothing can be cheaper, or by how much at most.
func quality(p quote.Plan) string {
	if p.Cost.Cmp(p.Bound) <= 0 {
		return "best possible"
	}
	if p.Bound.Sign() <= 0 {
		return "a good plan"
	}
	over := new(big.Rat).Quo(p.Cost.Rat(), p.Bound.Rat())
	over.Sub(over, big.NewRat(1, 1)).Mul(over, big.NewRat(100, 1))
	whole := new(big.Int).Quo(over.Num(), over.Denom())
	if !over.IsInt() {
		whole.Add(whole, big.NewInt(1))
	}
	return fmt.Sprintf("within %s %% of the best possible", whole)
}

// left says how many copies stay for the shelf.
func (c *Counter) left(p quote.Plan) string {
	n := 0
	for _, l := range c.result.Leftovers {
		if onPlan(p, l.Placement) {
			n += l.Copies
		}
	}
	if n == 0 {
		return ""
	}
	return figures(n, "copy") + " left for the shelf"
}

func onPlan(p quote.Plan, placement string) bool {
	for _, r := range p.Runs {
		for _, x := range r.Pieces {
			if x.Placement == placement {
				return true
			}
		}
	}
	return false
}

func (c *Counter) sheetPiece(x quote.PlacedPiece) SheetPiece {
	label := lower(c.placementName(x.Placement))
	w, h := x.W, x.H
	if x.Turned {
		w, h = h, w
	}
	if x.Text != "" {
		label = x.Text
	} else {
		label += " " + inches(w, h)
	}
	return SheetPiece{X: drawn(x.X), Y: drawn(x.Y), W: drawn(x.W), H: drawn(x.H), Label: label, Turned: x.Turned}
}

// edge is the border of a sheet that stays free.
func (c *Counter) edge(card, size string) float64 {
	for _, k := range c.job.RateCards {
		if k.ID != card {
			continue
		}
		for _, s := range k.Sizes {
			if s.Name == size {
				return drawn(s.Edge.String())
			}
		}
		return drawn(k.Edge.String())
	}
	return 0
}
