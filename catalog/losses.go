package catalog

import (
	"cmp"
	"fmt"
	"slices"

	"pressworth/quote"
	"pressworth/quote/money"
)

// Loss is a finished job that left nothing, with the reasons, the largest first.
type Loss struct {
	Number, Customer, Title string
	Left                    money.Amount // below 0
	Planned                 money.Amount
	Why                     []string
}

// losses are the jobs that lost money, the worst first.
func losses(jobs []Done) (out []Loss) {
	for _, d := range jobs {
		if d.Outturn.Left.Sign() < 0 {
			out = append(out, Loss{Number: d.Number, Customer: d.Customer, Title: d.Title, Left: d.Outturn.Left, Planned: d.Outturn.Planned, Why: d.why()})
		}
	}
	slices.SortStableFunc(out, func(a, b Loss) int { return a.Left.Cmp(b.Left) })
	return out
}

// why says what took from a job's earnings.
func (d Done) why() (why []string) {
	type reason struct {
		amount money.Amount
		text   string
	}
	var all []reason
	if o := d.Outturn; o.Planned.Sign() <= 0 {
		all = append(all, reason{amount: quote.Less(money.Amount{}, o.Planned), text: "it was priced below cost: planned to leave " + o.Planned.String()})
	}
	if a := d.Outturn.Time; a.Sign() > 0 {
		all = append(all, reason{amount: a, text: fmt.Sprintf("%.0f minutes instead of %.0f: %s", d.took(), d.planned(), a)})
	}
	for _, c := range d.Outturn.Suppliers {
		if c.More.Sign() > 0 {
			all = append(all, reason{amount: c.More, text: fmt.Sprintf("%s charged %s instead of %s", c.Supplier, c.Amount, c.Planned)})
		}
	}
	slices.SortStableFunc(all, func(a, b reason) int { return -a.amount.Cmp(b.amount) })
	for _, r := range all {
		why = append(why, r.text)
	}
	if d.Spoiled > 0 {
		why = append(why, counted(d.Spoiled, "piece")+" spoiled")
	}
	return why
}

// Worst sorts finished jobs by what they left, the least first.
func Worst(jobs []Done) []Done {
	jobs = slices.Clone(jobs)
	slices.SortStableFunc(jobs, func(a, b Done) int {
		return cmp.Or(a.Outturn.Left.Cmp(b.Outturn.Left), cmp.Compare(a.Number, b.Number))
	})
	return jobs
}
