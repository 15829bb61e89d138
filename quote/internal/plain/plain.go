// Package plain works out a job the slow way: every rule as it is told, one after the other, in exact fractions, with
// nothing remembered and nothing clever. It exists to be held against package quote, with which it shares the types of
// a job and no code. It expects a job without mistakes.
//
// Not in this package: the checks of a job, the packing of sheets and rolls (a Planner is handed in), and texts for
// people.
package plain

import (
	"errors"
	"math/big"

	"pressworth/quote"
)

// Item is a placement at one of its sizes, as a planner sees it; lengths in the job's unit.
type Item struct {
	Placement, Variant int
	Characters         int // of names and numbers: texts of one length; else 0
	W, H               *big.Rat
	Turn               bool
	Inks               []string // names; nil with Count > 0
	Count              int      // of inks that are shared with nobody
	Need               int
}

// Run is some of the items printed together; Cost has its setups in it.
type Run struct {
	Items []int
	Cost  *big.Rat
}

// A Planner finds the cheapest runs of items on a sheet or roll card; false where they do not fit.
type Planner interface {
	Plan(card quote.RateCard, items []Item) ([]Run, bool)
}

// Key names a cost line.
type Key struct{ Kind, Ref string }

// ErrUnserved says that no card serves a placement.
var ErrUnserved = errors.New("no card serves a placement")

// Figures are what a job comes to; amounts in major units, unrounded ones said as such.
type Figures struct {
	Pieces   int
	Cost     *big.Rat
	Lines    map[Key]*big.Rat
	Split    map[string]map[Key]*big.Rat // by garment line
	Spares   map[string][]int            // by garment line, in the order of its sizes
	Unit     map[string]*big.Rat         // u by garment line
	Sizes    map[string][]*big.Rat       // price by garment line and size
	Methods  map[string]string
	RunnerUp map[string]RunnerUp
	Totals   Totals
	Hours    *big.Rat // exact
	Margin   *big.Rat // exact percent; nil where there is none
	PerHour  *big.Rat // exact; nil where there is none
	Ladder   []Step
	Cliffs   []Cliff
}

// RunnerUp is the best way with another card.
type RunnerUp struct {
	Card string
	Cost *big.Rat
}

// Totals are what is paid.
type Totals struct {
	Goods, MinimumOrder, Rush, Discount, Extras, Art, Delivery, Subtotal *big.Rat
	Tax, CardFee, AbsorbedFee, Total, Deposit, Balance                   *big.Rat
}

// Step is a quantity of the ladder.
type Step struct {
	Pieces                   int
	Unserved                 bool
	Each, Goods, Total, Cost *big.Rat
	Units                    map[string]*big.Rat
	Methods                  map[string]string
}

// Cliff is a larger quantity with a lower total.
type Cliff struct {
	From, To int
	Saves    *big.Rat
}

// Price works a job out.
func Price(job quote.Job, planner Planner) (Figures, error) {
	j := &work{Job: job, planner: planner}
	own, err := j.at(quantities(job), true)
	if err != nil {
		return Figures{}, err
	}
	ladder := j.ladder()
	j.neverRise(own, ladder)
	f := j.figures(own)
	f.Ladder = j.steps(ladder)
	f.Cliffs = j.cliffs(own, ladder)
	return f, nil
}

// work is a job being worked out.
type work struct {
	quote.Job
	planner Planner
}

// quantities are the pieces of each size of each garment line.
func quantities(job quote.Job) [][]int {
	var all [][]int
	for _, g := range job.Garments {
		var line []int
		for _, s := range g.Sizes {
			line = append(line, s.Qty)
		}
		all = append(all, line)
	}
	return all
}

// scaled are the job's quantities shared out to another total.
func scaled(job quote.Job, total int) [][]int {
	var weights []*big.Rat
	for _, g := range job.Garments {
		for _, s := range g.Sizes {
			weights = append(weights, whole(s.Qty))
		}
	}
	parts := share(whole(total), weights, 0)
	var all [][]int
	for _, g := range job.Garments {
		var line []int
		for range g.Sizes {
			line = append(line, toInt(parts[0]))
			parts = parts[1:]
		}
		all = append(all, line)
	}
	return all
}

// places of the currency after the point.
func (j *work) places() int {
	switch j.Currency {
	case "JPY", "KRW", "VND", "CLP", "ISK":
		return 0
	case "KWD", "BHD", "TND", "JOD", "OMR":
		return 3
	}
	return 2
}

func (j *work) cents(x *big.Rat) *big.Rat { return round(x, j.places()) }
