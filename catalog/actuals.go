package catalog

import (
	"pressworth/quote"
	"pressworth/quote/money"
)

// Actuals are what a finished job really took.
type Actuals struct {
	SetUpMinutes    money.Number
	PressingMinutes money.Number
	Spoiled         int       // pieces
	Invoices        []Invoice // what suppliers charged
	Note            string
	On              string // 2006-01-02: finished
}

// Invoice is what a supplier charged for a job.
type Invoice struct {
	Supplier string       `json:"supplier"` // key or name
	Number   string       `json:"number,omitempty"`
	Amount   money.Amount `json:"amount"`
}

// Check gives what is wrong with actuals.
func (a Actuals) Check() []quote.Problem {
	var e entries
	if a.SetUpMinutes.Sign() < 0 {
		e.say("set_up_minutes", "enter minutes of 0 or more")
	}
	if a.PressingMinutes.Sign() < 0 {
		e.say("pressing_minutes", "enter minutes of 0 or more")
	}
	if a.Spoiled < 0 || a.Spoiled > maxCount {
		e.say("spoiled", "enter 0 to 100000 pieces")
	}
	for _, i := range a.Invoices {
		e.line("invoices.number", i.Number, false)
		if i.Amount.Sign() < 0 {
			e.say("invoices.amount", "enter an amount of 0 or more, like 12.50")
		}
	}
	e.date("on", a.On)
	return e.problems
}

// Outcome is a quote that has been decided, with what it was frozen as, for statistics and reports.
type Outcome struct {
	QuoteRow
	CustomerID int64
	Decided    string // 2006-01-02: accepted or declined
	Finished   string // 2006-01-02, or empty
	Why        string // why it was declined
	Subtotal   string // of the revision that was decided upon
	Cost       string
	Hours      string // two places
	Actuals    *Actuals
	RevisionID int64 // 0: none was frozen
}
