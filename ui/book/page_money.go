package book

import (
	"context"
	"errors"

	"fyne.io/fyne/v2"

	"pressworth/catalog"
	"pressworth/quote"
	"pressworth/ui/form"
	"pressworth/ui/look"
	"pressworth/ui/parts"
	"pressworth/ui/present"
)

// money is what the job comes to, what of it is paid, and where a payment is taken down.
func (q *quotePage) money() fyne.CanvasObject {
	h, a := q.head, q.head.Account
	total := parts.NewText(or(present.Grouped(h.Total), "–"), parts.DisplayStyle)
	open := q.agreed()
	if open {
		total.SetText(present.Amount(a.Total))
	}
	margin := parts.Column(0, parts.NewText("margin", parts.CaptionStyle.Right()), parts.NewText(or(percent(h.Margin), "–"), parts.KeyStyle.Right()))
	top := parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, parts.Column(0, parts.NewText("total with tax", parts.CaptionStyle), total), margin)
	rows := parts.Column(8, top)
	if !open {
		if a.Deposit.Sign() > 0 {
			rows.Add(sumRow("deposit asked for", present.Amount(a.Deposit), parts.MutedStyle))
		}
		return parts.NewSection("Money", "", rows)
	}
	rows.Add(parts.NewRule())
	for _, p := range a.Payments {
		rows.Add(q.paymentRow(p))
	}
	if due := a.DepositDue(); due.Sign() > 0 {
		rows.Add(sumRow("deposit still due", present.Amount(due), parts.Style{Color: look.Warn}))
	}
	style := parts.StrongStyle
	words := "balance"
	if a.Balance.Sign() <= 0 {
		words, style = "paid in full", parts.StrongStyle.In(look.Accent)
	}
	rows.Add(sumRow(words, present.Amount(a.Balance), style))
	if a.Balance.Sign() > 0 {
		rows.Add(parts.NewRule())
		rows.Add(q.payForm())
	}
	return parts.NewSection("Money", "", rows)
}

func sumRow(name, amount string, style parts.Style) fyne.CanvasObject {
	return parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, parts.NewText(name, style.Shortened()), parts.NewText(amount, style.Right()))
}

func (q *quotePage) paymentRow(p catalog.Payment) fyne.CanvasObject {
	words := q.place.near(p.On) + " · " + p.Way
	if p.Deposit {
		words += ", deposit"
	}
	if p.Note != "" {
		words += " · " + p.Note
	}
	back := parts.NewSmallDeed(parts.Link, "Take back", func() { q.dropPayment(p) })
	return parts.Row(8, []parts.Track{parts.Share(1), parts.Fit(), parts.Fit()},
		parts.NewText(words, parts.MutedStyle.Shortened()), back, parts.NewText(present.Amount(p.Amount), parts.BodyStyle.Right()))
}

// payForm takes a payment down: amount, way and day; the whole balance, or the deposit where it is due, stands there.
func (q *quotePage) payForm() fyne.CanvasObject {
	f := form.New()
	amount := f.Number("amount", "Amount", "")
	due := q.head.Account.Balance
	deposit := q.head.Account.DepositDue()
	if deposit.Sign() > 0 {
		due = deposit
	}
	way := f.Choice("way", "Way", parts.Words(catalog.PayWays...))
	day := f.Text("on", "Day", "today")
	note := f.Text("note", "Note", "never a card number")
	f.Set("amount", due.String())
	f.Set("way", catalog.PayWays[0])
	pay := func() { q.pay(f, deposit.Sign() > 0) }
	for _, path := range []string{"amount", "on", "note"} {
		f.Field(path).OnSubmitted = func(string) { pay() }
	}
	word := "Record payment"
	if deposit.Sign() > 0 {
		word = "Record deposit"
	}
	return parts.Column(8, f.Rest(), parts.Fields(96, amount, way, day), note,
		parts.Row(8, []parts.Track{parts.Share(1), parts.Fit()}, parts.Gap(0, 0), parts.NewDeed(parts.Quiet, word, "", pay)))
}

// pay records a payment; what is wrong with it stands beside its field.
func (q *quotePage) pay(f *form.Form, deposit bool) {
	r := form.Reader{Get: f.Get}
	p := catalog.Payment{QuoteID: q.id, On: q.place.today(), Way: f.Get("way"), Amount: r.Amount("amount"), Note: r.Text("note"), Deposit: deposit}
	if typed := r.Text("on"); typed != "" {
		day, ok := pastDate(typed, q.place.Now())
		if !ok {
			r.Say("on", errNoDay.Error())
		}
		p.On = day
	}
	if problems := append(r.Problems, p.Check()...); len(problems) > 0 {
		f.Show(problems)
		return
	}
	f.Show(nil)
	parts.Background(func() func() {
		kept, err := q.place.Ledger.Pay(context.Background(), p)
		return func() {
			if f.Show(paymentProblems(err)); err == nil {
				q.paid(kept)
			}
		}
	})
}

// paymentProblems puts what the shop file has against a payment beside its field.
func paymentProblems(err error) []quote.Problem {
	var over catalog.OverBalance
	var found quote.Problems
	switch {
	case err == nil:
		return nil
	case errors.As(err, &over):
		return []quote.Problem{{Path: "amount", Problem: "more than is owed: enter " + over.Balance.String() + " or less"}}
	case errors.As(err, &found):
		return found
	}
	return []quote.Problem{{Path: "payment", Problem: err.Error()}}
}

// paid tells of a payment that was recorded, with its way back.
func (q *quotePage) paid(p catalog.Payment) {
	q.place.act("The payment", present.Amount(p.Amount)+" recorded, paid by "+p.Way+".", func(context.Context) error { return nil },
		&step{done: "The payment of " + present.Amount(p.Amount) + " is taken back.", back: func(ctx context.Context) error {
			return q.place.Ledger.RemovePayment(ctx, p.ID)
		}})
}

func (q *quotePage) dropPayment(p catalog.Payment) {
	q.place.act("The payment could not be taken back", "The payment of "+present.Amount(p.Amount)+" is taken back.", func(ctx context.Context) error {
		return q.place.Ledger.RemovePayment(ctx, p.ID)
	}, &step{done: "The payment of " + present.Amount(p.Amount) + " is recorded again.", back: func(ctx context.Context) error {
		again := p
		again.ID = 0
		_, err := q.place.Ledger.Pay(ctx, again)
		return err
	}})
}
