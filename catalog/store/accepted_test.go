package store_test

import (
	"errors"
	"strings"
	"testing"

	"pressworth/catalog"
	"pressworth/catalog/store"
	"pressworth/quote"
	"pressworth/quote/money"
)

func TestPay_aboveTheBalanceIsRefusedWithTheBalance(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	pay := catalog.Payment{QuoteID: 1, On: day, Way: "cash", Amount: amount(t, "100.00"), Deposit: true}
	kept, err := s.Pay(ctx, pay)
	must(t, err)
	a, err := s.Account(ctx, 1)
	must(t, err)
	if quote.Sum(a.Paid, a.Balance).Cmp(amount(t, r.Total)) != 0 || a.Paid.String() != "100.00" || a.Deposit.String() != r.Deposit {
		t.Errorf("paid %s, balance %s, deposit %s of %s", a.Paid, a.Balance, a.Deposit, r.Total)
	}
	pay.Amount = quote.Sum(a.Balance, amount(t, "0.01"))
	var over catalog.OverBalance
	if _, err := s.Pay(ctx, pay); !errors.As(err, &over) || over.Balance.Cmp(a.Balance) != 0 || !strings.Contains(err.Error(), a.Balance.String()) {
		t.Errorf("a cent too much: %v", err)
	}
	pay.Amount = a.Balance
	_, err = s.Pay(ctx, pay)
	must(t, err)
	if h := head(t, s, 1); h.Account.Balance.Sign() != 0 || h.Paid != r.Total {
		t.Errorf("paid in full: balance %s, paid %s", h.Account.Balance, h.Paid)
	}
	must(t, s.RemovePayment(ctx, kept.ID))
	if a, err = s.Account(ctx, 1); err != nil || a.Balance.String() != "100.00" {
		t.Errorf("after taking one back: balance %s, %v", a.Balance, err)
	}
	for name, change := range map[string]func(*catalog.Payment){
		"a wrong day": func(p *catalog.Payment) { p.On = "31/05/2026" }, "no way": func(p *catalog.Payment) { p.Way = "iou" },
		"nothing": func(p *catalog.Payment) { p.Amount = money.Amount{} }, "a card number": func(p *catalog.Payment) { p.Note = "card 4111 1111-1111 1111" },
	} {
		wrong := catalog.Payment{QuoteID: 1, On: day, Way: "cash", Amount: amount(t, "1.00")}
		change(&wrong)
		var problems quote.Problems
		if _, err := s.Pay(ctx, wrong); !errors.As(err, &problems) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func TestAccept_purchasesAreCombinedAndMoveTheSteps(t *testing.T) {
	s := demoStore(t)
	needed := 0
	for _, id := range []int64{1, 3} {
		r := sent(t, s, id)
		must(t, s.Accept(ctx, id, r.ID, day, ""))
		whole, err := s.Revision(ctx, r.ID)
		must(t, err)
		_, result, err := whole.Open()
		must(t, err)
		for _, b := range result.Purchases.Blanks {
			for _, z := range b.Sizes {
				needed += z.Qty
			}
		}
	}
	list, err := s.PurchaseList(ctx, false)
	must(t, err)
	blanks := 0
	var ids []int64
	for _, row := range list {
		if row.Kind == catalog.ShelfBlank {
			blanks += row.Needed
		}
		if row.SupplierName == "" || row.Open() != row.Needed {
			t.Errorf("row %+v", row)
		}
		for _, q := range row.Quotes {
			ids = append(ids, q.ID)
		}
	}
	if blanks != needed || needed == 0 {
		t.Errorf("%d blanks on the list, the results need %d", blanks, needed)
	}
	must(t, s.MarkPurchase(ctx, ids, store.PurchaseOrdered, ""))
	if _, ok := catalog.Taken(head(t, s, 1).Steps, catalog.GoodsOrdered); !ok {
		t.Error("all ordered, and the step is not taken")
	}
	first := list[0].Quotes[0]
	must(t, s.ReceivePart(ctx, first.ID, first.Needed-1, 1, "one short"))
	if _, ok := catalog.Taken(head(t, s, first.QuoteID).Steps, catalog.GoodsIn); ok {
		t.Error("one short, and the goods are in")
	}
	all, err := s.PurchaseList(ctx, true)
	must(t, err)
	if all[0].Short != 1 || all[0].Awaited() != all[0].Needed-first.Needed || all[0].Quotes[0].Note != "one short" {
		t.Errorf("a short delivery: %+v", all[0])
	}
	must(t, s.MarkPurchase(ctx, ids, store.PurchaseReceived, ""))
	if list, err = s.PurchaseList(ctx, false); err != nil || len(list) != 0 {
		t.Errorf("all here: %+v, %v", list, err)
	}
	if h := head(t, s, 3); h.NextStep != "get artwork approved" || len(h.Steps) != 2 {
		t.Errorf("next step %q, steps %v", h.NextStep, h.Steps)
	}
}

func TestAccept_anewKeepsWhatHasBeenOrdered(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 3)
	must(t, s.Accept(ctx, 3, r.ID, day, ""))
	list, err := s.PurchaseList(ctx, true)
	must(t, err)
	must(t, s.MarkPurchase(ctx, []int64{list[0].Quotes[0].ID}, store.PurchaseOrdered, ""))
	r = sent(t, s, 3)
	if h := head(t, s, 3); h.State != catalog.Accepted {
		t.Fatalf("a revision of an accepted quote makes it %s", h.State)
	}
	must(t, s.Accept(ctx, 3, r.ID, day, ""))
	again, err := s.PurchaseList(ctx, true)
	if err != nil || len(again) != len(list) || again[0].Ordered != list[0].Needed || again[0].Needed != list[0].Needed {
		t.Errorf("got %+v, %v\nwas %+v", again, err, list)
	}
}

func TestTakeStep_onlyOfAcceptedQuotes(t *testing.T) {
	s := demoStore(t)
	step := catalog.Step{Name: catalog.ArtApproved, On: day, Who: "Ada", How: "by e-mail"}
	if err := s.TakeStep(ctx, 1, step); !errors.Is(err, store.ErrTransition) {
		t.Errorf("a draft's step: %v", err)
	}
	r := sent(t, s, 1)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	must(t, s.TakeStep(ctx, 1, step))
	if h := head(t, s, 1); len(h.Steps) != 1 || h.Steps[0] != step || h.NextStep != "order goods" {
		t.Errorf("got %v, next %q", h.Steps, h.NextStep)
	}
	must(t, s.UndoStep(ctx, 1, catalog.ArtApproved))
	if h := head(t, s, 1); len(h.Steps) != 0 || h.NextStep != "get artwork approved" {
		t.Errorf("taken back: %v, next %q", h.Steps, h.NextStep)
	}
	if err := s.TakeStep(ctx, 1, catalog.Step{Name: "danced", On: "x"}); err == nil {
		t.Error("an unknown step on no day went through")
	}
}

func TestApproval_isFoundByTheNumber(t *testing.T) {
	s := demoStore(t)
	r := sent(t, s, 1)
	must(t, s.Accept(ctx, 1, r.ID, day, ""))
	number := head(t, s, 1).Number
	if x, err := s.Approval(ctx, number); err != nil || x.On != "" {
		t.Errorf("nobody has approved it, yet: %+v, %v", x, err)
	}
	want := catalog.Step{Name: catalog.ArtApproved, On: day, Who: "Ines Halvorsen", How: "on the proof, signed"}
	must(t, s.TakeStep(ctx, 1, want))
	if x, err := s.Approval(ctx, number); err != nil || x != want {
		t.Errorf("got %+v, %v, want %+v", x, err, want)
	}
	if x, err := s.Approval(ctx, "no such number"); err != nil || x.On != "" {
		t.Errorf("of no quote: %+v, %v", x, err)
	}
}
