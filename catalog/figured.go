package catalog

import (
	"pressworth/quote"
)

// Figured is a decided quote as reports and learning see it. What it is called, and in which state it is, is not kept
// with its figures.
type Figured struct {
	Sale    Sale
	Done    *Done  `json:",omitempty"` // of a finished job with what it took
	Altered string `json:",omitempty"` // why there are no figures: what it was decided upon is not as it was frozen
}

// FiguredOf works a decided quote's figures out from the revision that it was decided upon.
func FiguredOf(o Outcome, job quote.Job, r quote.Result) Figured {
	f := Figured{Sale: SaleOf(o, job, r)}
	if o.State == Finished && o.Actuals != nil {
		d := DoneOf(o.QuoteRow, job, r, *o.Actuals)
		f.Done = &d
	}
	return f
}

// Named gives figures the name and the state that their quote has now.
func (f Figured) Named(o Outcome) Figured {
	f.Sale.Number, f.Sale.Customer, f.Sale.Won, f.Sale.Decided = o.Number, o.Customer, o.won(), o.Decided
	if f.Done != nil {
		f.Done.Number, f.Done.Customer, f.Done.Title = o.Number, o.Customer, o.Title
	}
	return f
}

func (o Outcome) won() bool { return o.State == Accepted || o.State == Finished }

// Sales are the figures that reports count.
func Sales(all []Figured) []Sale {
	sales := make([]Sale, 0, len(all))
	for _, f := range all {
		if f.Altered == "" {
			sales = append(sales, f.Sale)
		}
	}
	return sales
}

// FinishedJobs are the figures that the shop learns from.
func FinishedJobs(all []Figured) []Done {
	var done []Done
	for _, f := range all {
		if f.Done != nil {
			done = append(done, *f.Done)
		}
	}
	return done
}

// LeftOut says of which quotes there are no figures, and why.
func LeftOut(all []Figured) (why []string) {
	for _, f := range all {
		if f.Altered != "" {
			why = append(why, f.Altered)
		}
	}
	return why
}
