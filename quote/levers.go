package quote

import (
	"slices"

	"pressworth/quote/money"
)

// Names of what Levers varies.
const (
	LeverWage      = "wage"
	LeverBlanks    = "blanks"
	LeverTransfers = "transfers"
	LeverMinutes   = "minutes"
	LeverSpoilage  = "spoilage"
	LeverMargin    = "margin"
)

// Lever is what a tenth less and a tenth more of one thing would do to the subtotal: how far it would move, by the same
// rules, from Base. Prices are worked out to the minor unit for this, and no typed price holds, so that steps of
// rounding do not hide what is asked.
type Lever struct {
	Name string
	Base money.Amount // the subtotal as it is
	Less money.Amount // change of the subtotal at nine tenths, mostly negative
	More money.Amount // change at eleven tenths
}

// Levers finds what would change the price of a job most, the strongest first. The error, if any, is Problems.
func Levers(job Job) ([]Lever, error) { return NewMemory().Levers(job) }

// Levers is like the function of that name.
func (k *Memory) Levers(job Job) ([]Lever, error) {
	job = bare(job)
	base, err := k.subtotal(job)
	if err != nil {
		return nil, err
	}
	out := make([]Lever, 0, len(levers))
	for _, l := range levers {
		less, err := k.subtotal(l.turn(copyForLevers(job), 9))
		if err != nil {
			continue // a tenth less cannot be priced: nothing to say
		}
		more, err := k.subtotal(l.turn(copyForLevers(job), 11))
		if err != nil {
			continue
		}
		out = append(out, Lever{Name: l.name, Base: base, Less: Less(less, base), More: Less(more, base)})
	}
	slices.SortStableFunc(out, func(a, b Lever) int { return b.reach().Cmp(a.reach()) })
	return out, nil
}

// reach is the distance between the two ends.
func (l Lever) reach() money.Amount {
	d := Less(l.More, l.Less)
	if d.Sign() < 0 {
		return Less(l.Less, l.More)
	}
	return d
}

func (k *Memory) subtotal(job Job) (money.Amount, error) {
	r, err := k.First(job)
	return r.Price.Subtotal, err
}

// bare takes off a job what would hide a small change: steps, typed prices, the minimum order, the ladder.
func bare(job Job) Job {
	job.Frozen, job.Ladder = nil, nil
	job.Pricing.Step, job.Pricing.MinimumOrder = money.Amount{}, money.Amount{}
	job.Garments = slices.Clone(job.Garments)
	for i := range job.Garments {
		job.Garments[i].Price = nil
	}
	return job
}

// copyForLevers copies the lists of a job that a lever writes into.
func copyForLevers(job Job) Job {
	job.Garments = slices.Clone(job.Garments)
	job.RateCards = slices.Clone(job.RateCards)
	job.Pricing.Percents = slices.Clone(job.Pricing.Percents)
	return job
}

// levers turn one thing of a copied job to some tenths of what it is.
var levers = []struct {
	name string
	turn func(job Job, tenths int64) Job
}{
	{LeverWage, func(j Job, n int64) Job {
		j.Shop.WagePerHour = tenthsOf(j.Shop.WagePerHour, n)
		return j
	}},
	{LeverBlanks, turnBlanks},
	{LeverTransfers, turnTransfers},
	{LeverMinutes, turnMinutes},
	{LeverSpoilage, func(j Job, n int64) Job {
		j.Shop.Spares.GarmentPercent = tenths(j.Shop.Spares.GarmentPercent, n)
		j.Shop.Spares.TransferPercent = tenths(j.Shop.Spares.TransferPercent, n)
		return j
	}},
	{LeverMargin, func(j Job, n int64) Job {
		j.Pricing.Percent = tenths(j.Pricing.Percent, n)
		for i := range j.Pricing.Percents {
			j.Pricing.Percents[i].Percent = tenths(j.Pricing.Percents[i].Percent, n)
		}
		j.Pricing.BlankPercent = tenths(j.Pricing.BlankPercent, n)
		j.Pricing.PerHour = tenthsOf(j.Pricing.PerHour, n)
		return j
	}},
}
