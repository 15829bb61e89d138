package present_test

import (
	"testing"

	"pressworth/catalog"
	"pressworth/ui/present"
	"pressworth/ui/present/presenttest"
)

// knowing is a shop that keeps one customer.
type knowing struct {
	*presenttest.Shop
	customer catalog.Customer
}

func (k knowing) Known(id int64) (catalog.Customer, bool) { return k.customer, id == k.customer.ID }

func TestCounter_knownCustomerBringsLevelAndExemption(t *testing.T) {
	shop := knowing{presenttest.New(), catalog.Customer{ID: 7, Name: "Harbour Rowing Club", Level: "club", Terms: catalog.PayNetDays, NetDays: 30, TaxExempt: true, Certificate: "TX-1"}}
	c := present.NewCounter(shop, presenttest.Engine())
	c.SetCustomer(shop.customer.ForDraft())
	if d := c.Draft(); d.Level != "club" || !d.TaxExempt {
		t.Errorf("level %q, exempt %v; want club and exempt", d.Level, d.TaxExempt)
	}
	if got, want := c.CustomerNote(7), "pays net 30 days · exempt from tax"; got != want {
		t.Errorf("note: got %q, want %q", got, want)
	}
	shop.customer.CertificateUntil = "2026-11-30" // the day at the counter is later
	c = present.NewCounter(shop, presenttest.Engine())
	c.SetCustomer(shop.customer.ForDraft())
	if c.Draft().TaxExempt || c.CustomerNote(7) != "pays net 30 days · exemption has run out on 2026-11-30" {
		t.Errorf("an expired certificate: exempt %v, note %q", c.Draft().TaxExempt, c.CustomerNote(7))
	}
	if got := c.CustomerNote(8); got != "" {
		t.Errorf("of somebody else it says %q", got)
	}
}

func TestCounter_showsTheStateThatItsQuoteCameInto(t *testing.T) {
	c := presenttest.New().Counter(0)
	c.SetTitle("Regatta shirts")
	if err := c.Save(); err != nil {
		t.Fatal(err)
	}
	id := c.Draft().ID
	if id == 0 {
		t.Fatal("the quote was kept without an id")
	}
	c.Became(id+1, "declined")
	if got := c.View().Status.State; got != "draft" {
		t.Errorf("another quote was declined, this one says %q", got)
	}
	c.Became(id, "sent")
	if got := c.View().Status.State; got != "sent" {
		t.Errorf("got %q, want sent", got)
	}
}
