package quote

import (
	"math/big"
	"slices"
	"strings"

	"pressworth/quote/money"
)

// Took is what a finished job really took.
type Took struct {
	Minutes  money.Number            // set-up and pressing
	Invoices map[string]money.Amount // what suppliers charged, by their ids; others count as planned
}

// Outturn is what a job really left, and why it was another amount than planned.
type Outturn struct {
	Planned   money.Amount // subtotal less cost and absorbed fee
	Left      money.Amount // Planned less Time less what each supplier charged more
	Time      money.Amount // labour and overhead of the minutes beyond the plan; negative: saved
	Suppliers []Charged    // those with an invoice, by id
}

// Charged is what a supplier was planned to charge, and charged.
type Charged struct {
	Supplier string
	Planned  money.Amount // goods and freight
	Amount   money.Amount
	More     money.Amount // Amount less Planned
}

// Outturned works out what a priced job left. Minutes beyond the plan cost what a planned one does: labour and overhead
// over the job's hours. Where no hours were planned, time changes nothing.
func Outturned(job Job, r Result, t Took) Outturn {
	o := Outturn{Planned: Less(Less(r.Price.Subtotal, r.Cost.Total), r.Price.AbsorbedFee)}
	o.Left = o.Planned
	if extra := beyondPlan(job, r, t.Minutes); extra.Sign() != 0 {
		o.Time = extra
		o.Left = Less(o.Left, extra)
	}
	for id, amount := range t.Invoices {
		c := Charged{Supplier: id, Planned: BoughtFrom(r, id), Amount: amount}
		c.More = Less(c.Amount, c.Planned)
		o.Left = Less(o.Left, c.More)
		o.Suppliers = append(o.Suppliers, c)
	}
	slices.SortFunc(o.Suppliers, func(a, b Charged) int { return strings.Compare(a.Supplier, b.Supplier) })
	return o
}

// beyondPlan is what the minutes beyond those planned cost, rounded half away from zero.
func beyondPlan(job Job, r Result, minutes money.Number) money.Amount {
	hours, err := money.ParseNumber(r.Hours)
	if err != nil || hours.Sign() <= 0 {
		return money.Amount{}
	}
	var spent []money.Amount
	for _, l := range r.Cost.Lines {
		if l.Kind == KindLabour || l.Kind == KindOverhead {
			spent = append(spent, l.Amount)
		}
	}
	places, _ := money.Places(job.Currency)
	more := minus(over(minutes.Rat(), rat(60)), hours.Rat())
	units, ok := money.Cents(times(over(Sum(spent...).Rat(), hours.Rat()), more, rat(power10(places))))
	if !ok {
		return money.Amount{}
	}
	return money.FromMinor(units, places)
}

// BoughtFrom is what a job was to pay a supplier: goods and freight.
func BoughtFrom(r Result, supplier string) money.Amount {
	var paid []money.Amount
	for _, b := range r.Purchases.Blanks {
		if b.Supplier == supplier {
			paid = append(paid, b.Value)
		}
	}
	for _, t := range r.Purchases.Transfers {
		if t.Supplier == supplier {
			paid = append(paid, t.Value)
		}
	}
	for _, l := range r.Cost.Lines {
		if l.Kind == KindFreight && l.Ref == supplier {
			paid = append(paid, l.Amount)
		}
	}
	return Sum(paid...)
}

// SetUpMinutes is the part of a priced job's time that does not grow with its pieces, allowance included.
func SetUpMinutes(job Job, r Result) *big.Rat {
	minutes := job.Shop.JobSetupMin.Rat()
	pressed := map[string]bool{}
	for _, m := range r.Methods {
		at := cardAt(job.RateCards, m.Card)
		if at < 0 || job.RateCards[at].Press == nil {
			continue
		}
		minutes = plus(minutes, job.Shop.DesignSetupMin.Rat(), job.RateCards[at].Press.PrepMin.Rat())
		pressed[m.Card] = true
	}
	if n := int64(len(pressed)) - 1; n > 0 {
		minutes = plus(minutes, times(job.Shop.ChangeoverMin.Rat(), rat(n)))
	}
	return times(minutes, plusPercent(job.Shop.AllowancePercent))
}

// MarginOf is the margin of what was sold over what it cost, in percent with one place; empty where nothing was sold.
func MarginOf(sold, cost money.Amount) string {
	if sold.Sign() == 0 {
		return ""
	}
	tenths, ok := money.Cents(times(over(minus(sold.Rat(), cost.Rat()), sold.Rat()), rat(1000)))
	if !ok {
		return ""
	}
	return money.FromMinor(tenths, 1).String()
}
