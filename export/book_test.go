package export

import (
	"encoding/csv"
	"strings"
	"testing"

	"pressworth/quote"
	"pressworth/quote/money"
)

func TestReadyText_namesTheOrderAndWhatIsOwed(t *testing.T) {
	job, result := regatta(t)
	text := ReadyText(job, result, money.FromMinor(63069, 2))
	for _, want := range []string{"Hello Ines Halvorsen", "ready to collect", "46 pieces", "2026-0147", "Still to be paid: 630.69 USD", "Harbour & Pine Print Room", "12 Quay Lane, Port Ellery"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in:\n%s", want, text)
		}
	}
	if text := ReadyText(job, result, money.Amount{}); strings.Contains(text, "paid") {
		t.Errorf("nothing is owed, yet it says:\n%s", text)
	}
}

func TestApprovedTicket_saysPlainlyWhenApprovalIsMissing(t *testing.T) {
	job, result := regatta(t)
	if text := words(job, func(d *doc) { d.approval(Approval{}) }); !strings.Contains(text, "NOT approved yet") {
		t.Errorf("got %q", text)
	}
	said := words(job, func(d *doc) { d.approval(Approval{"Ines Halvorsen", "on the proof, signed", "2026-11-26"}) })
	if !strings.Contains(said, "Ines Halvorsen") || !strings.Contains(said, "signed") || strings.Contains(said, "NOT") {
		t.Errorf("got %q", said)
	}
	if pdf, err := Pictured(nil).ApprovedTicket(job, result, Approval{}, date); err != nil || len(pdf) < 1000 {
		t.Errorf("got %d bytes, %v", len(pdf), err)
	}
}

func TestBuyingList_addsUpItsPieces(t *testing.T) {
	job, _ := regatta(t)
	lines := []Bought{{"LS-240 Long-sleeve tee", "navy", "M", 12, "2026-0147"}, {"LS-240 Long-sleeve tee", "navy", "L", 9, "2026-0147, 2026-0150"}}
	text := words(job, func(d *doc) { d.bought(lines) })
	if !strings.Contains(text, "21 pieces altogether") || !strings.Contains(text, "2026-0150") {
		t.Errorf("got %q", text)
	}
	if pdf, err := Pictured(nil).BuyingList(quote.Paper{Shop: quote.Party{Name: "Harbour & Pine Print Room"}, Demo: true}, "Northgate Blanks", lines, date); err != nil || len(pdf) < 1000 {
		t.Errorf("got %d bytes, %v", len(pdf), err)
	}
}

func TestQuoteOptions_standSideBySideAndEachByItself(t *testing.T) {
	job, result := regatta(t)
	plain := job
	plain.Placements = job.Placements[:1]
	offers := []Offer{{"with back and sleeve", job, result}, {"back only", plain, resultOf(t, plain)}}
	text := words(job, func(d *doc) { layOptions(d, offers, date) })
	for _, o := range offers {
		if n := strings.Count(text, o.Name); n < 2 {
			t.Errorf("%q stands there %d times, want it in the comparison and on its page", o.Name, n)
		}
		if !strings.Contains(text, grouped(o.Result.Price.Total)) {
			t.Errorf("the total %s of %q is not there", grouped(o.Result.Price.Total), o.Name)
		}
	}
	if strings.Contains(text, grouped(result.Cost.Total)) {
		t.Error("the customer can read a cost")
	}
	mail, err := Pictured(nil).EmailOptions(Letter{}, offers, date)
	if err != nil || !strings.Contains(string(mail), "BACK ONLY") || !strings.Contains(string(mail), "application/pdf") {
		t.Errorf("e-mail: %v, %d bytes", err, len(mail))
	}
	if _, err := Pictured(nil).QuoteOptions(nil, date); err == nil {
		t.Error("a quote without any option gives no error")
	}
}

func TestBookkeeping_hasARowAnOrderAndARowAPayment(t *testing.T) {
	data, err := Bookkeeping([]Booked{{
		Number: "2026-0147", On: "2026-11-26", Customer: "=cmd()", Subtotal: "1189.98", Tax: "71.40", Total: "1261.38", Paid: "630.69", Owed: "630.69",
		Payments: []Payment{{"2026-11-26", "card", money.FromMinor(63069, 2)}},
	}}, "USD")
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(data))).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("got %d rows, %v:\n%s", len(rows), err, data)
	}
	if rows[1][3] != "'=cmd()" || rows[1][8] != "1261.38" || rows[2][0] != "payment" || rows[2][9] != "630.69" {
		t.Errorf("got %q", rows)
	}
}

// An invoice says what came in, what is still to be paid and by when, and the customer's own order number.
func TestInvoice_saysWhatCameInAndWhatIsOpen(t *testing.T) {
	job, result := regatta(t)
	cents := func(n int64) money.Amount { return money.FromMinor(n, 2) }
	g := Agreed{Order: "PO 77", Due: "2026-12-25", Paid: Paid{Payments: []Payment{{"2026-11-26", "cash", cents(63069)}}, Together: cents(63069), Open: cents(63069)}}
	text := words(job, func(d *doc) { layInvoice(d, job, result, g, date) })
	for _, w := range []string{"PO 77", "25 December 2026", "Paid 26 November 2026, cash", "−630.69", "Still to be paid"} {
		if !strings.Contains(text, w) {
			t.Errorf("%q is missing in %s", w, text)
		}
	}
	if strings.Contains(text, "Deposit to start") {
		t.Error("a deposit that came in is still asked for")
	}
	if text = words(job, func(d *doc) { layInvoice(d, job, result, Agreed{}, date) }); !strings.Contains(text, "Deposit to start") || strings.Contains(text, "your order") {
		t.Errorf("nothing is known of it, yet it says %s", text)
	}
}
